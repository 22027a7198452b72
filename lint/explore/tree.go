package explore

import (
	"maps"
	"slices"

	"ferrule/lint/network"
)

// tree is a zone as places, each of nodes that count as always joined, and switches between them, in
// which no way leads in a ring. Its links run between two places (an edge that always conducts) or
// from a switch to a place (a terminal).
type tree struct {
	q    *posed
	full claim // what is closed because closing it can only add

	edge   map[int]contact // by edge of the network
	place  []int32         // by the zone's own number of a node
	own    []gain          // by place
	of     []*chooser      // by vertex; nil for a place
	links  []link
	at     [][]int32     // links by vertex
	vertex map[int]int32 // by variable of a switch that chooses
	gains  [2][]gain     // by link: what lies on the side of its first and of its second end
}

type link struct {
	a, b int32 // vertices; b is a place
	node int32 // with a switch: the terminal, by the zone's own number
}

// contact is an edge that counts: of a switch that chooses, or always closed where v is -1.
type contact struct {
	a, b  int32 // by the zone's own number of nodes
	v     int
	in    bitset
	loose bool // it may conduct in fewer states than is taken
}

// chooser is a switch of which no position closes all that the others close.
type chooser struct {
	v     int
	edges []int // of the network
}

func (s *Space) tree(q *posed, use func(int) bool, weights map[network.NodeID]float64) *tree {
	t := &tree{q: q, full: claim{}, edge: map[int]contact{}}
	loose := s.close(t)
	choosers := t.contacts(use, loose)
	t.shape(choosers, weights)
	t.sweep()
	return t
}

// close puts every variable at the position that closes all that any closes, where it has one and
// interlocks let it be there together with the others. loose are the variables that they do not.
func (s *Space) close(t *tree) (loose map[int]bool) {
	loose = map[int]bool{}
	full := t.q.fullest()
	for _, v := range slices.Sorted(maps.Keys(full)) {
		t.full[v] = full[v]
		if !s.ties(v) {
			continue
		}
		if _, ok := s.extend(t.q, t.full); !ok {
			delete(t.full, v)
			loose[v] = true
		}
	}
	return loose
}

// fullest gives, by variable, the position at which every edge conducts that the variable lets conduct
// at any.
func (q *posed) fullest() map[int]int {
	out := map[int]int{}
	terms := make([][]term, len(q.value))
	for _, when := range q.when {
		for _, t := range when {
			terms[t.v] = append(terms[t.v], t)
		}
	}
	for v, list := range terms {
		left := q.open[v].and(q.rest[v])
		for _, t := range list {
			left = left.and(t.in)
		}
		for k := range q.value[v] {
			if len(list) > 0 && left.has(k) {
				out[v] = k
				break
			}
		}
	}
	return out
}

// contacts reads the edges that count. What depends on more than one variable that is not closed is
// taken to depend on the first alone.
func (t *tree) contacts(use func(int) bool, loose map[int]bool) (choosers []*chooser) {
	by := map[int]*chooser{}
	for i, e := range t.q.edges {
		x := &t.q.net.Edges[e]
		if t.q.never[i] || !use(e) {
			continue
		}
		c := contact{a: t.q.zone.Local(x.A), b: t.q.zone.Local(x.B), v: -1}
		for _, w := range t.q.when[i] {
			_, closed := t.full[w.v]
			switch {
			case closed:
			case loose[w.v] || c.v >= 0:
				c.loose = true
			default:
				c.v, c.in = w.v, w.in
			}
		}
		if t.edge[e] = c; c.v >= 0 {
			if by[c.v] == nil {
				by[c.v] = &chooser{v: c.v}
				choosers = append(choosers, by[c.v])
			}
			by[c.v].edges = append(by[c.v].edges, e)
		}
	}
	return choosers
}

// shape joins what is in a ring to one place and lists the links between what is left.
func (t *tree) shape(choosers []*chooser, weights map[network.NodeID]float64) {
	size := t.q.zone.Size()
	var all []link
	for _, e := range t.q.edges {
		if c, ok := t.edge[e]; ok && c.v < 0 {
			all = append(all, link{c.a, c.b, -1})
		}
	}
	for i, x := range choosers {
		seen := map[int32]bool{}
		for _, e := range x.edges {
			for _, n := range []int32{t.edge[e].a, t.edge[e].b} {
				if !seen[n] {
					seen[n] = true
					all = append(all, link{int32(size + i), n, n})
				}
			}
		}
	}
	ring := rings(all, size+len(choosers))
	t.place = ring
	t.of, t.vertex = make([]*chooser, len(ring)), map[int]int32{}
	t.at = make([][]int32, len(ring))
	t.own = make([]gain, len(ring))
	loose := make([]bool, len(ring))
	for i, x := range choosers {
		r := ring[size+i]
		if t.vertex[x.v] = r; r == int32(size+i) {
			t.of[r] = x
		} else {
			loose[r] = true
		}
	}
	for _, l := range all {
		if l.a, l.b = ring[l.a], ring[l.b]; l.a != l.b {
			t.at[l.a], t.at[l.b] = append(t.at[l.a], int32(len(t.links))), append(t.at[l.b], int32(len(t.links)))
			t.links = append(t.links, l)
		}
	}
	t.settle(loose, weights)
}

// settle weighs the places. An edge that may not always conduct makes what it joins uncertain.
func (t *tree) settle(loose []bool, weights map[network.NodeID]float64) {
	sums := make([]float64, len(t.place))
	for _, id := range t.q.zone.Known() {
		if w := weights[id]; w > 0 {
			sums[t.place[t.q.zone.Local(id)]] += w
		}
	}
	for _, c := range t.edge {
		if c.loose {
			loose[t.place[c.a]], loose[t.place[c.b]] = true, true
		}
	}
	for i := range t.own {
		t.own[i] = own(sums[i], loose[i])
	}
}
