package circuit

import (
	"cmp"
	"math"
	"slices"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Feeding is what devices let through to a fault at one end of an edge, from several ways together.
type Feeding struct {
	Amps    float64 // A; +Inf where a way has no device with a rating
	Devices []int   // the devices that limit it, largest first; together their ratings are Amps
	Edges   []int   // all that it comes through, in order
}

// Fed is the most that devices let through from nodes that nothing limits to a fault in an edge, in
// one view: to that end of the edge to which more comes without the edge itself.
func (c *Circuit) Fed(v *explore.View, edge int, from map[network.NodeID]bool) Feeding {
	a := c.fedAt(v, edge, c.Net.Edges[edge].A, from)
	if b := c.fedAt(v, edge, c.Net.Edges[edge].B, from); b.Amps > a.Amps {
		return b
	}
	return a
}

func (c *Circuit) fedAt(v *explore.View, edge int, end network.NodeID, from map[network.NodeID]bool) Feeding {
	flow, total := map[int]float64{}, 0.0
	way, seen := c.augment(v, edge, end, from, flow)
	for ; way != nil; way, seen = c.augment(v, edge, end, from, flow) {
		most := c.push(way, flow)
		if total += most; math.IsInf(most, 1) {
			return Feeding{Amps: most}
		}
	}
	out := Feeding{Amps: total}
	for _, e := range v.Zone.Edges {
		x := &c.Net.Edges[e]
		_, a := seen[x.A]
		_, b := seen[x.B]
		if math.Abs(flow[e]) > 1e-9 {
			out.Edges = append(out.Edges, e)
			if a != b {
				out.Devices = append(out.Devices, e)
			}
		}
	}
	slices.SortStableFunc(out.Devices, func(x, y int) int {
		return cmp.Compare(c.Net.Edges[y].Fuse.Rating.Value, c.Net.Edges[x].Fuse.Rating.Value)
	})
	return out
}

// push sends as much along a way as its devices still let pass, in A; +Inf sends nothing.
func (c *Circuit) push(way explore.Path, flow map[int]float64) float64 {
	most := math.Inf(1)
	for _, h := range way {
		most = min(most, c.left(h, flow))
	}
	if math.IsInf(most, 1) {
		return most
	}
	for _, h := range way {
		if h.From == c.Net.Edges[h.Edge].A {
			flow[h.Edge] += most
		} else {
			flow[h.Edge] -= most
		}
	}
	return most
}
