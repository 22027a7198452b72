package circuit

import "ferrule/lint/network"

// parted tells for every edge of a solved state what it cuts off, from one walk over the state.
type parted struct {
	*cut
	root map[network.NodeID]network.NodeID // the first of all that is joined
	last map[network.NodeID]int            // the last of a subtree, as a place in the order
}

func (p *Point) parted() *parted {
	if p.parts != nil {
		return p.parts
	}
	n := p.c.Net
	conducting := func(id network.NodeID) []int {
		var out []int
		for _, e := range n.At(id) {
			if _, in := p.wiring.branch[e]; in {
				out = append(out, e)
			}
		}
		return out
	}
	t := &parted{newCut(n, p.View.Zone.Known(), conducting, nil, false), map[network.NodeID]network.NodeID{}, map[network.NodeID]int{}}
	for i, id := range t.order { // parents come first
		t.root[id], t.last[id] = id, i
		if t.up[id] >= 0 {
			t.root[id] = t.root[t.parent(id)]
		}
	}
	for i := len(t.order) - 1; i >= 0; i-- {
		if id := t.order[i]; t.up[id] >= 0 {
			t.last[t.parent(id)] = max(t.last[t.parent(id)], t.last[id])
		}
	}
	p.parts = t
	return t
}

// beyond tells the nodes that an edge cuts off, the smaller part; meshed says that it cuts off nothing, and
// tells all nodes.
func (p *Point) beyond(edge int) (inside func(network.NodeID) bool, meshed bool) {
	t := p.parted()
	joined := func(id network.NodeID) bool {
		r, in := t.root[id]
		return in && r == t.root[p.c.Net.Edges[edge].A]
	}
	child, bridge := t.isBridge(edge)
	if !bridge {
		return joined, true
	}
	below := func(id network.NodeID) bool {
		return joined(id) && t.num[id] >= t.num[child] && t.num[id] <= t.last[child]
	}
	root := t.root[child]
	if size := t.last[child] - t.num[child] + 1; 2*size > t.last[root]-t.num[root]+1 {
		return func(id network.NodeID) bool { return joined(id) && !below(id) }, false
	}
	return below, false
}
