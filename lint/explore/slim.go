package explore

import (
	"maps"
	"slices"
)

// answer makes a claim small and shows it.
func (g *inquiry) answer(c claim) Answer {
	for _, v := range slices.Backward(slices.Sorted(maps.Keys(c))) {
		k := c[v]
		delete(c, v)
		if t, _ := g.put(c); t != Yes {
			c[v] = k
		}
	}
	m := &slim{inquiry: g, until: g.left - mostSlim}
	for _, k := range slices.Sorted(maps.Keys(c)) {
		m.throw = m.throw || !g.q.rest[k].has(c[k])
	}
	best := c
	for {
		m.c, m.dom = claim{}, slices.Clone(g.q.open)
		if len(best) == 0 || m.needs(len(best)) || !m.within(len(best)-1) {
			break
		}
		best = maps.Clone(m.c)
	}
	out := g.s.shown(g.q, best, Answer{Found: Yes, Fewest: m.left > m.until})
	if out.View == nil {
		return out
	}
	if t := g.asks(&Span{Most: out.View, Least: out.View}); t != Yes {
		return Answer{Found: Open} // what was asked is not of the kind that Seek takes
	}
	return out
}

// mostSlim bounds how often a search for fewer variables asks.
const mostSlim = 96

// slim looks for a claim of fewer variables that makes the answer yes. Where only breaking what an
// open answer rests on can do that, it tries just those variables, else all.
type slim struct {
	*inquiry
	c     claim
	dom   []bitset
	throw bool
	until int
}

// needs says that no fewer than some variables will do: there are as many ways to break that have no
// variable in common.
func (m *slim) needs(n int) bool {
	gone := map[int]bool{}
	for i := 0; m.breaks; i++ {
		sp := m.span(func(v int) bitset { return m.q.open[v] })
		for v := range gone {
			sp.Most.pos[v], sp.Least.pos[v] = -1, -1
		}
		sp.Most.root, sp.Least.root = nil, nil
		if m.asks(sp) == Yes || len(sp.edges)+len(sp.vars) == 0 {
			return false
		}
		if i+1 == n {
			return true
		}
		for _, t := range m.open(sp, func(v int) bitset { return m.q.open[v] }) {
			gone[t.v] = true
		}
	}
	return false
}

func (m *slim) within(most int) bool {
	if m.left <= m.until {
		return false
	}
	t, sp := m.put(m.c)
	if t == Yes {
		_, ok := m.s.extend(m.q, m.c)
		return ok
	}
	if t == No || len(m.c) >= most {
		return false
	}
	tries := m.tries(sp)
	was := make([]bitset, len(tries))
	for i, x := range tries {
		if was[i] = m.dom[x.v]; m.try(x, most) {
			return true
		}
		m.dom[x.v] = was[i].less(x.in)
	}
	for i, x := range tries {
		m.dom[x.v] = was[i]
	}
	return false
}

// tries lists what may be decided next, each variable once.
func (m *slim) tries(sp *Span) (out []term) {
	if !m.breaks || len(sp.edges)+len(sp.vars) == 0 {
		for _, v := range m.q.zone.Vars {
			if _, put := m.c[v]; !put && !m.pinned(v) {
				out = append(out, term{v, m.q.open[v]})
			}
		}
		return out
	}
	left := func(v int) bitset {
		if _, put := m.c[v]; put {
			return nil
		}
		return m.q.open[v]
	}
	for _, t := range m.open(sp, left) {
		t.in = m.q.open[t.v].less(t.in)
		if k := slices.IndexFunc(out, func(o term) bool { return o.v == t.v }); k >= 0 {
			out[k].in = out[k].in.or(t.in)
		} else {
			out = append(out, t)
		}
	}
	return out
}

func (m *slim) try(x term, most int) bool {
	for k := range m.q.value[x.v] {
		if !x.in.has(k) || !m.dom[x.v].has(k) || !m.throw && !m.q.rest[x.v].has(k) {
			continue
		}
		m.c[x.v] = k
		if m.within(most) {
			return true
		}
		delete(m.c, x.v)
	}
	return false
}
