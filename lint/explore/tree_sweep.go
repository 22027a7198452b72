package explore

import "math"

// sweep passes what lies beyond each link up the tree and then down.
func (t *tree) sweep() {
	t.gains = [2][]gain{make([]gain, len(t.links)), make([]gain, len(t.links))}
	up := make([]int32, len(t.at))
	seen := make([]bool, len(t.at))
	for root := range t.at {
		if seen[root] || len(t.at[root]) == 0 {
			continue
		}
		seen[root], up[root] = true, -1
		order := []int32{int32(root)}
		for i := 0; i < len(order); i++ {
			for _, l := range t.at[order[i]] {
				if n := t.far(l, order[i]); !seen[n] {
					seen[n], up[n] = true, l
					order = append(order, n)
				}
			}
		}
		for i := len(order) - 1; i > 0; i-- {
			x := order[i]
			t.tell(x, up[x], t.beside(x, up[x]))
		}
		for _, x := range order {
			t.pass(x, up[x])
		}
	}
}

func (t *tree) far(l, x int32) int32 {
	if t.links[l].a == x {
		return t.links[l].b
	}
	return t.links[l].a
}

// side is which of a link's gains lies on the side of a vertex.
func (t *tree) side(l, x int32) int {
	if t.links[l].a == x {
		return 0
	}
	return 1
}

func (t *tree) tell(x, l int32, g gain) { t.gains[t.side(l, x)][l] = g }

// from is what lies beyond a link seen from a vertex.
func (t *tree) from(x, l int32) gain { return t.gains[1-t.side(l, x)][l] }

// beside is what lies on a vertex's side of one of its links.
func (t *tree) beside(x, l int32) gain {
	if t.of[x] != nil {
		return t.best(x, l)
	}
	g := t.own[x]
	for _, o := range t.at[x] {
		if o != l {
			g = g.plus(t.from(x, o))
		}
	}
	return g
}

// pass tells a vertex's links, but the one that leads up, what lies on its side.
func (t *tree) pass(x, up int32) {
	list := t.at[x]
	if t.of[x] != nil {
		for _, l := range list {
			if l != up {
				t.tell(x, l, t.best(x, l))
			}
		}
		return
	}
	after := make([]gain, len(list)+1)
	after[len(list)] = own(0, false)
	for i := len(list) - 1; i >= 0; i-- {
		after[i] = after[i+1].plus(t.from(x, list[i]))
	}
	before := t.own[x]
	for i, l := range list {
		if l != up {
			t.tell(x, l, before.plus(after[i+1]))
		}
		before = before.plus(t.from(x, l))
	}
}

// best is the most that a switch can join to one of its terminals.
func (t *tree) best(x, l int32) gain {
	out := gain{amount{sum: math.Inf(-1)}, amount{sum: math.Inf(-1)}}
	for k := range t.q.value[t.of[x].v] {
		if t.q.open[t.of[x].v].has(k) {
			out = out.more(t.joined(x, k, t.links[l].node, -1).choice(t.of[x].v, k, !t.q.rest[t.of[x].v].has(k)))
		}
	}
	return out
}

// joined is what a switch at a value joins to a terminal, less by one edge.
func (t *tree) joined(x int32, k int, node int32, less int) gain {
	in := map[int32]bool{node: true}
	for grown := true; grown; {
		grown = false
		for _, e := range t.of[x].edges {
			if c := t.edge[e]; e != less && c.in.has(k) && in[c.a] != in[c.b] {
				in[c.a], in[c.b], grown = true, true, true
			}
		}
	}
	out := own(0, false)
	for _, l := range t.at[x] {
		if n := t.links[l].node; n != node && in[n] {
			out = out.plus(t.from(x, l))
		}
	}
	return out
}
