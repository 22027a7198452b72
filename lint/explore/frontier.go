package explore

import (
	"math"
	"slices"
)

// mostFrontier bounds the partial states that one frontier search keeps.
const mostFrontier = 1 << 16

// frontier decides the variables of a question one after another, for all their values at once, and
// keeps of each partial state only what still matters: which of the nodes between decided and
// undecided edges are joined, and the values that undecided combinations ask for. Partial states that
// agree in this are one. It proves that ends are never joined where search would have to try
// everything, as long as few nodes lie between decided and undecided at any time.
type frontier struct {
	p     *puzzle
	webs  []*web
	steps []step
	throw bool // states in transit count too
	left  int
}

// step decides one variable.
type step struct {
	v      int
	values []int
	edges  []joint
	rules  []rule
	held   []int     // variables whose values were kept before, then v itself
	keep   []int     // places in held that are kept on
	nodes  [][]int32 // by web: nodes between before, and those that this step adds
	stay   [][]int   // by web: places in nodes that stay between
	alive  [][]bool  // by web and place in stay: an edge of the node is undecided
	ends   [][2]int  // by web: places in nodes of its ends
}

type joint struct {
	web  int
	a, b int // places in the step's nodes
	when rule
}

// partial is a state so far: what is kept of it and how it came about.
type partial struct {
	moved bool
	held  []byte
	label [][]byte // by web and node between; nil for a web whose ends are joined
	from  *partial
	value int
}

// newFrontier plans the steps: next comes the variable that leaves fewest nodes between.
func newFrontier(p *puzzle, webs []*web, vars []int, throw bool) *frontier {
	f := &frontier{p: p, webs: webs, throw: throw, left: mostFrontier}
	decided := map[int]bool{}
	left := slices.Clone(vars)
	before := make([][]int32, len(webs))
	var held []int
	for i, w := range webs {
		before[i] = []int32{w.from, w.to}
	}
	for len(left) > 0 {
		best, least := 0, math.MaxInt
		for i, v := range left {
			if n := f.width(decided, v); n < least {
				best, least = i, n
			}
		}
		v := left[best]
		left = slices.Delete(left, best, best+1)
		s := f.step(decided, v, before, held)
		f.steps = append(f.steps, s)
		decided[v] = true
		for i := range webs {
			before[i] = pickAt(s.nodes[i], s.stay[i])
		}
		held = pickAt(s.held, s.keep)
	}
	return f
}

func pickAt[T any](list []T, at []int) []T {
	out := make([]T, len(at))
	for i, k := range at {
		out[i] = list[k]
	}
	return out
}

// width is how many nodes lie between once a variable is decided too.
func (f *frontier) width(decided map[int]bool, v int) (n int) {
	decided[v] = true
	for _, w := range f.webs {
		for i := range w.at {
			some, all := f.touched(w, int32(i), decided)
			if some && !all {
				n++
			}
		}
	}
	delete(decided, v)
	return n
}

// touched says whether some and whether all of a node's edges are decided.
func (f *frontier) touched(w *web, node int32, decided map[int]bool) (some, all bool) {
	all = true
	for _, e := range w.at[node] {
		if isDecided(w.edges[e].when, decided) {
			some = true
		} else {
			all = false
		}
	}
	return some, all
}

func isDecided(r rule, decided map[int]bool) bool {
	for _, t := range r {
		if !decided[t.v] {
			return false
		}
	}
	return true
}

func mentions(r rule, v int) bool {
	return slices.ContainsFunc(r, func(t term) bool { return t.v == v })
}

func (f *frontier) step(decided map[int]bool, v int, before [][]int32, held []int) step {
	decided[v] = true
	s := step{v: v, held: append(slices.Clip(held), v)}
	for i, w := range f.webs {
		nodes := slices.Clone(before[i])
		place := func(n int32) int {
			k := slices.Index(nodes, n)
			if k < 0 {
				k = len(nodes)
				nodes = append(nodes, n)
			}
			return k
		}
		for k := range w.edges {
			if e := &w.edges[k]; mentions(e.when, v) && isDecided(e.when, decided) {
				s.edges = append(s.edges, joint{i, place(e.a), place(e.b), e.when})
			}
		}
		var stay []int
		var alive []bool
		for k, n := range nodes {
			if _, all := f.touched(w, n, decided); !all || n == w.from || n == w.to {
				stay, alive = append(stay, k), append(alive, !all)
			}
		}
		s.nodes, s.stay, s.alive = append(s.nodes, nodes), append(s.stay, stay), append(s.alive, alive)
		s.ends = append(s.ends, [2]int{slices.Index(nodes, w.from), slices.Index(nodes, w.to)})
	}
	for _, r := range f.p.never {
		if mentions(r, v) && isDecided(r, decided) {
			s.rules = append(s.rules, r)
		}
	}
	for k, x := range s.held {
		if f.wanted(x, decided) {
			s.keep = append(s.keep, k)
		}
	}
	s.values = f.values(v)
	return s
}

// wanted says whether anything undecided asks for a variable's value.
func (f *frontier) wanted(v int, decided map[int]bool) bool {
	asks := func(r rule) bool { return mentions(r, v) && !isDecided(r, decided) }
	for _, w := range f.webs {
		for i := range w.edges {
			if asks(w.edges[i].when) {
				return true
			}
		}
	}
	return slices.ContainsFunc(f.p.never, asks)
}

// values are those that may be taken, less those that close nothing that another does not close too.
func (f *frontier) values(v int) (out []int) {
	ruled := slices.ContainsFunc(f.p.never, func(r rule) bool { return mentions(r, v) })
	for k := range f.p.value[v] {
		if !f.p.open[v].has(k) || !f.throw && !f.p.rest[v].has(k) {
			continue
		}
		if !ruled && slices.ContainsFunc(out, func(o int) bool { return f.p.rest[v].has(o) && f.covers(v, o, k) }) {
			continue
		}
		if !ruled && f.p.rest[v].has(k) {
			out = slices.DeleteFunc(out, func(o int) bool { return f.covers(v, k, o) })
		}
		out = append(out, k)
	}
	return out
}

// covers says whether one value closes every edge that another does.
func (f *frontier) covers(v, one, other int) bool {
	for _, w := range f.webs {
		for i := range w.edges {
			for _, t := range w.edges[i].when {
				if t.v == v && t.in.has(other) && !t.in.has(one) {
					return false
				}
			}
		}
	}
	return true
}
