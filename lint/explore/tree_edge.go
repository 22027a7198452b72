package explore

import (
	"math"

	"ferrule/lint/network"
)

// beyond is what lies beyond an edge seen from one of its ends; ok is false where it does not count or
// conducts in no state.
func (t *tree) beyond(edge int, from network.NodeID) (g gain, ok bool) {
	c, ok := t.edge[edge]
	if !ok {
		return g, false
	}
	near, far := c.a, c.b
	if t.q.zone.Local(from) != near {
		near, far = far, near
	}
	x, y := t.place[near], t.place[far]
	ring := x
	if c.v >= 0 {
		ring = t.vertex[c.v]
	}
	if x == y || c.v >= 0 && t.of[ring] == nil { // in a ring: no more than all that is joined to it
		g = t.beside(ring, -1)
		g.any.loose = true
		return g, true
	}
	if c.v >= 0 {
		return t.through(edge, far)
	}
	for _, l := range t.at[x] {
		if t.far(l, x) == y {
			return t.from(x, l), true
		}
	}
	return g, false
}

// through is what lies beyond a contact of a switch that chooses, in the positions that close it.
func (t *tree) through(edge int, far int32) (gain, bool) {
	c := t.edge[edge]
	x := t.vertex[c.v]
	var own gain
	for _, l := range t.at[x] {
		if t.links[l].node == far {
			own = t.from(x, l)
		}
	}
	out := gain{amount{sum: math.Inf(-1)}, amount{sum: math.Inf(-1)}}
	for k := range t.q.value[c.v] {
		if !c.in.has(k) || !t.q.open[c.v].has(k) {
			continue
		}
		out = out.more(own.plus(t.joined(x, k, far, edge)).choice(c.v, k, !t.q.rest[c.v].has(k)))
	}
	return out, true
}

// rings numbers vertices so that those of one ring share a number: two ways lead from each to each
// other that have no link in common.
func rings(links []link, n int) []int32 {
	at := make([][]int32, n)
	for i, l := range links {
		at[l.a], at[l.b] = append(at[l.a], int32(i)), append(at[l.b], int32(i))
	}
	one := newForest(n)
	depth, low := make([]int32, n), make([]int32, n)
	for root := range n {
		if depth[root] > 0 {
			continue
		}
		depth[root], low[root] = 1, 1
		stack := []frame{{node: int32(root), by: -1}}
		for len(stack) > 0 {
			f := &stack[len(stack)-1]
			if f.next == len(at[f.node]) {
				x, by := f.node, f.by
				if stack = stack[:len(stack)-1]; by >= 0 {
					up := stack[len(stack)-1].node
					if low[up] = min(low[up], low[x]); low[x] <= depth[up] {
						one.union(x, up)
					}
				}
				continue
			}
			l := at[f.node][f.next]
			f.next++
			to := links[l].a
			if to == f.node {
				to = links[l].b
			}
			switch {
			case l == f.by:
			case depth[to] == 0:
				depth[to] = depth[f.node] + 1
				low[to] = depth[to]
				stack = append(stack, frame{node: to, by: l})
			default:
				low[f.node] = min(low[f.node], depth[to])
			}
		}
	}
	out := make([]int32, n)
	for i := range out {
		out[i] = one.top(int32(i))
	}
	return out
}

type frame struct {
	node, by int32
	next     int
}
