package explore

// look measures how far the ends are apart: by how many terms that are still open. It is -1 where no
// state that is still possible joins them.
func (w *web) look(dom []bitset) int32 {
	const far = 1 << 30
	for i := range w.dist {
		w.dist[i], w.via[i] = far, -1
	}
	w.dist[w.from] = 0
	for d := range w.ring {
		w.ring[d] = w.ring[d][:0]
	}
	w.wait(0, w.from)
	for d := 0; d < len(w.ring); d++ {
		for i := 0; i < len(w.ring[d]); i++ {
			n := w.ring[d][i]
			if w.dist[n] != int32(d) {
				continue
			}
			for _, e := range w.at[n] {
				x := &w.edges[e]
				cost := x.cost(dom)
				if cost < 0 {
					continue
				}
				if to, sum := x.other(n), int32(d)+cost; sum < w.dist[to] {
					w.dist[to], w.via[to] = sum, e
					w.wait(sum, to)
				}
			}
		}
	}
	if w.dist[w.to] == far {
		return -1
	}
	return w.dist[w.to]
}

func (w *web) wait(d, n int32) {
	for len(w.ring) <= int(d) {
		w.ring = append(w.ring, nil)
	}
	w.ring[d] = append(w.ring[d], n)
}

// cost is how many of an edge's terms are still open; -1 where it cannot conduct.
func (e *strand) cost(dom []bitset) (n int32) {
	for _, t := range e.when {
		switch d := dom[t.v]; {
		case !d.meets(t.in):
			return -1
		case !d.within(t.in):
			n++
		}
	}
	return n
}

// way lists the edges of the shortest way that look found, from the far end.
func (w *web) way() (out []int32) {
	for n := w.to; n != w.from; {
		e := w.via[n]
		out = append(out, e)
		n = w.edges[e].other(n)
	}
	return out
}

// cut is a clause: of the edges that keep what look reached from the rest, one must come to conduct.
func (w *web) cut(s *solver) []int32 {
	out := []int32{}
	for i := range w.edges {
		e := &w.edges[i]
		if (w.dist[e.a] < 1<<30) == (w.dist[e.b] < 1<<30) {
			continue
		}
		for _, t := range e.when {
			if !s.dom[t.v].meets(t.in) {
				out = s.inside(out, t)
				break
			}
		}
	}
	return out
}

// joining is the goal that the ends of all webs are joined.
type joining struct {
	webs []*web
	way  []*strand // of the webs whose ends are not joined yet, nearest the start first
}

func (g *joining) look(s *solver) (Truth, []int32) {
	g.way = g.way[:0]
	for _, w := range g.webs {
		switch w.look(s.dom) {
		case -1:
			return No, w.cut(s)
		case 0:
		default:
			way := w.way()
			for i := len(way) - 1; i >= 0; i-- {
				g.way = append(g.way, &w.edges[way[i]])
			}
		}
	}
	if len(g.way) == 0 {
		return Yes, nil
	}
	return Open, nil
}

// next puts the first open variable on the way where the way needs it, everywhere on it if it can.
func (g *joining) next(s *solver) int32 {
	for _, e := range g.way {
		for _, t := range e.when {
			d := s.dom[t.v]
			if d.within(t.in) {
				continue
			}
			want := d.and(t.in)
			for _, o := range g.way {
				for _, u := range o.when {
					if u.v == t.v && want.meets(u.in) {
						want = want.and(u.in)
					}
				}
			}
			return s.any(t.v, want)
		}
	}
	return -1
}

// any is the literal of some value in a set, a position before a throw.
func (s *solver) any(v int, want bitset) int32 {
	if rest := want.and(s.p.rest[v]); !rest.empty() {
		want = rest
	}
	for k := range s.p.value[v] {
		if want.has(k) {
			return 2 * (s.first[v] + int32(k))
		}
	}
	return -1
}
