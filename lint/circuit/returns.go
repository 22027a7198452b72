package circuit

import (
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// Returns is the ways home as a net of resistances. It tells which part of a current runs through an
// edge, the contacts of its rings closed or open in every combination, and what becomes of it once one
// return has opened for good. Bridges carry all of a current or nothing; within rings it divides.
type Returns struct {
	Solved bool             // false where the shares of a ring are not known
	Lacks  []derive.Missing // why not

	c       *Circuit
	ring    []bool // by edge
	class   []int  // by node: what bridges join is one; -1 where nothing comes home
	edges   []int  // of rings
	siemens map[int]float64
	ohms    []derive.Number
	cases   []ringCase
	sides   map[int][2]map[network.NodeID]bool // by bridge: on the side of its A, and of its B
}

// ringCase is the rings with some of their contacts open.
type ringCase struct {
	open map[int]bool
	comp []int       // by class: what is joined
	inv  [][]float64 // volts at a class for an ampere into another, against the first of its component
}

// Returns prepares the ways home.
func (c *Circuit) Returns() *Returns {
	r := &Returns{c: c, siemens: map[int]float64{}, sides: map[int][2]map[network.NodeID]bool{}}
	r.findRings()
	r.contract()
	for _, e := range r.edges {
		n, lacks := c.Ohms(e, Operating)
		r.Lacks, r.ohms = merge(r.Lacks, lacks...), append(r.ohms, known(n)...)
		r.siemens[e] = 1 / max(n.Value, smallOhms)
	}
	if len(r.Lacks) == 0 {
		r.solve()
	}
	if r.Solved = len(r.Lacks) == 0; !r.Solved {
		r.cases = []ringCase{{}} // bridges need none
	}
	return r
}

// Knows says whether the shares of an edge are known.
func (r *Returns) Knows(e int) bool { return r.Solved || !r.ring[e] }

// Ring says whether an edge lies on a loop of returns.
func (r *Returns) Ring(e int) bool { return r.ring[e] }

// Share is the largest part, 0 to 1, of a current from one return home to another that runs through an edge, with the contacts
// of rings closed or open in every combination. lacks names what keeps that from being told.
func (r *Returns) Share(e int, from, to network.NodeID) (part float64, lacks []derive.Missing) {
	if from == network.None || to == network.None {
		return 0, nil
	}
	if !r.Knows(e) {
		if k, m := r.class[from], r.class[to]; k < 0 || m < 0 || k == m { // no ring is on its way
			return 0, nil
		}
		return 0, r.Lacks
	}
	for i := range r.caseCount(e) {
		part = max(part, math.Abs(r.share(&r.cases[i], e, -1, from, to)))
	}
	return part, nil
}

func (r *Returns) home(e int) bool {
	x := &r.c.Net.Edges[e]
	return r.c.comesHome(x.A) && r.c.comesHome(x.B)
}

// findRings marks the edges that lie on a loop: of each edge outside a spanning forest, the whole way
// through the forest.
func (r *Returns) findRings() {
	n := r.c.Net
	r.ring = make([]bool, len(n.Edges))
	up, depth, order := r.forest()
	top := newUnion(len(n.Nodes)) // the highest node that loops join a node to
	for _, id := range order {
		for _, e := range n.At(id) {
			if !r.home(e) || up[id] == e || up[n.Edges[e].Other(id)] == e {
				continue
			}
			r.ring[e] = true
			for a, b := top.find(int(n.Edges[e].A)), top.find(int(n.Edges[e].B)); a != b; a, b = top.find(a), top.find(b) {
				if depth[a] < depth[b] {
					a, b = b, a
				}
				r.ring[up[a]] = true
				top[a] = int(n.Edges[up[a]].Other(network.NodeID(a)))
			}
		}
	}
}

// forest spans the ways home: by node the edge towards the root, -1 at a root, and how far that is.
func (r *Returns) forest() (up, depth []int, order []network.NodeID) {
	n := r.c.Net
	up, depth = make([]int, len(n.Nodes)), make([]int, len(n.Nodes))
	seen := make([]bool, len(n.Nodes))
	for root := range n.Nodes {
		if seen[root] || !r.c.comesHome(network.NodeID(root)) {
			continue
		}
		seen[root], up[root] = true, -1
		order = append(order, network.NodeID(root))
		for i := len(order) - 1; i < len(order); i++ {
			for _, e := range n.At(order[i]) {
				if to := n.Edges[e].Other(order[i]); r.home(e) && !seen[to] {
					seen[to], up[to], depth[to] = true, e, depth[order[i]]+1
					order = append(order, to)
				}
			}
		}
	}
	return up, depth, order
}

// union is a forest of sets over 0..n-1.
type union []int

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = i
	}
	return u
}

