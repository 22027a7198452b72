package ac

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// unplugged is what an owner may measure: nothing here is measured live.
const unplugged = "Every plug pulled, generator off, batteries and inverter switched off at their disconnects: ohms between the two supplies' line wires, and between their neutrals, in each " +
	"position. A reading near zero means stop. Anything live is an electrician's."

// meeting is a state in which supplies reach a place.
type meeting struct {
	view     *explore.View
	way      explore.Path
	from     network.NodeID
	state    []lint.Position
	assumed  string // address of a switch of which only an assumed overlap or gap joins them
	overlap  bool
	searched bool // false where the bound ended the search for a state in which one of them runs
}

// better says whether a meeting tells more plainly than another: at rest before an overlap, what the
// plan says before what is assumed, fewer positions before more.
func (m *meeting) better(o *meeting) bool {
	rank := func(x *meeting) int {
		switch {
		case !x.searched:
			return 3
		case x.assumed != "":
			return 2
		case x.overlap:
			return 1
		}
		return 0
	}
	return o == nil || rank(m) < rank(o) || rank(m) == rank(o) && len(m.state) < len(o.state)
}

// meet looks at whether a supplier's line is joined to a node in a view while the suppliers all run.
func meet(p *lint.Pass, m *circuit.Mains, v *explore.View, from, to network.NodeID, running ...circuit.Supplier) *meeting {
	if !v.Joined(from, to) {
		return nil
	}
	ok, known := m.Runs(v, running...)
	if known && !ok {
		return nil
	}
	out := &meeting{view: v, from: from, searched: known, state: m.Feed(v, running...)}
	out.way = v.Between(from, to)
	out.state = lint.SortState(append(out.state, v.Witness(out.way.Edges())...))
	if t := v.Transit; t != nil && slices.ContainsFunc(out.way, func(h explore.Hop) bool { return p.Net.Edges[h.Edge].Addr == p.Net.Vars[t.Var].Addr }) {
		out.overlap = true
		if t.Throw.Assumed {
			out.assumed = p.Net.Vars[t.Var].Addr
		}
	}
	return out
}

// views lists the different networks of a system; switches before loads alone are closed.
func views(p *lint.Pass, m *circuit.Mains) ([]*explore.View, bool) {
	return p.Space.Views(m.Zone, p.Space.Closed(explore.All()))
}

// parts lists the blocks on a way, each once.
func parts(n *network.Network, way explore.Path) []string {
	var out []string
	for _, h := range way {
		if addr := n.Edges[h.Edge].Addr; !slices.Contains(out, addr) {
			out = append(out, addr)
		}
	}
	return out
}

// told makes a verdict of a meeting: not proven where it leans on a transition that is assumed, or
// where the search for a running supply met its bound.
func (m *meeting) told(p *lint.Pass, v lint.Verdict) lint.Verdict {
	v.Outcome, v.State, v.Path = lint.Violated, m.state, m.view.Places(m.from, m.way)
	switch {
	case !m.searched:
		return lint.Unfinished(v.Subject, v.Word)
	case m.assumed != "":
		v.Outcome = lint.NotProven
		v.Missing = []lint.Missing{{Subject: m.assumed, Attribute: "transition"}}
		v.Message += " That holds while " + lint.Quote(p.Plan.Block(m.assumed)) + " is thrown, if it makes before it breaks; the plan does not say."
	}
	return v
}

// with tells a state at the end of a sentence.
func with(p *lint.Pass, state []lint.Position) string {
	if len(state) == 0 {
		return ""
	}
	return ", with " + lint.Positions(p.Plan, state)
}

// neutrals says whether two neutrals are joined otherwise than through bonds to ground.
func neutrals(p *lint.Pass, v *explore.View, a, b network.NodeID) (explore.Path, bool) {
	reach := v.Reach(a, func(e int, _ network.NodeID) bool { return !p.Net.Bond(e) }, nil)
	_, ok := reach.Dist[b]
	return reach.To(b), ok
}

// onePole finds a switch on the way of a neutral of which the plan leaves out the poles.
func onePole(p *lint.Pass, way explore.Path) *schema.Switch {
	for _, addr := range parts(p.Net, way) {
		if x, ok := schema.Lookup[*schema.Switch](p.Plan, addr); ok && !x.Poles.Set {
			return x
		}
	}
	return nil
}
