package explore_test

import (
	"math"
	"math/rand"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// beyond adds up the weights of the nodes that closed edges join to an edge's far end without it.
func beyond(n *network.Network, v *explore.View, edges []int, edge int, from network.NodeID, weights map[network.NodeID]float64) float64 {
	in := map[network.NodeID]bool{n.Edges[edge].Other(from): true}
	for grown := true; grown; {
		grown = false
		for _, e := range edges {
			if x := &n.Edges[e]; e != edge && v.Conducts(e) && in[x.A] != in[x.B] {
				in[x.A], in[x.B], grown = true, true, true
			}
		}
	}
	sum := 0.0
	for id := range in {
		sum += weights[id]
	}
	return sum
}

func live(n *network.Network, z *network.Zone) (out []int) {
	for _, e := range z.Edges {
		if x := &n.Edges[e]; !n.Nodes[x.A].Return && !n.Nodes[x.B].Return {
			out = append(out, e)
		}
	}
	return out
}

// TestWeighAgainstListing compares the largest sum beyond each end of each edge with a listing of all
// states: where it is exact it is that, and its state has it; where it is not, it is no less.
func TestWeighAgainstListing(t *testing.T) {
	exact, bound := 0, 0
	many(t, 120, func(t *rapid.T) {
		d := draw(t)
		for _, z := range d.n.Zones {
			f := d.filter(t)
			weights := map[network.NodeID]float64{}
			for _, id := range z.Nodes {
				weights[id] = float64(rapid.IntRange(0, 9).Draw(t, "weight"))
			}
			b, all, edges := d.s.Weigh(z, f, nil, weights), listed(t, d.s, z, f), live(d.n, z)
			for range min(4, len(edges)) {
				e := rapid.SampledFrom(edges).Draw(t, "edge")
				for _, from := range []network.NodeID{d.n.Edges[e].A, d.n.Edges[e].B} {
					want := -1.0
					for _, v := range all {
						if v.Conducts(e) {
							want = max(want, beyond(d.n, v, edges, e, from, weights))
						}
					}
					got, ok := b.Beyond(e, from)
					if !ok && want >= 0 || got.Exact && got.Value != want || got.Value < want {
						t.Fatalf("beyond %s from %s: %+v %v, listed %g\n%s", d.n.Edges[e].Addr, d.n.Nodes[from].Name(), got, ok, want, d.text)
					}
					if !got.Exact {
						bound++
						continue
					}
					exact++
					if !got.View.Conducts(e) || beyond(d.n, got.View, edges, e, from, weights) != want {
						t.Fatalf("the state does not have it: %+v, listed %g\n%s", got, want, d.text)
					}
				}
			}
		}
	})
	if exact == 0 || bound == 0 {
		t.Errorf("%d sums exact, %d bounds", exact, bound)
	}
}

// TestWeighTrees: in trees of selectors all sums are exact.
func TestWeighTrees(t *testing.T) {
	n, s := build(t, treePlan(rand.New(rand.NewSource(1)), 60))
	b := s.Weigh(n.Zones[0], explore.All(), nil, loads(n))
	total, edges := 0.0, live(n, n.Zones[0])
	for _, e := range edges {
		for _, from := range []network.NodeID{n.Edges[e].A, n.Edges[e].B} {
			g, ok := b.Beyond(e, from)
			if !ok || !g.Exact {
				t.Fatalf("%s: %+v %v", n.Edges[e].Addr, g, ok)
			}
			total = math.Max(total, g.Value)
		}
	}
	if total < 2 || len(edges) < 300 {
		t.Errorf("the most is %g beyond one of %d edges", total, len(edges))
	}
}

func loads(n *network.Network) map[network.NodeID]float64 {
	out := map[network.NodeID]float64{}
	for _, l := range n.Loads {
		out[l.Hot] = l.Draw.Value
	}
	return out
}
