package conductor

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// run is wires one after another, joints and plugs between them included, with nothing that branches off.
type run struct {
	edges []int
	a, b  network.NodeID
}

// liveRuns lists the runs of the live side, links between batteries left out.
func liveRuns(n *network.Network) []run {
	ports := map[network.NodeID]bool{}
	for _, z := range n.Zones {
		for _, x := range attached(n, z) {
			ports[x.Hot] = true
		}
	}
	done := map[int]bool{}
	var out []run
	for i := range n.Edges {
		e := &n.Edges[i]
		if done[i] || e.Kind != network.Wire || !positive(n, e.A) || !positive(n, e.B) {
			continue
		}
		done[i] = true
		before, a := extend(n, i, e.A, ports, done)
		after, b := extend(n, i, e.B, ports, done)
		slices.Reverse(before)
		if a != b && !(battery(n, a) && battery(n, b)) {
			out = append(out, run{slices.Concat(before, []int{i}, after), a, b})
		}
	}
	return out
}

// extend follows a run from an edge's end to where something branches off.
func extend(n *network.Network, edge int, at network.NodeID, ports map[network.NodeID]bool, done map[int]bool) (edges []int, end network.NodeID) {
	for !ports[at] && len(n.At(at)) == 2 {
		next := n.At(at)[0]
		if next == edge {
			next = n.At(at)[1]
		}
		switch e := &n.Edges[next]; {
		case done[next], e.Kind != network.Wire && e.Kind != network.Joint && e.Kind != network.Mate, !positive(n, e.Other(at)):
			return edges, at
		default:
			done[next] = true
			edges, edge, at = append(edges, next), next, e.Other(at)
		}
	}
	return edges, at
}

// positive says whether a node is live, and no negative behind a switch or a device.
func positive(n *network.Network, id network.NodeID) bool {
	x := &n.Nodes[id]
	return !x.Return && (x.Pole == schema.Pos || x.Pole == schema.Line)
}

func battery(n *network.Network, id network.NodeID) bool {
	s, ok := schema.Lookup[*schema.Source](n.Plan, n.Nodes[id].Addr)
	return ok && s.Kind.Value == "battery"
}

// bareOhms is the resistance of an edge without its joints, in ohm.
func bareOhms(c *circuit.Circuit, edge int) (derive.Number, []lint.Missing) {
	return c.Ohms(edge, circuit.Prospective)
}

// giving is what all that feeds a zone drives into a fault together.
type giving struct {
	amps    float64
	endless bool // a battery is among it, or something that lets one through
	lacks   []lint.Missing
}

func gives(p *lint.Pass, edge int) giving {
	var g giving
	z := p.Net.ZoneOf(p.Net.Edges[edge].A)
	add := func(n derive.Number, endless bool, lacks []lint.Missing) {
		g.amps, g.endless, g.lacks = g.amps+n.Value, g.endless || endless, append(g.lacks, lacks...)
	}
	for _, i := range z.Sources {
		add(p.Circuit.SourceFault(p.Net.Sources[i].Source))
	}
	for _, i := range z.Outputs {
		add(p.Circuit.OutputFault(p.Net.Converters[i].Converter))
	}
	for _, i := range z.Inputs { // what lies beyond may come back
		x := &p.Net.Converters[i]
		switch kind := x.Kind.Value; {
		case x.BlocksReverse.True(), !x.BlocksReverse.Set && kind != "dc-dc" && kind != "mppt":
		case x.BlocksReverse.False():
			g.endless = true
		default:
			g.lacks = append(g.lacks, lint.Missing{Subject: x.Addr, Attribute: "blocks_reverse"})
		}
	}
	return g
}

// port is something attached to a zone.
type port struct {
	network.Port
	block    schema.Block
	supplies bool
	charges  bool // it supplies, and is no battery
	there    func(*explore.View) bool
}

// attached lists what is attached to a zone.
func attached(n *network.Network, z *network.Zone) []port {
	var out []port
	for _, i := range z.Sources {
		s := &n.Sources[i]
		out = append(out, port{s.Port, s.Source, true, s.Kind.Value != "battery", func(v *explore.View) bool { return v.HasSource(i) }})
	}
	for _, i := range z.Outputs {
		out = append(out, port{n.Converters[i].Out, n.Converters[i].Converter, true, true, func(v *explore.View) bool { return v.HasConverter(i) }})
	}
	for _, i := range z.Loads {
		out = append(out, port{n.Loads[i].Port, n.Loads[i].Load, false, false, func(v *explore.View) bool { return v.HasLoad(i) }})
	}
	for _, i := range z.Inputs {
		out = append(out, port{n.Converters[i].In, n.Converters[i].Converter, false, false, func(v *explore.View) bool { return v.HasConverter(i) }})
	}
	return out
}
