package connector

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// exposure looks for energy on contacts. Connectors of one circuit share its states, so what was worked
// out for a state is kept.
type exposure struct {
	*lint.Pass
	breakaway []int // contacts of breakaway switches
	lives     map[*explore.View][2]*explore.Energy
	lifts     map[lift]*explore.View
	alone     map[int]touch // by source
}

// lift is a state in which a source is there and what follows it is drawn.
type lift struct {
	view   *explore.View
	source int
}

func newExposure(p *lint.Pass) *exposure {
	x := &exposure{Pass: p, lives: map[*explore.View][2]*explore.Energy{}, lifts: map[lift]*explore.View{}, alone: map[int]touch{}}
	for _, s := range p.Plan.Switches {
		if s.Kind.Value == "breakaway" {
			x.breakaway = append(x.breakaway, p.Net.EdgesOf(s.Addr)...)
		}
	}
	return x
}

// target is contacts that are bare while a variable stands at its first position: unmated, absent.
type target struct {
	nodes    []network.NodeID
	variable int
	parts    []int // variables of sources that take a half of the connector with them

	sure, doubt *finding // the worst that is violated, and that is not proven
	tries       int      // ways walked for the sake of fewer positions
}

// mostTries bounds the search for a state with fewer positions among those that are as bad.
const mostTries = 64

// wants says whether a finding with a word can still matter; vague ones are no violation.
func (t *target) wants(word lint.Severity, vague bool) bool {
	sure := lint.Severity(0)
	if t.sure != nil {
		sure = t.sure.word
	}
	switch {
	case word < sure, word == sure && vague:
		return false
	case word > sure && (!vague || t.doubt == nil || word > t.doubt.word):
		return true
	}
	t.tries++
	return t.tries < mostTries
}

// finding is a live contact in one state.
type finding struct {
	word    lint.Severity
	touch   touch
	parted  schema.Block // the source that carries the contact away
	state   []lint.Position
	moving  bool
	missing []lint.Missing
}

// found lists what to report: a violation, and what is not proven where it may be worse.
func (t *target) found() []*finding {
	var out []*finding
	if t.sure != nil {
		out = append(out, t.sure)
	}
	if t.doubt != nil && (t.sure == nil || t.doubt.word > t.sure.word) {
		out = append(out, t.doubt)
	}
	return out
}

// verdict is the finding without its words.
func (f *finding) verdict(b schema.Block, where string) lint.Verdict {
	v := lint.Verdict{Subject: b, Outcome: lint.Violated, Word: f.word, State: f.state, Missing: f.missing,
		Cause: where + " by " + f.touch.by.Header().Addr, Related: []string{f.touch.by.Header().Addr}, Numbers: f.touch.numbers()}
	if len(f.missing) > 0 {
		v.Outcome = lint.NotProven
	}
	return v
}

// search looks at every state; it is false where the bound cut it.
func (x *exposure) search(t *target) bool {
	views, complete := x.Space.Views(around(x.Net, t.nodes...), x.Space.About(x.Space.Closed(explore.All()), x.nodes(t)...))
	for _, v := range views {
		if x.pulled(v) {
			continue
		}
		if v.At(t.variable) == 0 {
			x.look(t, v, -1)
		}
		for _, s := range t.parts {
			if v.At(s) == 1 {
				x.look(t, x.lifted(v, s), s)
			}
		}
	}
	return complete
}

// nodes lists those that a target is about, and the ends of what a breakaway switch closes.
func (x *exposure) nodes(t *target) []network.NodeID {
	out := slices.Clone(t.nodes)
	for _, e := range x.breakaway {
		out = append(out, x.Net.Edges[e].A, x.Net.Edges[e].B)
	}
	return out
}

// pulled says whether a breakaway switch is: what is live then is meant to be.
func (x *exposure) pulled(v *explore.View) bool {
	return slices.ContainsFunc(x.breakaway, func(e int) bool { return x.Net.Edges[e].Kind == network.Contact && v.Conducts(e) })
}

// lifted is the view of a source that is there, with every connector that follows it apart.
func (x *exposure) lifted(v *explore.View, source int) *explore.View {
	k := lift{v, source}
	if w, ok := x.lifts[k]; ok {
		return w
	}
	for i := range x.Net.Vars {
		c := &x.Net.Vars[i]
		if c.Kind == network.ConnectorVar && c.Follower && v.At(i) >= 0 && slices.Contains(roots(x.Net, i), source) {
			v = v.Put(i, 0)
		}
	}
	x.lifts[k] = v
	return v
}

// energies is what is live in a view: for sure, and with what may let current back. Of a source that is
// carried away only what goes with it counts.
func (x *exposure) energies(v *explore.View, source int) [2]*explore.Energy {
	e, ok := x.lives[v]
	if !ok {
		var skip func(*network.Source) bool
		if source >= 0 {
			skip = func(s *network.Source) bool { return s.Present != source }
		}
		e = [2]*explore.Energy{v.Live(lets, skip), v.Live(mayLet, skip)}
		x.lives[v] = e
	}
	return e
}

// look judges the contacts in one state: by what is sure to reach them, and by what may.
func (x *exposure) look(t *target, v *explore.View, source int) {
	for maybe, e := range x.energies(v, source) {
		for _, id := range t.nodes {
			if len(e.At(id)) > 0 {
				t.take(x.judge(t, v, e, id, source, maybe == 1))
			}
		}
	}
}

// judge grades one live contact; nil where nothing is wrong with it.
func (x *exposure) judge(t *target, v *explore.View, e *explore.Energy, id network.NodeID, source int, maybe bool) *finding {
	f := &finding{touch: x.touches(v, e, id, map[int]bool{}), moving: v.Transit != nil}
	f.word = f.touch.word()
	if f.touch.by == nil || f.word == 0 && len(f.touch.vague) == 0 {
		return nil
	}
	if f.word < lint.Warning && len(f.touch.vague) > 0 {
		f.word, f.missing = lint.Warning, f.touch.vague
	}
	if !t.wants(f.word, maybe || len(f.missing) > 0) {
		return nil
	}
	w := wayTo(x.Net, v, e, id)
	if w.doubtful != nil {
		f.missing = append([]lint.Missing{{Subject: w.doubtful.Addr, Attribute: "blocks_reverse"}}, f.missing...)
	}
	if tr := v.Transit; tr != nil && tr.Throw.Assumed {
		f.missing = append(f.missing, lint.Missing{Subject: x.Net.Vars[tr.Var].Addr, Attribute: "transition"})
	}
	f.state = w.state(x.Net, v, t.variable)
	if source >= 0 {
		addr := x.Net.Vars[source].Addr
		f.parted = x.Plan.Block(addr)
		f.state = slices.DeleteFunc(f.state, func(p lint.Position) bool { return p.Addr == addr })
		f.state = lint.SortState(append(f.state, lint.Position{Addr: addr, Position: "absent"}))
	}
	return f
}

// take keeps the worst; of like ones that at rest, then that with the fewest positions.
func (t *target) take(f *finding) {
	if f == nil {
		return
	}
	at := &t.sure
	if len(f.missing) > 0 {
		at = &t.doubt
	}
	o := *at
	switch {
	case o == nil, f.word > o.word:
	case f.word < o.word, f.moving && !o.moving, f.moving == o.moving && len(f.state) >= len(o.state):
		return
	}
	*at = f
}
