package circuit

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// Returns are shared: a negative wire carries what comes home through it of every zone. For each
// zone the return network is cut as the live side is. Where a return is a bridge the sums on its two
// sides bound it; in a ring the current divides by resistance, and the bound adds up, for every
// load, the share of its current that the edge can get towards the source that suits it worst.
// Returns are taken as closed; where a ring has contacts that open, every combination is looked at.

const (
	smallOhms   = 1e-6 // of a joint or pass-through, so that a ring has no zero resistance
	mostOpeners = 8    // groups of contacts of one ring whose combinations are looked at
	mostWork    = 2e8  // combinations times nodes cubed: about a second
)

// worstReturn is the largest current in a return edge.
func (c *Circuit) worstReturn(edge int) Current {
	if c.returns == nil {
		c.returns = c.allReturns()
	}
	if w, ok := c.returns[edge]; ok {
		return w
	}
	return Current{Complete: true}
}

func (c *Circuit) returnEdges(id network.NodeID) []int {
	var out []int
	for _, e := range c.Net.At(id) {
		if c.comesHome(c.Net.Edges[e].Other(id)) {
			out = append(out, e)
		}
	}
	return out
}

func (c *Circuit) allReturns() map[int]Current {
	var nodes []network.NodeID
	for i := range c.Net.Nodes {
		if c.comesHome(network.NodeID(i)) {
			nodes = append(nodes, network.NodeID(i))
		}
	}
	total := map[int]amount{}
	lacks := map[int][]derive.Missing{}
	ways := map[int][]homeway{}
	for _, f := range c.families() {
		ports := c.returnSums(f)
		if len(ports) == 0 {
			continue
		}
		tree := newCut(c.Net, nodes, c.returnEdges, ports, false)
		rings := c.rings(tree)
		fl := c.lacksOf(f)
		for e, a := range tree.bounds {
			if r, ok := rings[e]; ok {
				a = r.bound(c, tree, e, ports, a)
			}
			if !a.used {
				continue
			}
			w := homeway{zones: f, ring: rings[e]}
			if w.ring != nil {
				lacks[e] = merge(lacks[e], w.ring.lacks...)
				w.hang = w.ring.hangs(tree, ports)
			}
			ways[e] = append(ways[e], w)
			t := total[e]
			total[e] = amount{t.steady + a.steady, t.lasting + a.lasting, max(t.peak+a.steady, t.steady+a.peak), true, false}
			lacks[e] = merge(lacks[e], fl...)
		}
	}
	out := map[int]Current{}
	for e, a := range total {
		out[e] = c.returnCurrent(e, a, lacks[e], c.traced(e, ways[e]))
	}
	return out
}

func (c *Circuit) returnCurrent(e int, a amount, lacks []derive.Missing, from []derive.Number) Current {
	name := "largest current in the return of " + c.partName(e)
	n := derive.Compute(name, "Iwc", a.steady, "A", returnFormula, from...)
	return Current{Steady: n, Capped: n, Complete: true, Lacks: lacks,
		Lasting: derive.Compute(name+" for three hours or more", "Ilong", a.lasting, "A", returnFormula+"; loads that run less than 3 h a day left out", from...),
		Peak:    derive.Compute(name+" on starting", "Ipeak", a.peak, "A", returnFormula+"; one load starting", from...)}
}

const returnFormula = "sum of what comes home through it from every circuit, each part at the volts solved for it, in a ring by its share by resistance, and no more than what can be given"

// returnSums sums a family's ports by their return nodes, all sources present and all loads on. A
// battery under others in a row also passes on what loads let out between them.
func (c *Circuit) returnSums(f []*network.Zone) map[network.NodeID]sums {
	out := map[network.NodeID]sums{}
	c.portsOf(f, func(p network.Port, s sums, source bool) {
		if p.Ret == network.None || !c.comesHome(p.Ret) {
			return
		}
		if z := c.Net.ZoneOf(p.Hot); source && z != nil && c.sideOf(z) == mixed {
			between := c.letOut(f, z)
			s.draws, s.lasting = s.draws+between, s.lasting+between
		}
		out[p.Ret] = out[p.Ret].plus(s)
	})
	return out
}

