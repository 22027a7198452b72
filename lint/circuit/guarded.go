package circuit

import (
	"math"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Guarded says whether devices alone keep the current of a live edge at or below a limit in A, in
// every state and whatever is drawn: on one of its sides what supplies, or on the other what takes,
// lies behind devices whose ratings add up to no more.
func (c *Circuit) Guarded(edge int, limit float64) bool {
	z := c.edgeZone(edge)
	if z == nil || c.sideOf(z) != outward {
		return false
	}
	list, complete := c.Space.Views(z, c.Space.Closed(explore.All()))
	ports := c.attached(z)
	e := &c.Net.Edges[edge]
	if e.Kind == network.Element && e.Fuse.Rating.Set && e.Fuse.Rating.Value <= limit {
		return true
	}
	for _, v := range list {
		if !v.Conducts(edge) {
			continue
		}
		through := func(from, to network.NodeID) bool {
			return c.passes(v, edge, from, ports, true, limit) && c.passes(v, edge, to, ports, false, limit)
		}
		if through(e.A, e.B) || through(e.B, e.A) {
			return false
		}
	}
	return complete
}

// passes says whether more than a limit can run between a node and the ports, without the edge. It is
// a search for augmenting ways over the ratings of devices.
func (c *Circuit) passes(v *explore.View, without int, from network.NodeID, ports []attachment, supplies bool, limit float64) bool {
	ends := map[network.NodeID]bool{}
	for _, p := range ports {
		if (p.supplies || !supplies) && p.present(v) {
			ends[p.Hot] = true
		}
	}
	flow := map[int]float64{} // from A to B
	for total := 0.0; total <= limit; {
		way, _ := c.augment(v, without, from, ends, flow)
		if way == nil {
			return false
		}
		if total += c.push(way, flow); math.IsInf(total, 1) {
			return true
		}
	}
	return true
}

// left is what a device still lets pass in the direction of a hop.
func (c *Circuit) left(h explore.Hop, flow map[int]float64) float64 {
	e := &c.Net.Edges[h.Edge]
	if e.Kind != network.Element || !e.Fuse.Rating.Set {
		return math.Inf(1)
	}
	if h.From == e.A {
		return e.Fuse.Rating.Value - flow[h.Edge]
	}
	return e.Fuse.Rating.Value + flow[h.Edge]
}

// augment finds a way from a node to one of the ends that lets more pass, nil where there is none, and
// the nodes that it came to.
func (c *Circuit) augment(v *explore.View, without int, from network.NodeID, ends map[network.NodeID]bool, flow map[int]float64) (explore.Path, map[network.NodeID]explore.Hop) {
	via := map[network.NodeID]explore.Hop{from: {Edge: -1}}
	queue := []network.NodeID{from}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		if ends[id] {
			way := explore.Path{} // not nil: a port may sit on the edge's own end
			for h := via[id]; h.Edge >= 0; h = via[h.From] {
				way = append(way, h)
			}
			return way, via
		}
		for _, e := range c.Net.At(id) {
			h := explore.Hop{Edge: e, From: id, To: c.Net.Edges[e].Other(id)}
			if _, seen := via[h.To]; !seen && e != without && c.zoneAt(h.To) == v.Zone && v.Conducts(e) && c.left(h, flow) > 1e-9 {
				via[h.To] = h
				queue = append(queue, h.To)
			}
		}
	}
	return nil, via
}
