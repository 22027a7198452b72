package states

import (
	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// State is one different state of a plan.
type State struct {
	Number    int
	At        []lint.Position // what tells it apart from the others listed
	Followers []lint.Position // parts that nobody sets by hand
	NoPoint   []NoPoint
	Missing   []lint.Missing // what the plan leaves out; no number is given for what is joined to it
	Loads     []Supplied     // that have power
	Dark      []schema.Block // loads that have none
	Buses     []Supplied     // that are live
	Terminals []Supplied     // live terminals, buses and loads among them
	Feeds     []Feed
	Fullest   []Share
	MayLive   []schema.Block // loads and buses that are live only if a converter lets current back, which is not written
}

// NoPoint is a corner at which the circuit has no operating point: the loads ask for more than the
// wires and sources can bring. Share of all powers is where it ends. Unsolved says that the search for
// one failed, so that nothing is known.
type NoPoint struct {
	Corner   string
	Share    float64
	Unsolved bool
}

// Supplied is a part or terminal that is live.
type Supplied struct {
	Block schema.Block
	Place string // the terminal, as a plan writes it
	Volts Range
	Amps  Range // of a load
	Open  bool  // of a switch's or connector's terminal: no contact of it is closed
}

// Feed is a source or a converter's output with what it is joined to.
type Feed struct {
	From    schema.Block
	Kind    string // "source", "converter"
	Amps    Range  // that it gives; below zero it takes
	To      []schema.Block
	Charges []schema.Block
}

// Share is a conductor with the share of its ampacity that it carries, infinite where heat leaves it none.
type Share struct {
	Conductor *schema.Conductor
	Share     float64
	Amps      Value
	Ampacity  derive.Number
}

func (s *Survey) state(number int, v *explore.View, vary []int) *State {
	x := s.solve(v)
	out := &State{Number: number, At: v.State(vary), Followers: s.followers(v), Missing: x.lacks}
	for i, p := range x.points {
		if !p.Found {
			out.NoPoint = append(out.NoPoint, folds(x.names[i], p))
		}
	}
	x.loads(out)
	x.terminals(out)
	x.feeds(out)
	x.conductors(out)
	x.doubt(out)
	return out
}
