package overcurrent

import (
	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// area is a zone with the networks that it can be.
type area struct {
	p        *lint.Pass
	n        *network.Network
	zone     *network.Zone
	views    []*explore.View
	complete bool
	open     *explore.View // every position at once: what is not joined here is joined in no state
	ahead    map[explore.Hop]*beyond
}

// newArea looks at a zone; nil where the plan allows no state at all.
func newArea(p *lint.Pass, z *network.Zone) *area {
	views, complete := p.Space.Views(z, p.Space.Closed(explore.All()))
	if len(views) == 0 {
		return nil
	}
	return &area{p, p.Net, z, views, complete, views[0].Loosen(z.Vars...), map[explore.Hop]*beyond{}}
}

// feed is something that can push current into a zone: a source, or one side of a converter.
type feed struct {
	block     schema.Block
	at        network.NodeID // its live end
	source    int            // index, -1 where it is a converter
	converter int            // index, -1 where it is a source
	reverse   bool           // the converter's input
}

func (f *feed) battery(n *network.Network) bool {
	return f.source >= 0 && n.Sources[f.source].Kind.Value == "battery"
}

// present says whether the feed is there in a view. A presence that the zone does not know of is any.
func (f *feed) present(n *network.Network, v *explore.View) bool {
	if f.source >= 0 {
		at := n.Sources[f.source].Present
		return at < 0 || v.At(at) != 0
	}
	return v.HasConverter(f.converter)
}

// witness is the positions that matter to a way from the feed.
func (f *feed) witness(v *explore.View, way explore.Path) []lint.Position {
	if f.source >= 0 {
		return v.Witness(way.Edges(), f.source)
	}
	return v.Witness(way.Edges())
}

// feeds lists what can push current into the zone, in order. Where a source's positive is the
// plan's reference, its negative is the live end.
func (a *area) feeds() []feed {
	var out []feed
	for i := range a.n.Sources {
		s := &a.n.Sources[i]
		if at := liveEnd(a.n, s.Port); a.zone.Local(at) >= 0 && a.n.ZoneOf(at) == a.zone {
			out = append(out, feed{s.Source, at, i, -1, false})
		}
	}
	for _, i := range a.zone.Outputs {
		out = append(out, feed{a.n.Converters[i].Converter, a.n.Converters[i].Out.Hot, -1, i, false})
	}
	for _, i := range a.zone.Inputs {
		out = append(out, feed{a.n.Converters[i].Converter, a.n.Converters[i].In.Hot, -1, i, true})
	}
	return out
}

func liveEnd(n *network.Network, p network.Port) network.NodeID {
	if n.Nodes[p.Hot].Return {
		return p.Ret
	}
	return p.Hot
}

// wires lists the conductors' edges of the zone, in order.
func (a *area) wires() []int {
	var out []int
	for _, e := range a.zone.Edges {
		if a.n.Edges[e].Kind == network.Wire && a.walkable(e) {
			out = append(out, e)
		}
	}
	return out
}

// walkable says whether an edge is on the live side.
func (a *area) walkable(e int) bool {
	return !a.n.Nodes[a.n.Edges[e].A].Return && !a.n.Nodes[a.n.Edges[e].B].Return
}

// bare walks from a node over everything live that no overcurrent device interrupts; distances are
// lengths of conductor, in m. but leaves one edge out; -1 leaves out none.
func (a *area) bare(v *explore.View, from network.NodeID, but int) *explore.Reach {
	use := func(e int, _ network.NodeID) bool {
		return e != but && a.n.Edges[e].Kind != network.Element && a.walkable(e)
	}
	return v.Reach(from, use, func(e int) float64 { return laid(&a.n.Edges[e]) })
}

// laid is the length of conductor that an edge adds to a run, in m. A cranking conductor adds none:
// what is tapped off it is measured from its end. A length left out adds none either, so that a sum
// is the least that the run can be.
func laid(e *network.Edge) float64 {
	if e.Kind != network.Wire || e.Wire.Cranking.True() || !e.Wire.Length.Set {
		return 0
	}
	return e.Wire.Length.Value
}
