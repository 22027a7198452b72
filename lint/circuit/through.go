package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Through is the most, in A, that runs between a live node and things at other nodes of a view, each
// with its own current: their sum, where what lies behind a device that is the only way to it counts
// for no more than the device's rating. without is an edge to leave out, -1 for none.
func (c *Circuit) Through(v *explore.View, at network.NodeID, without int, amps map[network.NodeID]float64) float64 {
	ports := make(map[network.NodeID]sums, len(amps))
	for id, a := range amps {
		ports[id] = sums{draws: a, ports: 1}
	}
	live := liveEdges(c.Net, v)
	edges := func(id network.NodeID) []int {
		list := live(id)
		for k, e := range list {
			if e == without {
				return append(list[:k:k], list[k+1:]...)
			}
		}
		return list
	}
	return newCut(c.Net, []network.NodeID{at}, edges, ports, true).below[at].draws
}

// Occasion is states of a zone with the loads that may run in them.
type Occasion struct {
	Views    []*explore.View
	Complete bool
	Runs     func(load int) bool
}

// Occasions lists the states of a zone by what may run in them: a load with `runs_in` runs in its
// modes only.
func (c *Circuit) Occasions(z *network.Zone) []Occasion {
	var out []Occasion
	for _, o := range c.occasions(z) {
		views, complete := c.Space.Views(z, o.filter)
		out = append(out, Occasion{views, complete, o.runs})
	}
	return out
}

// Devices lists the ratings of the overcurrent devices among edges that are below a current in A,
// each once.
func (c *Circuit) Devices(edges []int, below float64) []derive.Number {
	var out []derive.Number
	seen := map[int]bool{}
	for _, e := range edges {
		x := &c.Net.Edges[e]
		if x.Kind == network.Element && !seen[e] && x.Fuse.Rating.Set && x.Fuse.Rating.Value < below {
			seen[e] = true
			out = append(out, read("rating of "+quote(x.Fuse), "In", x.Fuse.Rating, "A", x.Fuse, "rating"))
		}
	}
	return out
}