// letOut is what loads and inputs return into a zone that is not the return, in A.
func (c *Circuit) letOut(f []*network.Zone, z *network.Zone) float64 {
	total := 0.0
	c.portsOf(f, func(p network.Port, s sums, source bool) {
		if !source && c.Net.ZoneOf(p.Hot) != z && p.Ret != network.None && c.Net.ZoneOf(p.Ret) == z {
			total += s.draws
		}
	})
	return total
}

// ring is a part of the return network in which every edge lies on a loop.
type ring struct {
	nodes []network.NodeID
	index map[network.NodeID]int
	edges []int
	share map[int]func(k, m int) float64 // by edge: the largest share of a current from node k to node m
	lacks []derive.Missing               // why it could not be solved
	ohms  []derive.Number                // of its edges
	at    map[network.NodeID]int         // see attachment
	hung  []sums                         // see hangs
}

// rings finds the loops of a cut's graph, by edge.
func (c *Circuit) rings(t *cut) map[int]*ring {
	byRoot := map[network.NodeID]*ring{}
	root := map[network.NodeID]network.NodeID{}
	for _, id := range t.order { // parents come first
		root[id] = id
		if t.up[id] >= 0 && !t.bridge(id) {
			root[id] = root[t.parent(id)]
		}
	}
	out := map[int]*ring{}
	for e := range t.bounds {
		a, b := root[c.Net.Edges[e].A], root[c.Net.Edges[e].B]
		if a != b {
			continue
		}
		r := byRoot[a]
		if r == nil {
			r = &ring{index: map[network.NodeID]int{}}
			byRoot[a] = r
		}
		r.edges = append(r.edges, e)
		out[e] = r
	}
	for _, r := range byRoot {
		sort.Ints(r.edges)
	}
	for _, id := range t.order {
		if r := byRoot[root[id]]; r != nil {
			r.index[id] = len(r.nodes)
			r.nodes = append(r.nodes, id)
		}
	}
	return out
}

// bound is the ring's share for one edge, and never more than the whole. A ring that cannot be solved
// counts as nothing and says what it lacks.
func (r *ring) bound(c *Circuit, t *cut, e int, ports map[network.NodeID]sums, whole amount) amount {
	if r.share == nil {
		r.share = map[int]func(k, m int) float64{}
		r.solve(c)
	}
	f := r.share[e]
	if f == nil {
		return amount{used: whole.used}
	}
	a := spreadOver(r.hangs(t, ports), f)
	a.used = whole.used
	a.steady, a.lasting = min(a.steady, whole.steady), min(a.lasting, whole.lasting)
	a.peak = min(a.steady+a.peak, whole.peak)
	return a
}

// spreadOver adds up shares: of what each node takes towards the source that suits the edge worst,
// or, where that is less, of what each limited source gives and of what is taken from the others.
func spreadOver(hang []sums, f func(k, m int) float64) amount {
	var a, b amount // b is by sources
	most := make([]float64, len(hang))
	for k, h := range hang {
		if h.draws == 0 && h.accepts == 0 && h.endlessAc == 0 {
			continue
		}
		feed, charge, endless := 0.0, 0.0, 0.0
		var all sums
		for m, g := range hang {
			if g.gives > 0 || g.endless > 0 {
				feed, most[m] = max(feed, f(k, m)), max(most[m], f(k, m))
			}
			if g.endless > 0 {
				endless = max(endless, f(k, m))
			}
			if g.charges > 0 || g.endlessCh > 0 {
				charge, all = max(charge, f(k, m)), all.plus(g)
			}
		}
		take := charging(all, h)
		a.steady, a.lasting = a.steady+h.draws*feed+take*charge, a.lasting+h.lasting*feed+take*charge
		b.steady, b.lasting = b.steady+h.draws*endless, b.lasting+h.lasting*endless
		if all.endlessCh > 0 {
			b.steady, b.lasting = b.steady+take*charge, b.lasting+take*charge
		}
		a.peak = max(a.peak, h.surge*feed)
	}
	for m, g := range hang {
		b.steady, b.lasting = b.steady+g.gives*most[m], b.lasting+g.gives*most[m]
	}
	a.steady, a.lasting = min(a.steady, b.steady), min(a.lasting, b.lasting)
	return a
}

// hangs lists the sums at the ring's nodes. A ring belongs to one family's cut.
func (r *ring) hangs(t *cut, ports map[network.NodeID]sums) []sums {
	if r.hung == nil {
		for _, id := range r.nodes {
			r.hung = append(r.hung, r.hanging(t, id, ports))
		}
	}
	return r.hung
}