func (u union) find(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

// join makes one set of two; the least of its members stands for it.
func (u union) join(a, b int) {
	a, b = u.find(a), u.find(b)
	u[max(a, b)] = min(a, b)
}

// contract makes one class of what bridges join, and lists the edges between classes.
func (r *Returns) contract() {
	n := r.c.Net
	u := newUnion(len(n.Nodes))
	for e := range n.Edges {
		if r.home(e) && !r.ring[e] {
			u.join(int(n.Edges[e].A), int(n.Edges[e].B))
		}
	}
	r.class = make([]int, len(n.Nodes))
	number := map[int]int{}
	for e := range n.Edges {
		if !r.ring[e] {
			continue
		}
		r.edges = append(r.edges, e)
		for _, id := range []network.NodeID{n.Edges[e].A, n.Edges[e].B} {
			if _, ok := number[u.find(int(id))]; !ok {
				number[u.find(int(id))] = len(number)
			}
		}
	}
	for i := range r.class {
		r.class[i] = -1
		if k, ok := number[u.find(i)]; ok {
			r.class[i] = k
		}
	}
}

// solve works out every combination of the contacts that open.
func (r *Returns) solve() {
	groups := (&ring{edges: r.edges}).openers(r.c)
	classes := 0
	for _, k := range r.class {
		classes = max(classes, k+1)
	}
	if n := float64(classes); len(groups) > mostOpeners || n*n*n*math.Exp2(float64(len(groups))) > mostWork {
		r.Lacks = merge(r.Lacks, derive.Missing{Subject: "plan", Attribute: "a simpler ring of returns"})
		return
	}
	for mask := range 1 << len(groups) {
		s := ringCase{open: map[int]bool{}}
		for i, edges := range groups {
			for _, e := range edges {
				s.open[e] = mask>>i&1 == 1
			}
		}
		r.cases = append(r.cases, r.invert(s, classes))
	}
}

// invert solves one case. In each component the first class is at 0 V.
func (r *Returns) invert(s ringCase, n int) ringCase {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, 2*n)
		a[i][n+i] = 1
	}
	u := newUnion(n)
	for _, e := range r.edges {
		i, j := r.class[r.c.Net.Edges[e].A], r.class[r.c.Net.Edges[e].B]
		if s.open[e] || i == j {
			continue
		}
		g := r.siemens[e]
		a[i][i], a[j][j], a[i][j], a[j][i] = a[i][i]+g, a[j][j]+g, a[i][j]-g, a[j][i]-g
		u.join(i, j)
	}
	s.comp = make([]int, n)
	for i := range n {
		if s.comp[i] = u.find(i); s.comp[i] == i {
			clear(a[i])
			a[i][i] = 1
		}
	}
	for i := range n { // each block but its first row is symmetric and dominant: no pivoting needed
		p := a[i][i]
		for k := i; k < 2*n; k++ {
			a[i][k] /= p
		}
		for j := range n {
			if f := a[j][i]; j != i && f != 0 {
				for k := i; k < 2*n; k++ {
					a[j][k] -= f * a[i][k]
				}
			}
		}
	}
	for i := range a {
		s.inv = append(s.inv, a[i][n:])
	}
	return s
}

// shift is the current in a ring's edge, from its A to its B, for an ampere from one class to another.
func (r *Returns) shift(s *ringCase, e, from, to int) float64 {
	if s.open[e] {
		return 0
	}
	a, b := r.class[r.c.Net.Edges[e].A], r.class[r.c.Net.Edges[e].B]
	return r.siemens[e] * (s.inv[a][from] - s.inv[a][to] - s.inv[b][from] + s.inv[b][to])
}

// share is that part of a current from one node to another which runs through an edge, from its A to
// its B, once the edge gone has opened; -1 for none.
func (r *Returns) share(s *ringCase, e, gone int, from, to network.NodeID) float64 {
	if !r.ring[e] {
		return r.across(e, from, to)
	}
	k, m := r.class[from], r.class[to]
	if !r.Solved || k < 0 || m < 0 || k == m || s.comp[k] != s.comp[m] || e == gone {
		return 0
	}
	f := r.shift(s, e, k, m)
	if gone < 0 || !r.ring[gone] || s.open[gone] {
		return f
	}
	lost := r.shift(s, gone, k, m)
	a, b := r.class[r.c.Net.Edges[gone].A], r.class[r.c.Net.Edges[gone].B]
	rest := 1 - r.shift(s, gone, a, b)
	switch {
	case math.Abs(lost) < 1e-12:
		return f
	case rest < 1e-9:
		return 0 // it was the only way left
	}
	return f + lost*r.shift(s, e, a, b)/rest
}

// across is 1 where a bridge leads from one node to the other from its A to its B, -1 where it leads
// the other way round, 0 where it lies beside.
func (r *Returns) across(e int, from, to network.NodeID) float64 {
	sides, ok := r.sides[e]
	if !ok {
		x := &r.c.Net.Edges[e]
		sides = [2]map[network.NodeID]bool{r.c.apart(x.A, e), r.c.apart(x.B, e)}
		r.sides[e] = sides
	}
	switch {
	case sides[0][from] && sides[1][to]:
		return 1
	case sides[1][from] && sides[0][to]:
		return -1
	}
	return 0
}
