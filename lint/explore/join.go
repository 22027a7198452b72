package explore

import (
	"maps"
	"slices"
)

// claim is the values of some variables, by variable.
type claim map[int]int

// join answers whether ends can be joined.
func (s *Space) join(q *posed, p *plot, ends []Ends) Answer {
	g := &joining{}
	for _, x := range ends {
		w, joined := p.web(p.ends(x))
		if !joined && w == nil {
			return Answer{Found: No, Fewest: true}
		}
		if w != nil {
			g.webs = append(g.webs, w)
		}
	}
	out := Answer{Found: Yes, Fewest: true, Examined: 1}
	c, plain := s.straight(q, g)
	if !plain {
		if out.Found, c = s.hunt(q, g, &out.Examined); out.Found != Yes {
			return out
		}
	}
	c, fewest, looked := s.fewer(q, g, c)
	out.Fewest, out.Examined = fewest, out.Examined+looked
	return s.shown(q, c, out)
}

// firstConflicts is how many dead ends a search may meet before all values are followed at once.
const firstConflicts = 1 << 7

// hunt searches; where that turns out to be hard, it follows all values at once along a frontier, and
// where that grows too large, it goes on searching.
func (s *Space) hunt(q *posed, g *joining, examined *int) (Truth, claim) {
	vars := s.involved(g.vars())
	solver := newSolver(q.puzzle, vars, s.Stop)
	solver.left = firstConflicts
	found := solver.search(g)
	if *examined += solver.examined; found == Open && !s.halted() {
		t, c := s.frontier(q, g, vars, examined)
		if t == Yes {
			return t, g.claim(q.with(c))
		}
		if found = t; t == Open {
			solver.back(0)
			solver.left, solver.examined = mostConflicts-firstConflicts, 0
			found = solver.search(g)
			*examined += solver.examined
		}
	}
	if found != Yes {
		return found, nil
	}
	return found, g.claim(solver.dom)
}

// mostPlanned bounds what planning a frontier costs: variables twice over times edges.
const mostPlanned = 1 << 24

// frontier follows all values at once, at rest and then with a throw.
func (s *Space) frontier(q *posed, g *joining, vars []int, examined *int) (t Truth, c claim) {
	edges := 0
	for _, w := range g.webs {
		edges += len(w.edges)
	}
	if len(vars)*len(vars)*edges > mostPlanned {
		return Open, nil
	}
	for _, throw := range []bool{false, true} {
		f := newFrontier(q.puzzle, g.webs, vars, throw)
		t, c = f.run(s.Stop)
		if *examined += mostFrontier - f.left; t != No {
			return t, c
		}
	}
	return t, c
}

func (s *Space) halted() bool { return s.Stop != nil && s.Stop() }

// with is the values that are open once some variables are decided.
func (p *puzzle) with(c claim) []bitset {
	out := slices.Clone(p.open)
	for v, k := range c {
		out[v] = newBitset(len(p.value[v]))
		out[v].add(k)
	}
	return out
}

// vars are the variables on any way.
func (g *joining) vars() map[int]bool {
	vars := map[int]bool{}
	for _, w := range g.webs {
		for _, e := range w.edges {
			for _, t := range e.when {
				vars[t.v] = true
			}
		}
	}
	return vars
}

// shown completes a claim that some allowed state extends.
func (s *Space) shown(q *posed, c claim, out Answer) Answer {
	at, ok := s.extend(q, c)
	if !ok { // only a stop of the caller's can end this early: a state was found before
		return Answer{Found: Open, Examined: out.Examined}
	}
	out.View = s.state(q, at)
	out.Vars = slices.Sorted(maps.Keys(c))
	return out
}

// state is a view of the zone in which every variable stands at a value. As in all views, variables that
// nothing ties to the zone have no position.
func (s *Space) state(q *posed, at []int) *View {
	set, _ := s.closure(q.zone)
	pos := make([]int, len(at))
	for v := range pos {
		pos[v] = -1
	}
	var t *Transit
	for _, v := range set {
		x := q.value[v][at[v]]
		if pos[v] = x.at; x.throw != nil {
			t = &Transit{v, x.throw}
		}
	}
	return s.view(q.zone, pos, t)
}

// straight takes the shortest ways, if their variables may be put where the ways need them.
func (s *Space) straight(q *posed, g *joining) (c claim, ok bool) {
	want := map[int]bitset{}
	for _, w := range g.webs {
		if w.look(q.open) < 0 {
			return nil, false
		}
		for _, e := range w.way() {
			for _, t := range w.edges[e].when {
				d, seen := want[t.v]
				if !seen {
					d = q.open[t.v].and(q.rest[t.v])
				}
				if want[t.v] = d.and(t.in); want[t.v].empty() {
					return nil, false
				}
			}
		}
	}
	c = claim{}
	at := slices.Clone(q.first)
	for v, d := range want {
		k := 0
		for !d.has(k) {
			k++
		}
		c[v], at[v] = k, k
	}
	return c, q.allows(at)
}

// claim reads from decided variables what the ways that they make rest on.
func (g *joining) claim(dom []bitset) claim {
	c := claim{}
	for _, w := range g.webs {
		w.look(dom)
		for _, e := range w.way() {
			for _, t := range w.edges[e].when {
				c[t.v], _ = single(dom[t.v])
			}
		}
	}
	return c
}

// extend finds a whole allowed state that extends a claim. ok is false where there is none or the
// search was ended.
func (s *Space) extend(q *posed, c claim) (at []int, ok bool) {
	at = slices.Clone(q.first)
	tied, moving := map[int]bool{}, 0
	for v, k := range c {
		if at[v] = k; s.ties(v) {
			tied[v] = true
		}
		if !q.rest[v].has(k) {
			moving++
		}
	}
	if moving > 1 {
		return nil, false
	}
	if len(tied) == 0 || q.allows(at) {
		return at, true
	}
	p := q.still()
	for v, k := range c {
		if tied[v] {
			p.open[v] = newBitset(len(p.value[v]))
			p.open[v].add(k)
		}
	}
	solver := newSolver(p, s.involved(tied), s.Stop)
	if solver.search(anyState{}) != Yes {
		return nil, false
	}
	solver.state(at)
	return at, true
}

// allows says whether no combination rules a whole state out.
func (p *puzzle) allows(at []int) bool {
	for _, r := range p.never {
		hit := true
		for _, t := range r {
			if hit = t.in.has(at[t.v]); !hit {
				break
			}
		}
		if hit {
			return false
		}
	}
	return true
}