// hanging sums what is attached to a ring's node, and what hangs on it through bridges.
func (r *ring) hanging(t *cut, id network.NodeID, ports map[network.NodeID]sums) sums {
	s := ports[id]
	for _, e := range t.edges(id) {
		child, ok := t.isBridge(e)
		switch {
		case ok && child == id:
			s = s.plus(t.above[id])
		case ok:
			s = s.plus(t.below[child])
		}
	}
	return s
}

// solve finds the shares of all edges, the largest over the combinations of contacts that open.
func (r *ring) solve(c *Circuit) {
	g := map[int]float64{}
	for _, e := range r.edges {
		n, lacks := c.Ohms(e, Operating)
		r.lacks = merge(r.lacks, lacks...)
		r.ohms = append(r.ohms, known(n)...)
		g[e] = 1 / max(n.Value, smallOhms)
	}
	groups := r.openers(c)
	if n := float64(len(r.nodes)); len(groups) > mostOpeners || n*n*n*math.Exp2(float64(len(groups))) > mostWork {
		r.lacks = merge(r.lacks, derive.Missing{Subject: "plan", Attribute: "a simpler ring of returns"})
	}
	if len(r.lacks) > 0 {
		return
	}
	for mask := range 1 << len(groups) {
		open := map[int]bool{}
		for i, edges := range groups {
			for _, e := range edges {
				open[e] = mask>>i&1 == 1
			}
		}
		inv := r.inverse(c, g, open)
		for _, e := range r.edges {
			if !open[e] {
				r.add(c, e, g[e], inv)
			}
		}
	}
}

// openers groups the edges that open, those that open and close together in one group: a plug that
// follows a pack, and what is part of that pack.
func (r *ring) openers(c *Circuit) [][]int {
	at := map[string]int{}
	var out [][]int
	for _, e := range r.edges {
		when := c.Net.Edges[e].When
		if len(when) == 0 {
			continue
		}
		key := c.together(when)
		if _, seen := at[key]; !seen {
			at[key] = len(out)
			out = append(out, nil)
		}
		out[at[key]] = append(out[at[key]], e)
	}
	return out
}

// together is a key of what opens a contact: contacts with one key open together. What follows one
// part opens as that part goes.
func (c *Circuit) together(when network.Condition) string {
	var keys []string
	for _, l := range when {
		x := &c.Net.Vars[l.Var]
		for x.Follower && len(x.Follows) == 1 && l.At[x.Closed] && count(l.At) == 1 {
			l = network.Literal{Var: x.Follows[0], At: []bool{false, true}} // absent, present; unmated, mated
			if x = &c.Net.Vars[l.Var]; len(x.Positions) != 2 {
				break
			}
		}
		if k := fmt.Sprint(l); !slices.Contains(keys, k) {
			keys = append(keys, k)
		}
	}
	sort.Strings(keys)
	return strings.Join(keys, " ")
}

func count(at []bool) int {
	n := 0
	for _, on := range at {
		if on {
			n++
		}
	}
	return n
}

func (r *ring) add(c *Circuit, e int, g float64, inv [][]float64) {
	a, b := r.index[c.Net.Edges[e].A], r.index[c.Net.Edges[e].B]
	before := r.share[e]
	r.share[e] = func(k, m int) float64 {
		s := math.Abs(g * (inv[a][k] - inv[a][m] - inv[b][k] + inv[b][m]))
		if before != nil {
			s = max(s, before(k, m))
		}
		return min(s, 1)
	}
}

// inverse inverts the ring's conductance matrix; a small conductance to ground keeps it regular.
func (r *ring) inverse(c *Circuit, g map[int]float64, open map[int]bool) [][]float64 {
	n := len(r.nodes)
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, 2*n)
		a[i][i], a[i][n+i] = 1e-6, 1
	}
	for _, e := range r.edges {
		if open[e] {
			continue
		}
		i, j := r.index[c.Net.Edges[e].A], r.index[c.Net.Edges[e].B]
		a[i][i] += g[e]
		a[j][j] += g[e]
		a[i][j] -= g[e]
		a[j][i] -= g[e]
	}
	for i := range n { // symmetric and diagonally dominant: no pivoting needed
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
		a[i] = a[i][n:]
	}
	return a
}
