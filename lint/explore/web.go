package explore

import (
	"ferrule/lint/network"
	"ferrule/lint/ways"
)

// web is what can lie on a way between two nodes: nodes that are always joined are one, and only
// edges on some simple way are kept.
type web struct {
	from, to int32
	edges    []strand
	at       [][]int32 // edges by node

	dist []int32 // of the last look: how many terms are still to be met, by node
	via  []int32 // edge by which a node was entered
	ring [][]int32
}

type strand struct {
	a, b int32
	when rule
	edge int // of the network
}

func (e *strand) other(n int32) int32 {
	if e.a == n {
		return e.b
	}
	return e.a
}

// posed is a puzzle with the conditions of a zone's edges; it is made once for many questions.
type posed struct {
	*puzzle
	zone  *network.Zone
	edges []int
	when  []rule // by entry of edges; nil for what always conducts
	never []bool // by entry: closed in no state
	first []int  // a whole allowed state at rest
	some  Truth  // whether there is one

	base   forest // what always joins, see always
	parted []int
}

// pose prepares the questions of a zone under one choice.
func (s *Space) pose(z *network.Zone, c choice) *posed {
	q := &posed{puzzle: s.puzzle(c, z.Vars), zone: z}
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			when, ever := q.ever(q.condition(s.Net.Edges[e].When))
			q.edges, q.when, q.never = append(q.edges, e), append(q.when, when), append(q.never, !ever)
		}
	}
	s.begin(q)
	return q
}

// ever drops the terms that always hold; ok is false where one never does.
func (p *puzzle) ever(r rule) (out rule, ok bool) {
	for _, t := range r {
		if !p.open[t.v].meets(t.in) {
			return nil, false
		}
		if !p.open[t.v].within(t.in) {
			out = append(out, t)
		}
	}
	return out, true
}

// plot is the part of a zone that may be used, under one choice, with nodes that are always joined as one.
type plot struct {
	*posed
	node  []int32 // by the zone's own number of a node
	size  int
	edges []strand
}

func (q *posed) plot(use func(edge int) bool) *plot {
	one := newForest(q.zone.Size())
	var parted []int
	for i, e := range q.edges {
		switch {
		case q.never[i] || use != nil && !use(e):
		case q.when[i] != nil:
			parted = append(parted, i)
		default:
			one.union(q.ends(e))
		}
	}
	p := &plot{posed: q, node: make([]int32, len(one))}
	for i := range one {
		if r := one.top(int32(i)); r == int32(i) { // the first of its set
			p.node[i] = int32(p.size)
			p.size++
		} else {
			p.node[i] = p.node[r]
		}
	}
	for _, i := range parted {
		if a, b := q.ends(q.edges[i]); p.node[a] != p.node[b] {
			p.edges = append(p.edges, strand{p.node[a], p.node[b], q.when[i], q.edges[i]})
		}
	}
	return p
}

// ends are the zone's own numbers of an edge's nodes.
func (q *posed) ends(edge int) (a, b int32) {
	x := &q.net.Edges[edge]
	return q.zone.Local(x.A), q.zone.Local(x.B)
}

// of is the number of a node, -1 for one that the zone does not know.
func (p *plot) of(id network.NodeID) int32 {
	if i := p.zone.Local(id); i >= 0 {
		return p.node[i]
	}
	return -1
}

// web is what can lie between two nodes; joined says that they always are, and a nil web without
// that, that they never are.
func (p *plot) web(from, to int32) (w *web, joined bool) {
	if from < 0 || to < 0 || from == to {
		return nil, from == to && from >= 0
	}
	w = &web{from: from, to: to, edges: p.edges, at: make([][]int32, p.size)}
	if !w.narrow() {
		return nil, false
	}
	return w, false
}

// narrow keeps the edges on simple ways between the ends and numbers their nodes anew; false where
// there are none.
func (w *web) narrow() bool {
	ends := make([]ways.Edge, len(w.edges))
	for i, e := range w.edges {
		ends[i] = ways.Edge{e.a, e.b}
	}
	kept := ways.Between(ends, len(w.at), w.from, w.to)
	if len(kept) == 0 {
		return false
	}
	number := map[int32]int32{}
	own := func(n int32) int32 {
		if _, ok := number[n]; !ok {
			number[n] = int32(len(number))
		}
		return number[n]
	}
	w.from, w.to = own(w.from), own(w.to)
	edges := make([]strand, len(kept))
	for i, k := range kept {
		e := w.edges[k]
		edges[i] = strand{own(e.a), own(e.b), e.when, e.edge}
	}
	w.edges, w.at = edges, make([][]int32, len(number))
	for i, e := range edges {
		w.at[e.a], w.at[e.b] = append(w.at[e.a], int32(i)), append(w.at[e.b], int32(i))
	}
	w.dist, w.via = make([]int32, len(number)), make([]int32, len(number))
	return true
}

// forest is a disjoint-set forest.
type forest []int32

func newForest(n int) forest {
	f := make(forest, n)
	for i := range f {
		f[i] = int32(i)
	}
	return f
}

func (f forest) top(i int32) int32 {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

func (f forest) union(a, b int32) {
	if a, b = f.top(a), f.top(b); a != b {
		f[max(a, b)] = min(a, b)
	}
}
