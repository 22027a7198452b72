package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Not every node outside the return set is a positive. What lies behind the second pole of a switch,
// or a device in the negative, carries current home; what lies between sources in a row does both.

// side says what a zone's nodes are for.
type side uint8

// The sides. The zero value is invalid.
const (
	_        side = iota
	outward       // only positives hang there
	homeward      // only negatives: it is answered with the returns
	mixed         // both, or contacts to the return: current may go either way
)

func (c *Circuit) sideOf(z *network.Zone) side {
	if c.sides == nil {
		c.findSides()
	}
	if z.ID < 0 || z.ID >= len(c.sides) {
		return outward
	}
	return c.sides[z.ID]
}

func (c *Circuit) findSides() {
	back := make([]bool, len(c.Net.Zones))
	eachPort(c.Net, c.Net.Zones, func(p network.Port) {
		if z := c.zoneAt(p.Ret); z != nil {
			back[z.ID] = true
		}
	})
	c.sides = make([]side, len(c.Net.Zones))
	for _, z := range c.Net.Zones {
		hot := len(z.Sources)+len(z.Loads)+len(z.Inputs)+len(z.Outputs) > 0
		c.sides[z.ID] = outward
		if back[z.ID] || c.meetsReturn(z) {
			c.sides[z.ID] = homeward
			if hot {
				c.sides[z.ID] = mixed
			}
		}
	}
}

func (c *Circuit) meetsReturn(z *network.Zone) bool {
	for _, e := range z.Edges {
		if c.Net.Nodes[c.Net.Edges[e].A].Return || c.Net.Nodes[c.Net.Edges[e].B].Return {
			return true
		}
	}
	return false
}

// comesHome says whether a node is part of the ways home.
func (c *Circuit) comesHome(id network.NodeID) bool {
	z := c.Net.ZoneOf(id)
	return z == nil || c.sideOf(z) == homeward
}

// zoneAt is the zone of a node, nil for a return and for no node.
func (c *Circuit) zoneAt(id network.NodeID) *network.Zone {
	if id == network.None {
		return nil
	}
	return c.Net.ZoneOf(id)
}

// eachPort visits what hangs on zones with its positive.
func eachPort(n *network.Network, zones []*network.Zone, visit func(network.Port)) {
	for _, z := range zones {
		for _, i := range z.Sources {
			visit(n.Sources[i].Port)
		}
		for _, i := range z.Loads {
			visit(n.Loads[i].Port)
		}
		for _, i := range z.Inputs {
			visit(n.Converters[i].In)
		}
		for _, i := range z.Outputs {
			visit(n.Converters[i].Out)
		}
	}
}

// families groups the zones whose currents come home together: those that diodes join, for a diode
// passes current and makes none, and those of sources in a row.
func (c *Circuit) families() [][]*network.Zone {
	if c.family != nil {
		return c.family
	}
	group := newUnion(len(c.Net.Zones))
	join := func(a, b *network.Zone) {
		if a != nil && b != nil {
			group.join(a.ID, b.ID)
		}
	}
	for i := range c.Net.Converters {
		if x := &c.Net.Converters[i]; x.Kind.Value == "diode" {
			join(c.zoneAt(x.In.Hot), c.zoneAt(x.Out.Hot))
		}
	}
	eachPort(c.Net, c.Net.Zones, func(p network.Port) {
		if z := c.zoneAt(p.Ret); z != nil && c.sideOf(z) == mixed {
			join(c.zoneAt(p.Hot), z)
		}
	})
	at := map[int]int{}
	c.family = [][]*network.Zone{}
	for _, z := range c.Net.Zones {
		k, ok := at[group.find(z.ID)]
		if !ok {
			k = len(c.family)
			at[group.find(z.ID)] = k
			c.family = append(c.family, nil)
		}
		c.family[k] = append(c.family[k], z)
	}
	return c.family
}

func (c *Circuit) familyOf(z *network.Zone) []*network.Zone {
	for _, f := range c.families() {
		c.Space.Tick()
		for _, k := range f {
			if k == z {
				return f
			}
		}
	}
	return []*network.Zone{z}
}

