package states

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Corner is one set of circumstances at which a state is solved.
type Corner struct {
	Name string
	What string
	set  circuit.Setting
	sun  bool // only where there is an array
}

// corners are those of every state.
var corners = []Corner{
	{"empty", "batteries empty and at their high resistance, alternators at their low volts", circuit.Setting{Charge: circuit.Empty, High: true}, false},
	{"empty, no sun", "the same, and no light on the arrays", circuit.Setting{Charge: circuit.Empty, High: true, Dark: true}, true},
	{"rested", "batteries rested full, at their low resistance", circuit.Setting{Charge: circuit.Rested}, false},
	{"end of charge", "batteries at the highest volts that charge them, taking nothing; arrays at their coldest", circuit.Setting{Charge: circuit.EndOfCharge}, false},
}

func (s *Survey) sunny(v *explore.View) bool {
	return slices.ContainsFunc(s.whole.Sources, func(i int) bool {
		return s.Net.Sources[i].Kind.Value == "solar" && v.HasSource(i)
	})
}

// corners lists those at which any of the views was solved.
func (s *Survey) corners(views []*explore.View) []Corner {
	sun := slices.ContainsFunc(views, s.sunny)
	return slices.DeleteFunc(slices.Clone(corners), func(c Corner) bool { return c.sun && !sun || len(views) == 0 })
}

// solved is one state at its corners.
type solved struct {
	s      *Survey
	view   *explore.View
	live   *explore.Energy
	names  []string
	points []*circuit.Point
	lacks  []lint.Missing
	island func(network.NodeID) int32 // of what is joined, through parts too
	short  map[int32][]lint.Missing   // what is missing, by island
	all    []lint.Missing             // what is missing and concerns everything
}

func (s *Survey) solve(v *explore.View) *solved {
	out := &solved{s: s, view: v, live: v.Live(reverses, nil), short: map[int32][]lint.Missing{}}
	sun := s.sunny(v)
	for _, c := range corners {
		if !c.sun || sun {
			p := s.c.Point(v, c.set)
			out.names, out.points = append(out.names, c.Name), append(out.points, p)
			out.lack(p)
		}
	}
	if len(out.lacks) > 0 {
		out.dropIdle()
		out.spread()
	}
	return out
}

// lack keeps what the plan leaves out. That a corner was not solved is no news of the others.
func (x *solved) lack(p *circuit.Point) {
	for _, m := range p.Lacks {
		if m.Subject != "plan" && !slices.Contains(x.lacks, m) {
			x.lacks = append(x.lacks, m)
		}
	}
}

// folds tells of a corner that has no point, or for which none was found.
func folds(name string, p *circuit.Point) NoPoint {
	if unsolved(p) {
		return NoPoint{Corner: name, Unsolved: true}
	}
	return NoPoint{Corner: name, Share: sure(p.Margin)}
}

func unsolved(p *circuit.Point) bool {
	return !p.Found && slices.ContainsFunc(p.Lacks, func(m lint.Missing) bool { return m.Subject == "plan" })
}

// reverses says that current comes out of a converter's input: the plan says so.
func reverses(c *network.Converter) bool { return c.BlocksReverse.False() }

// mayReverse also counts converters of which the plan does not tell.
func mayReverse(c *network.Converter) bool {
	if c.BlocksReverse.Set {
		return c.BlocksReverse.False()
	}
	return !slices.Contains([]string{"charger", "load-center", "inverter", "diode"}, c.Kind.Value)
}

// missing is what must be known before a number at a node is. A return may carry anybody's current.
func (x *solved) missing(id network.NodeID) []lint.Missing {
	switch {
	case len(x.lacks) == 0:
		return nil
	case id == network.None || x.s.Net.Nodes[id].Return:
		return x.lacks
	}
	return append(slices.Clone(x.all), x.short[x.island(id)]...)
}
