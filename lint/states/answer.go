package states

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// Answer is the least and the most of one quantity over states.
type Answer struct {
	What   string // "volts", "amps"
	Of     string // the terminal or part, as the plan writes it
	Name   string // in the owner's words
	Unit   string // "V", "A"
	Least  *Extreme
	Most   *Extreme
	Looked int // states looked at
	Dead   int // those in which it has no power, at any corner
	// NoPoint are the states in which some corner has no operating point, Unknown those in which
	// something is missing: in neither is anything claimed.
	NoPoint []Fold
	Unknown int
	Missing []lint.Missing
}

// Fold is a state that has no operating point at a corner.
type Fold struct {
	State []lint.Position
	NoPoint
}

// Extreme is a number with the state it occurs in and its derivation.
type Extreme struct {
	Value  float64
	Corner string
	State  []lint.Position
	Way    string // of a current: which way it runs
	Number derive.Number
}

// Answer puts questions to the states that were asked for.
func (s *Survey) Answer(w Wanted, qs ...*Question) *Listing {
	l := s.listing(w)
	views := s.views(w, l)
	vary := s.held(l, views)
	for _, q := range qs {
		l.Answers = append(l.Answers, &Answer{What: q.what, Of: q.of, Name: q.name, Unit: q.unit})
	}
	best := make([][2]*circuit.Point, len(qs))
	for _, v := range views {
		if s.stopped(l) {
			break
		}
		x := s.solve(v)
		for i, q := range qs {
			l.Answers[i].take(q, x, v.State(vary), &best[i])
		}
	}
	for i, q := range qs {
		a := l.Answers[i]
		for k, e := range []*Extreme{a.Least, a.Most} {
			if e != nil {
				e.Number, e.Way = q.number(best[i][k]), q.way(best[i][k])
			}
		}
	}
	l.Corners = s.corners(views)
	return l
}

// take counts one state in.
func (a *Answer) take(q *Question, x *solved, state []lint.Position, best *[2]*circuit.Point) {
	a.Looked++
	if m := x.missing(q.at); len(m) > 0 && x.energised(q.at) {
		a.Unknown++
		for _, m := range m {
			if !slices.Contains(a.Missing, m) {
				a.Missing = append(a.Missing, m)
			}
		}
		return
	}
	dead := true
	for k, p := range x.points {
		if !p.Found && x.energised(q.at) {
			dead = false
			a.NoPoint = append(a.NoPoint, Fold{state, folds(x.names[k], p)})
		}
		if !p.Found {
			continue
		}
		v, ok := q.read(x, k)
		if !ok {
			continue
		}
		v, dead = sure(v), false
		if a.Least == nil || below(v, a.Least.Value) {
			a.Least, best[0] = &Extreme{Value: v, Corner: x.names[k], State: state}, p
		}
		if a.Most == nil || below(a.Most.Value, v) {
			a.Most, best[1] = &Extreme{Value: v, Corner: x.names[k], State: state}, p
		}
	}
	if dead {
		a.Dead++
	}
}

// energised says whether a node is live; a return is live with what it belongs to.
func (x *solved) energised(id network.NodeID) bool {
	return id == network.None || x.s.Net.Nodes[id].Return || len(x.live.At(id)) > 0
}
