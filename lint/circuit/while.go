package circuit

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// While is the largest steady current in a live edge, in A, over the states that a pick takes, of the loads that
// run, and a state in which it is largest; nil where there is none. As Worst it is a bound by sums.
func (c *Circuit) While(edge int, pick func(*explore.View) bool, runs func(load int) bool) (amps float64, in *explore.View) {
	z := c.edgeZone(edge)
	if z == nil {
		return 0, nil
	}
	for _, o := range c.occasions(z) {
		list, _ := c.Space.Views(z, o.filter)
		some := func(i int) bool { return o.runs(i) && runs(i) }
		for _, v := range list {
			if !pick(v) {
				continue
			}
			if a := c.bounds(z, v, some).bounds[edge]; in == nil || a.steady > amps {
				amps, in = a.steady, v
			}
		}
	}
	return amps, in
}

// bounds are those of the live edges of a view, no device limiting them, refined in rings.
func (c *Circuit) bounds(z *network.Zone, v *explore.View, runs func(int) bool) *cut {
	ports, edges := c.attachedTo(z, v, runs)
	k := newCut(c.Net, z.Nodes, edges, ports, false)
	if c.sideOf(z) != mixed {
		c.refine(k, v, runs)
	}
	return k
}

// attachedTo is what hangs on the live nodes of a view, and its edges; on both sides of a mixed zone.
func (c *Circuit) attachedTo(z *network.Zone, v *explore.View, runs func(int) bool) (map[network.NodeID]sums, func(network.NodeID) []int) {
	ports := c.ports(v, runs)
	if c.sideOf(z) != mixed {
		return ports, liveEdges(c.Net, v)
	}
	c.bothWays(v, ports)
	return ports, mixedEdges(c.Net, v)
}