// portsOf visits what hangs on zones, everything there and on, with its sums. Diodes are left out:
// they belong to neither side.
func (c *Circuit) portsOf(zones []*network.Zone, visit func(p network.Port, s sums, source bool)) {
	for _, z := range zones {
		for _, i := range z.Sources {
			visit(c.Net.Sources[i].Port, c.sourceSums(i), true)
		}
		for _, i := range z.Loads {
			visit(c.Net.Loads[i].Port, drawSums(c.load(i)), false)
		}
		for _, i := range z.Inputs {
			if x := &c.Net.Converters[i]; x.Kind.Value != "diode" {
				d := c.input(i)
				visit(x.In, sums{draws: d.n.Value, lasting: d.n.Value, ports: 1}, false)
			}
		}
		for _, i := range z.Outputs {
			if x := &c.Net.Converters[i]; x.Kind.Value != "diode" {
				visit(x.Out, c.outputSums(i), true)
			}
		}
	}
}

func (c *Circuit) sourceSums(i int) sums {
	s := c.Net.Sources[i].Source
	g, _ := c.SourceGives(s)
	x := supplySums(g)
	if s.Kind.Value == "battery" {
		if a, unlimited, _ := c.Accepts(s); unlimited {
			x.endlessAc = 1
		} else {
			x.accepts = a.Value
		}
	}
	return x
}

// outputSums is what a converter's output gives; a diode's, what feeds the diode.
func (c *Circuit) outputSums(i int) sums {
	x := &c.Net.Converters[i]
	if x.Kind.Value != "diode" {
		g, _ := c.OutputGives(x.Converter)
		return supplySums(g)
	}
	s := c.beyond(i, func(x *network.Converter) (network.NodeID, []int) { return x.In.Hot, c.zoneAt(x.In.Hot).Outputs })
	return sums{gives: s.gives, endless: s.endless, charges: s.charges, endlessCh: s.endlessCh, ports: 1}
}

// diodeTakes is what a diode's input takes: what hangs behind the diode.
func (c *Circuit) diodeTakes(i int) sums {
	s := c.beyond(i, func(x *network.Converter) (network.NodeID, []int) { return x.Out.Hot, c.zoneAt(x.Out.Hot).Inputs })
	return sums{draws: s.draws, lasting: s.lasting, accepts: s.accepts, endlessAc: s.endlessAc, surge: s.surge, ports: 1}
}

// beyond sums all that hangs on the zone on one side of a diode, and beyond further diodes that lead
// the same way: next gives a diode's node on that side, and the converters that may lead on.
func (c *Circuit) beyond(diode int, next func(*network.Converter) (network.NodeID, []int)) sums {
	var out sums
	seen, queue := map[*network.Zone]bool{}, []int{diode}
	for len(queue) > 0 {
		x := &c.Net.Converters[queue[0]]
		queue = queue[1:]
		if x.Kind.Value != "diode" || c.zoneAt(x.In.Hot) == nil || c.zoneAt(x.Out.Hot) == nil {
			continue
		}
		id, more := next(x)
		z := c.zoneAt(id)
		if seen[z] {
			continue
		}
		seen[z] = true
		c.portsOf([]*network.Zone{z}, func(_ network.Port, s sums, _ bool) { out = out.plus(s) })
		queue = append(queue, more...)
	}
	return out
}

// whole bounds any current among zones, in A: everything at once, zone by zone.
func (c *Circuit) whole(zones []*network.Zone) float64 {
	total := 0.0
	for _, z := range zones {
		var all sums
		c.portsOf([]*network.Zone{z}, func(_ network.Port, s sums, _ bool) { all = all.plus(s) })
		all.gives, all.endless = 0, 1 // a string's sources give from another zone
		steady, _, _ := flow(all, all)
		total += steady
	}
	return total
}

// mixedEdges are the live edges at a node that conduct in a view, with the contacts to returns.
func mixedEdges(n *network.Network, v *explore.View) func(network.NodeID) []int {
	return func(id network.NodeID) []int {
		if n.Nodes[id].Return {
			return nil
		}
		var out []int
		for _, e := range n.At(id) {
			if v.Conducts(e) {
				out = append(out, e)
			}
		}
		return out
	}
}

