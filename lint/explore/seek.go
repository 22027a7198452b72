package explore

import (
	"maps"
	"slices"

	"ferrule/lint/network"
)

// mostAsked bounds how often one search asks: a question walks a whole zone.
const mostAsked = 1 << 14

// Seek looks for an allowed state of a filter of which ask says Yes. ask gets a span and answers for
// all its states: Yes where it is so in each of them, No where it is so in none, Open where it depends
// or it cannot tell. Of a span in which all is decided it must know. For what more joining can only
// bring about, look at Least for Yes and at Most for No; for what more joining can only end, the
// other way round; what is neither is Open until all that it depends on is decided. ask may look at
// nothing outside the zone, and must give the same answer for the same span.
func (s *Space) Seek(z *network.Zone, f Filter, ask func(*Span) Truth) Answer {
	return s.seek(z, f, ask, false)
}

// seek: with breaks, nothing makes an Open answer Yes but what opens or takes away one of the things
// that it rests on.
func (s *Space) seek(z *network.Zone, f Filter, ask func(*Span) Truth, breaks bool) Answer {
	return s.best(z, f, func(q *posed) Answer {
		vars := map[int]bool{}
		g := &inquiry{s: s, q: q, ask: ask, breaks: breaks, left: mostAsked, own: make([]bool, len(q.value))}
		for _, v := range z.Vars {
			vars[v], g.own[v] = true, true
		}
		solver := newSolver(q.puzzle, s.involved(vars), s.Stop)
		out := Answer{Found: solver.search(g), Fewest: true}
		if out.Found == Yes {
			out = g.answer(g.claim)
		}
		out.Examined = mostAsked - g.left
		return out
	})
}

// inquiry is the goal that a caller's question is answered with yes.
type inquiry struct {
	s      *Space
	q      *posed
	ask    func(*Span) Truth
	breaks bool
	left   int
	own    []bool // variables of the zone

	claim claim // what was decided when the answer was yes
	hint  []term
}

// span shows what is decided where every variable has some values left.
func (g *inquiry) span(left func(v int) bitset) *Span {
	n := len(g.q.value)
	most, least := make([]int, n), make([]int, n)
	var t *Transit
	for v := range n {
		k, one := single(left(v))
		if !one {
			most[v], least[v] = anywhere, -1
			continue
		}
		x := g.q.value[v][k]
		if most[v], least[v] = x.at, x.at; x.throw != nil {
			t = &Transit{v, x.throw}
		}
	}
	return &Span{Most: g.view(most, t), Least: g.view(least, t)}
}

// view is a view whose joins start from those that are always there.
func (g *inquiry) view(pos []int, t *Transit) *View {
	v := g.s.view(g.q.zone, pos, t)
	base, parted := g.q.always()
	v.root = slices.Clone(base)
	for _, e := range parted {
		if v.Conducts(e) {
			v.union(g.q.ends(e))
		}
	}
	return v
}

// always gives what edges that nothing opens join, by the zone's own numbers, and the other edges.
func (q *posed) always() (base forest, parted []int) {
	if q.base == nil {
		q.base = newForest(q.zone.Size())
		for _, e := range q.edges {
			if len(q.net.Edges[e].When) > 0 {
				q.parted = append(q.parted, e)
			} else {
				q.base.union(q.ends(e))
			}
		}
		for i := range q.base {
			q.base[i] = q.base.top(int32(i))
		}
	}
	return q.base, q.parted
}

// single gives the only value of a set.
func single(b bitset) (k int, ok bool) {
	if b.count() != 1 {
		return 0, false
	}
	for !b.has(k) {
		k++
	}
	return k, true
}

// put asks what a claim says, other variables undecided but for what is pinned.
func (g *inquiry) put(c claim) (Truth, *Span) {
	sp := g.span(func(v int) bitset {
		if k, ok := c[v]; ok {
			one := newBitset(len(g.q.value[v]))
			one.add(k)
			return one
		}
		return g.q.open[v]
	})
	return g.asks(sp), sp
}

func (g *inquiry) asks(sp *Span) Truth {
	g.left--
	return g.ask(sp)
}

func (g *inquiry) look(s *solver) (Truth, []int32) {
	if g.left <= 0 {
		s.left = 0
		return Open, nil
	}
	sp := g.span(s.still(g.q))
	g.hint = g.hint[:0]
	switch t := g.asks(sp); t {
	case Yes:
		g.claim = g.decided(s)
		return Yes, nil
	case No:
		return No, g.lesson(s, sp)
	}
	g.hint = g.open(sp, s.still(g.q))
	return Open, nil
}

