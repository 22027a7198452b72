package explore

import (
	"container/heap"
	"slices"
	"sort"

	"ferrule/lint/network"
)

// Hop is one edge of a way, in the direction walked.
type Hop struct {
	Edge     int
	From, To network.NodeID
}

// Path is a way through the network, hops in order.
type Path []Hop

// Reach is the shortest ways from one node to all that it reaches.
type Reach struct {
	From network.NodeID
	Dist map[network.NodeID]float64
	via  map[network.NodeID]Hop
}

// Reach walks from a node over closed edges that use admits; use is told the edge and the node that
// it is entered from. cost is an edge's length; nil counts edges.
func (v *View) Reach(from network.NodeID, use func(edge int, at network.NodeID) bool, cost func(edge int) float64) *Reach {
	v.tick()
	r := &Reach{From: from, Dist: map[network.NodeID]float64{from: 0}, via: map[network.NodeID]Hop{}}
	q := &queue{{from, 0}}
	for q.Len() > 0 {
		at := heap.Pop(q).(item)
		if at.dist > r.Dist[at.node] {
			continue
		}
		for _, e := range v.net.At(at.node) {
			if !v.Conducts(e) || use != nil && !use(e, at.node) {
				continue
			}
			to, d := v.net.Edges[e].Other(at.node), at.dist+1
			if cost != nil {
				d = at.dist + cost(e)
			}
			if old, seen := r.Dist[to]; !seen || d < old {
				r.Dist[to], r.via[to] = d, Hop{e, at.node, to}
				heap.Push(q, item{to, d})
			}
		}
	}
	return r
}

// Between is the way of fewest edges between two nodes, nil where there is none: what Reach has to one of them,
// without the others.
func (v *View) Between(from, to network.NodeID) Path {
	v.tick()
	via := make([]Hop, len(v.net.Nodes))
	seen := make([]bool, len(v.net.Nodes))
	seen[from] = true
	for level := []network.NodeID{from}; len(level) > 0 && !seen[to]; {
		var next []network.NodeID
		for _, at := range level {
			for _, e := range v.net.At(at) {
				if o := v.net.Edges[e].Other(at); !seen[o] && v.Conducts(e) {
					seen[o], via[o] = true, Hop{e, at, o}
					next = append(next, o)
				}
			}
		}
		slices.Sort(next) // ties go to the lower node
		level = next
	}
	if !seen[to] {
		return nil
	}
	var p Path
	for id := to; id != from; id = via[id].From {
		p = append(p, via[id])
	}
	slices.Reverse(p)
	return p
}

// To gives the way to a node; nil where it is not reached.
func (r *Reach) To(id network.NodeID) Path {
	if _, ok := r.Dist[id]; !ok {
		return nil
	}
	var p Path
	for id != r.From {
		h := r.via[id]
		p = append(p, h)
		id = h.From
	}
	for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
		p[i], p[j] = p[j], p[i]
	}
	return p
}

type item struct {
	node network.NodeID
	dist float64
}

// queue is a priority queue; ties go to the lower node so that ways are the same every run.
type queue []item

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	return q[i].dist < q[j].dist || q[i].dist == q[j].dist && q[i].node < q[j].node
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(item)) }
func (q *queue) Pop() any {
	old := *q
	x := old[len(old)-1]
	*q = old[:len(old)-1]
	return x
}

// Places names the terminals of a way in order, each once, starting where it starts.
func (v *View) Places(from network.NodeID, p Path) []string {
	out := []string{v.net.Nodes[from].Place()}
	for _, h := range p {
		if name := v.net.Nodes[h.To].Place(); name != out[len(out)-1] {
			out = append(out, name)
		}
	}
	return out
}

// Back is the same way walked from its end.
func (p Path) Back() Path {
	out := make(Path, 0, len(p))
	for i := len(p) - 1; i >= 0; i-- {
		out = append(out, Hop{p[i].Edge, p[i].To, p[i].From})
	}
	return out
}

// Edges lists the edges of a way.
func (p Path) Edges() []int {
	out := make([]int, len(p))
	for i, h := range p {
		out[i] = h.Edge
	}
	return out
}

// Witness is the part of the view's state that matters to some edges and sources: the positions
// that their conditions ask for, in order of address.
func (v *View) Witness(edges []int, sources ...int) []network.Position {
	var vars []int
	for _, e := range edges {
		for _, l := range v.net.Edges[e].When {
			vars = append(vars, l.Var)
		}
	}
	for _, i := range sources {
		if p := v.net.Sources[i].Present; p >= 0 {
			vars = append(vars, p)
		}
	}
	return v.State(vars)
}

// State is the positions of some variables, in order of address. A follower is told by what it
// follows, since that is what somebody can set.
func (v *View) State(vars []int) []network.Position {
	set := map[int]bool{}
	var add func(i int)
	add = func(i int) {
		if v.pos[i] < 0 || set[i] {
			return
		}
		if x := &v.net.Vars[i]; x.Follower && len(x.Follows) > 0 {
			for _, f := range x.Follows {
				if v.pos[i] == x.Closed {
					add(f)
				} else if v.pos[f] != closedAt(v.net, f) { // one that is away opens it
					add(f)
					return
				}
			}
			return
		}
		set[i] = true
	}
	for _, i := range vars {
		add(i)
	}
	out := make([]network.Position, 0, len(set))
	for i := range set {
		out = append(out, network.Position{Addr: v.net.Vars[i].Addr, Position: v.position(i)})
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Addr < out[j].Addr })
	return out
}

func (v *View) position(i int) string {
	x := &v.net.Vars[i]
	if t := v.Transit; t != nil && t.Var == i {
		what := " (gap)"
		if t.Throw.Overlap {
			what = " (overlap)"
		}
		return x.Positions[t.Throw.From] + ">" + x.Positions[t.Throw.To] + what
	}
	return x.Positions[v.pos[i]]
}
