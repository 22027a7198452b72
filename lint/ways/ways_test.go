package ways_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/ways"
)

func other(e ways.Edge, n int32) int32 { return e[0] + e[1] - n }

// TestBetween compares with a walk of every simple way.
func TestBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := rapid.IntRange(2, 7).Draw(t, "nodes")
		node := rapid.Int32Range(0, int32(nodes-1))
		var edges []ways.Edge
		for range rapid.IntRange(0, 10).Draw(t, "edges") {
			edges = append(edges, ways.Edge{node.Draw(t, "a"), node.Draw(t, "b")})
		}
		from := node.Draw(t, "from")
		to := (from + rapid.Int32Range(1, int32(nodes-1)).Draw(t, "step")) % int32(nodes)
		on := map[int32]bool{}
		var way []int32
		seen := map[int32]bool{from: true}
		var walk func(at int32)
		walk = func(at int32) {
			if at == to {
				for _, e := range way {
					on[e] = true
				}
				return
			}
			for i, e := range edges {
				if e[0] != at && e[1] != at || seen[other(e, at)] {
					continue
				}
				seen[other(e, at)] = true
				way = append(way, int32(i))
				walk(other(e, at))
				way = way[:len(way)-1]
				seen[other(e, at)] = false
			}
		}
		walk(from)
		got := ways.Between(edges, nodes, from, to)
		for i := range edges {
			if slices.Contains(got, int32(i)) != on[int32(i)] {
				t.Fatalf("%v from %d to %d: edge %d in %v, and on a way: %v", edges, from, to, i, got, on[int32(i)])
			}
		}
	})
}