// still gives the values that are left to a variable.
func (s *solver) still(q *posed) func(int) bitset {
	return func(v int) bitset {
		if s.first[v] >= 0 {
			return s.dom[v]
		}
		return q.open[v]
	}
}

// decided is what the zone's variables are decided to.
func (g *inquiry) decided(s *solver) claim {
	c := claim{}
	for _, v := range g.q.zone.Vars {
		if k, one := single(s.dom[v]); one && !g.pinned(v) {
			c[v] = k
		}
	}
	return c
}

func (g *inquiry) pinned(v int) bool { return g.q.open[v].count() == 1 }

// lesson is the clause that some of what made the answer no must change.
func (g *inquiry) lesson(s *solver, sp *Span) []int32 {
	if clause, c := g.given(s, sp); len(c) > 0 {
		if t, _ := g.put(c); t == No {
			return clause
		}
	}
	c := g.decided(s)
	for _, v := range slices.Sorted(maps.Keys(c)) {
		k := c[v]
		delete(c, v)
		if t, _ := g.put(c); t != No {
			c[v] = k
		}
	}
	out := []int32{}
	for v, k := range c {
		out = append(out, 2*(s.first[v]+int32(k))+1)
	}
	slices.Sort(out)
	return out
}

// given is the clause that follows from what the caller says the answer rests on, and the values that
// it rests on.
func (g *inquiry) given(s *solver, sp *Span) (clause []int32, c claim) {
	clause, c = []int32{}, claim{}
	note := func(v int) {
		if k, one := single(s.dom[v]); one && !g.pinned(v) {
			c[v] = k
		}
	}
	for _, e := range sp.edges {
		closed := sp.Least.Conducts(e)
		if !closed && sp.Most.Conducts(e) {
			continue
		}
		for _, t := range g.q.condition(g.q.net.Edges[e].When) {
			if !g.own[t.v] {
				continue
			}
			if closed {
				clause = s.outside(clause, t)
				note(t.v)
			} else if !s.dom[t.v].meets(t.in) {
				clause = s.inside(clause, t)
				note(t.v)
				break
			}
		}
	}
	for _, v := range sp.vars {
		if k, one := single(s.dom[v]); g.own[v] && one {
			clause = append(clause, 2*(s.first[v]+int32(k))+1)
			note(v)
		}
	}
	return clause, c
}

// open lists the undecided terms of what an answer rests on.
func (g *inquiry) open(sp *Span, left func(int) bitset) (out []term) {
	for _, e := range sp.edges {
		for _, t := range g.q.condition(g.q.net.Edges[e].When) {
			if g.own[t.v] && left(t.v).count() > 1 {
				out = append(out, t)
			}
		}
	}
	for _, v := range sp.vars {
		if g.own[v] && left(v).count() > 1 {
			out = append(out, g.q.present(v))
		}
	}
	return out
}

// next takes the first variable that the answer is said to rest on, else the one that has been in the
// way most, and tries it where that makes the answer yes or at least leaves it open.
func (g *inquiry) next(s *solver) int32 {
	v := -1
	if len(g.hint) > 0 {
		v = g.hint[0].v
	} else {
		for _, x := range g.q.zone.Vars {
			if s.dom[x].count() > 1 && (v < 0 || s.hot(x) > s.hot(v)) {
				v = x
			}
		}
	}
	if v < 0 {
		return -1
	}
	best, found := -1, No
	for k := range g.q.value[v] {
		if !s.dom[v].has(k) || best >= 0 && !g.q.rest[v].has(k) {
			continue
		}
		one := newBitset(len(g.q.value[v]))
		one.add(k)
		t := g.asks(g.span(func(x int) bitset {
			if x == v {
				return one
			}
			return s.still(g.q)(x)
		}))
		if best < 0 || t == Yes && found != Yes || t == Open && found == No {
			best, found = k, t
		}
	}
	return 2 * (s.first[v] + int32(best))
}

// hot is how much a variable has been in the way.
func (s *solver) hot(v int) (most float64) {
	for b := s.first[v]; b < s.first[v]+int32(len(s.p.value[v])); b++ {
		most = max(most, s.heat[b])
	}
	return most
}
