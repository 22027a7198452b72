package circuit

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// sums is what hangs on one side of a cut: what it can give and what it can take, in A.
type sums struct {
	gives     float64 // of sources with a limit
	endless   int     // sources without one
	charges   float64 // of gives, what can charge a battery
	endlessCh int
	draws     float64 // of loads and converter inputs
	lasting   float64 // of draws, what runs for three hours or more
	accepts   float64 // of batteries on charge
	endlessAc int
	surge     float64 // most that one starting load adds to its steady draw
	ports     int     // how many things hang there: a cut with none on one side carries nothing
}

func (a sums) plus(b sums) sums {
	return sums{a.gives + b.gives, a.endless + b.endless, a.charges + b.charges, a.endlessCh + b.endlessCh,
		a.draws + b.draws, a.lasting + b.lasting, a.accepts + b.accepts, a.endlessAc + b.endlessAc, max(a.surge, b.surge), a.ports + b.ports}
}

// through is what passes a device of a rating: neither side can pass more for long.
func (a sums) through(rating float64) sums {
	limit := func(v float64, endless int) (float64, int) {
		if endless > 0 || v > rating {
			return rating, 0
		}
		return v, 0
	}
	a.gives, a.endless = limit(a.gives, a.endless)
	a.charges, a.endlessCh = limit(a.charges, a.endlessCh)
	a.accepts, a.endlessAc = limit(a.accepts, a.endlessAc)
	a.draws, a.lasting = min(a.draws, rating), min(a.lasting, rating)
	return a
}

// charging is the least of what chargers give and batteries accept; neither bounded counts as nothing.
func charging(from, to sums) float64 {
	switch {
	case from.endlessCh == 0 && to.endlessAc == 0:
		return min(from.charges, to.accepts)
	case from.endlessCh == 0:
		return from.charges
	case to.endlessAc == 0:
		return to.accepts
	}
	return 0
}

// flow bounds the current from the giving side into the taking side.
func flow(from, to sums) (steady, lasting, peak float64) {
	charge := charging(from, to)
	steady, lasting = to.draws+charge, to.lasting+charge
	peak = steady + to.surge
	if from.endless == 0 {
		steady, lasting, peak = min(steady, from.gives), min(lasting, from.gives), min(peak, from.gives)
	}
	return steady, lasting, peak
}

// amount is the bound on an edge's current in one view.
type amount struct {
	steady, lasting, peak float64
	used                  bool // something hangs on both sides
	shared                bool // a ring shares it by resistance
}

// least is the smaller of two bounds on one edge.
func (a amount) least(b amount) amount {
	return amount{min(a.steady, b.steady), min(a.lasting, b.lasting), min(a.peak, b.peak), a.used, a.shared || b.shared}
}

func across(near, far sums) amount {
	s1, l1, p1 := flow(near, far)
	s2, l2, p2 := flow(far, near)
	return amount{max(s1, s2), max(l1, l2), max(p1, p2), near.ports > 0 && far.ports > 0, false}
}

// cut works out the bounds on every live edge of a view: the view's live graph as a tree of blocks
// joined by bridges, with what hangs below and above each bridge. Within a block, where current can
// take several ways, an edge gets the whole block's bound.
type cut struct {
	net    *network.Network
	edges  func(id network.NodeID) []int // that conduct, at a node
	capped bool                          // devices limit what passes them

	at     map[network.NodeID]sums // ports by node
	order  []network.NodeID        // depth-first
	up     map[network.NodeID]int  // edge towards the root; -1 at a root
	num    map[network.NodeID]int
	low    map[network.NodeID]int
	below  map[network.NodeID]sums // the subtree
	above  map[network.NodeID]sums // all but the subtree
	bounds map[int]amount
}

func newCut(n *network.Network, nodes []network.NodeID, edges func(network.NodeID) []int, ports map[network.NodeID]sums, capped bool) *cut {
	c := &cut{net: n, edges: edges, capped: capped, at: ports, up: map[network.NodeID]int{}, num: map[network.NodeID]int{},
		low: map[network.NodeID]int{}, below: map[network.NodeID]sums{}, above: map[network.NodeID]sums{}, bounds: map[int]amount{}}
	for _, id := range nodes {
		if _, seen := c.num[id]; !seen {
			first := len(c.order)
			c.walk(id)
			c.sum(c.order[first:])
		}
	}
	return c
}