// bothWays adds to the ports of a mixed zone what returns there, and lets everything in the parts
// that this touches give as much as it takes: which way current goes there is not asked.
func (c *Circuit) bothWays(v *explore.View, ports map[network.NodeID]sums) {
	most := c.whole(c.familyOf(v.Zone))
	touched := map[network.NodeID]bool{}
	if c.meetsReturn(v.Zone) {
		most = c.whole(c.Net.Zones)
	}
	endless := sums{endless: 1, draws: most, lasting: most, ports: 1}
	for _, e := range v.Zone.Edges {
		for _, id := range []network.NodeID{c.Net.Edges[e].A, c.Net.Edges[e].B} {
			if c.Net.Nodes[id].Return && v.Conducts(e) {
				ports[id] = endless
				touched[c.Net.Edges[e].Other(id)] = true
			}
		}
	}
	c.portsOf(c.Net.Zones, func(p network.Port, s sums, _ bool) {
		if c.zoneAt(p.Ret) == v.Zone {
			ports[p.Ret] = ports[p.Ret].plus(s)
			touched[p.Ret] = true
		}
	})
	for id := range c.spread(v, touched) {
		if s, ok := ports[id]; ok {
			ports[id] = s.eitherWay(most)
		}
	}
}

// spread is everything live that is joined to some nodes in a view.
func (c *Circuit) spread(v *explore.View, from map[network.NodeID]bool) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{}
	var queue []network.NodeID
	for id := range from {
		seen[id] = true
		queue = append(queue, id)
	}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, e := range liveEdges(c.Net, v)(id) {
			if to := c.Net.Edges[e].Other(id); !seen[to] {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}

// eitherWay lets a port give what it takes and take what it gives, at most a current that bounds all.
func (a sums) eitherWay(most float64) sums {
	if a.endless > 0 || a.endlessCh > 0 || a.endlessAc > 0 {
		return sums{endless: 1, draws: most, lasting: most, surge: a.surge, ports: a.ports}
	}
	size := a.gives + a.draws + a.accepts
	return sums{gives: size + a.surge, draws: size, lasting: a.gives + a.lasting + a.accepts, surge: a.surge, ports: a.ports}
}

// zoneLacks names the inputs without which a zone's sums are least figures.
func (c *Circuit) zoneLacks(z *network.Zone) []derive.Missing {
	if c.sideOf(z) == mixed && c.meetsReturn(z) {
		return c.lacksOf(c.Net.Zones)
	}
	return c.lacksOf(c.familyOf(z))
}

func (c *Circuit) lacksOf(f []*network.Zone) []derive.Missing {
	var out []derive.Missing
	bank := false
	for _, z := range f {
		for _, i := range z.Loads {
			out = merge(out, c.load(i).lacks...)
		}
		for _, i := range z.Inputs {
			if x := c.Net.Converters[i]; x.Kind.Value != "diode" && !(x.Kind.Value == "mppt" && c.onlyArrays(z)) {
				out = merge(out, c.input(i).lacks...)
			}
		}
		for _, i := range z.Sources {
			switch s := c.Net.Sources[i].Source; s.Kind.Value {
			case "battery":
				_, unlimited, m := c.Accepts(s)
				bank = bank || unlimited
				out = merge(out, m...)
			case "solar": // what hangs on an array draws what the array gives
				_, m := c.SourceGives(s)
				out = merge(out, m...)
			}
		}
	}
	if bank { // what charges lithium is bounded by its own limit alone
		out = merge(out, c.chargerLacks(f)...)
	}
	return out
}

func (c *Circuit) chargerLacks(f []*network.Zone) []derive.Missing {
	var out []derive.Missing
	for _, z := range f {
		for _, i := range z.Sources {
			if s := c.Net.Sources[i].Source; s.Kind.Value != "battery" {
				_, m := c.SourceGives(s)
				out = merge(out, m...)
			}
		}
		for _, i := range z.Outputs {
			if x := c.Net.Converters[i].Converter; x.Kind.Value != "diode" {
				_, m := c.OutputGives(x)
				out = merge(out, m...)
			}
		}
	}
	return out
}