// liveEdges lists the live edges at a node that conduct in a view.
func liveEdges(n *network.Network, v *explore.View) func(network.NodeID) []int {
	return func(id network.NodeID) []int {
		var out []int
		for _, e := range n.At(id) {
			if !n.Nodes[n.Edges[e].Other(id)].Return && v.Conducts(e) {
				out = append(out, e)
			}
		}
		return out
	}
}

// walk numbers a component depth-first, without recursion: plans from strangers may be deep.
func (c *cut) walk(root network.NodeID) {
	type frame struct {
		id    network.NodeID
		edges []int
	}
	enter := func(id network.NodeID, by int) frame {
		c.num[id], c.low[id], c.up[id] = len(c.order), len(c.order), by
		c.order = append(c.order, id)
		return frame{id, c.edges(id)}
	}
	stack := []frame{enter(root, -1)}
	for len(stack) > 0 {
		f := &stack[len(stack)-1]
		if len(f.edges) == 0 {
			stack = stack[:len(stack)-1]
			if by := c.up[f.id]; by >= 0 {
				p := c.net.Edges[by].Other(f.id)
				c.low[p] = min(c.low[p], c.low[f.id])
			}
			continue
		}
		e := f.edges[0]
		f.edges = f.edges[1:]
		if e == c.up[f.id] {
			continue
		}
		to := c.net.Edges[e].Other(f.id)
		if n, seen := c.num[to]; seen {
			c.low[f.id] = min(c.low[f.id], n)
			continue
		}
		stack = append(stack, enter(to, e))
	}
}

func (c *cut) bridge(id network.NodeID) bool { return c.up[id] >= 0 && c.low[id] == c.num[id] }

func (c *cut) parent(id network.NodeID) network.NodeID { return c.net.Edges[c.up[id]].Other(id) }

// limit is what a subtree's sums become on the far side of the edge above it.
func (c *cut) limit(s sums, edge int, bridge bool) sums {
	if e := &c.net.Edges[edge]; c.capped && bridge && e.Kind == network.Element && e.Fuse.Rating.Set {
		return s.through(e.Fuse.Rating.Value)
	}
	return s
}

// sum works out one component: subtrees from the leaves up, the rest from the root down.
func (c *cut) sum(order []network.NodeID) {
	children := map[network.NodeID][]network.NodeID{}
	for _, id := range order[1:] {
		p := c.parent(id)
		children[p] = append(children[p], id)
	}
	for i := len(order) - 1; i >= 0; i-- {
		id := order[i]
		s := c.at[id]
		for _, k := range children[id] {
			s = s.plus(c.limit(c.below[k], c.up[k], c.bridge(k)))
		}
		c.below[id] = s
	}
	for _, id := range order {
		c.share(id, children[id])
	}
	all := c.below[order[0]]
	for _, id := range order {
		for _, e := range c.edges(id) {
			if _, done := c.bounds[e]; done {
				continue
			}
			if child, ok := c.isBridge(e); ok {
				c.bounds[e] = across(c.above[child], c.below[child])
			} else {
				c.bounds[e] = across(all, all)
			}
		}
	}
}

// share gives every child what is above it: what is above its parent, the parent's own ports and the
// other children, summed from both ends so that a bus with many branches stays cheap.
func (c *cut) share(id network.NodeID, kids []network.NodeID) {
	rest := c.at[id].plus(c.aboveLimited(id))
	after := make([]sums, len(kids)+1)
	for i := len(kids) - 1; i >= 0; i-- {
		after[i] = after[i+1].plus(c.limit(c.below[kids[i]], c.up[kids[i]], c.bridge(kids[i])))
	}
	before := sums{}
	for i, k := range kids {
		c.above[k] = rest.plus(before).plus(after[i+1])
		before = before.plus(c.limit(c.below[k], c.up[k], c.bridge(k)))
	}
}

func (c *cut) aboveLimited(id network.NodeID) sums {
	if c.up[id] < 0 {
		return sums{}
	}
	return c.limit(c.above[id], c.up[id], c.bridge(id))
}

// isBridge says whether an edge is one, and which of its ends is the lower.
func (c *cut) isBridge(e int) (network.NodeID, bool) {
	for _, id := range []network.NodeID{c.net.Edges[e].A, c.net.Edges[e].B} {
		if c.up[id] == e && c.bridge(id) {
			return id, true
		}
	}
	return network.None, false
}
