package explore

import (
	"maps"
	"math"
	"slices"
)

// mostFewer bounds the search for a claim of fewer variables.
const mostFewer = 256

// thrift looks for a way that rests on fewer variables than one that is known. Some variable of the
// contacts that border what is joined for certain must be part of any, where a contact needs it: it tries
// each in turn, and then does without. A bound on how many are still needed cuts it short.
type thrift struct {
	s     *Space
	q     *posed
	webs  []*web
	dom   []bitset
	share map[int]float64 // by variable: 1 over how many of its edges one position can close
	slack float64         // by how much a throw may beat its share
	throw bool            // whether states in transit count
	c     claim
	left  int
	cost  int // of one look: 1 for webs of a usual size
}

// fewer replaces a claim by one with fewer variables where it can; proven says that there is none
// with fewer still.
func (s *Space) fewer(q *posed, g *joining, c claim) (best claim, proven bool, looked int) {
	t := &thrift{s: s, q: q, webs: g.webs, left: mostFewer, cost: 1}
	for _, w := range g.webs {
		t.cost += len(w.edges) / 512
	}
	for v, k := range c {
		t.throw = t.throw || !q.rest[v].has(k)
	}
	t.shares()
	for best = c; ; best = maps.Clone(t.c) {
		t.dom, t.c = slices.Clone(q.open), claim{}
		if !t.within(len(best) - 1) {
			return best, t.left > 0, mostFewer - t.left
		}
	}
}

func (t *thrift) shares() {
	count := map[int][]int{}
	for _, w := range t.webs {
		for i := range w.edges {
			for _, x := range w.edges[i].when {
				if count[x.v] == nil {
					count[x.v] = make([]int, len(t.q.value[x.v]))
				}
				for k := range count[x.v] {
					if x.in.has(k) && t.q.open[x.v].has(k) {
						count[x.v][k]++
					}
				}
			}
		}
	}
	t.share = map[int]float64{}
	for v, n := range count {
		rest, moving := 1, 0
		for k := range n {
			if t.q.rest[v].has(k) {
				rest = max(rest, n[k])
			} else {
				moving = max(moving, n[k])
			}
		}
		t.share[v] = 1 / float64(rest)
		if t.throw {
			t.slack = max(t.slack, float64(moving)/float64(rest)-1)
		}
	}
}

// within looks for a claim of at most some variables that extends the present one.
func (t *thrift) within(most int) bool {
	if len(t.c) > most {
		return false
	}
	if t.left -= t.cost; t.left <= 0 {
		return false
	}
	sum, next := -t.slack-1e-9, -1
	for i, w := range t.webs {
		d := t.apart(w)
		if sum += d; d > 0 && next < 0 {
			next = i
		}
	}
	if next < 0 {
		_, ok := t.s.extend(t.q, t.c)
		return ok
	}
	if float64(len(t.c))+math.Ceil(sum) > float64(most) {
		return false
	}
	tried := t.border(t.webs[next])
	was := make([]bitset, len(tried))
	for i, x := range tried {
		if was[i] = t.dom[x.v]; t.try(x, most) {
			return true
		}
		t.dom[x.v] = was[i].less(x.in)
	}
	for i, x := range tried {
		t.dom[x.v] = was[i]
	}
	return false
}

// try puts a variable at each of some values in turn.
func (t *thrift) try(x term, most int) bool {
	was := t.dom[x.v]
	for k := range t.q.value[x.v] {
		if !x.in.has(k) || !was.has(k) || !t.throw && !t.q.rest[x.v].has(k) {
			continue
		}
		t.dom[x.v] = newBitset(len(t.q.value[x.v]))
		t.dom[x.v].add(k)
		t.c[x.v] = k
		if t.within(most) {
			return true
		}
		delete(t.c, x.v)
	}
	t.dom[x.v] = was
	return false
}

// usable says what an edge still costs, in shares of variables; +Inf where it cannot be used.
func (t *thrift) usable(e *strand) float64 {
	sum := 0.0
	for _, x := range e.when {
		if !t.dom[x.v].meets(x.in) {
			return math.Inf(1)
		}
		if _, put := t.c[x.v]; !put {
			sum += t.share[x.v]
		}
	}
	return sum
}

// apart bounds from below how many variables still have to be put somewhere to join a web's ends.
func (t *thrift) apart(w *web) float64 {
	dist := make([]float64, len(w.at))
	for i := range dist {
		dist[i] = math.Inf(1)
	}
	dist[w.from] = 0
	for queue := []int32{w.from}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		for _, e := range w.at[n] {
			to := w.edges[e].other(n)
			if d := dist[n] + t.usable(&w.edges[e]); d < dist[to]-1e-12 {
				dist[to] = d
				queue = append(queue, to)
			}
		}
	}
	return dist[w.to]
}

// border lists the open variables of the edges that border what is joined to a web's start for
// certain, each with the values that such an edge needs.
func (t *thrift) border(w *web) []term {
	in := make([]bool, len(w.at))
	in[w.from] = true
	list := []int32{w.from}
	var out []term
	for i := 0; i < len(list); i++ {
		for _, e := range w.at[list[i]] {
			if to := w.edges[e].other(list[i]); !in[to] && t.usable(&w.edges[e]) == 0 {
				in[to] = true
				list = append(list, to)
			}
		}
	}
	for i := range w.edges {
		e := &w.edges[i]
		if in[e.a] == in[e.b] || math.IsInf(t.usable(e), 1) {
			continue
		}
		for _, x := range e.when {
			if _, put := t.c[x.v]; put {
				continue
			}
			if k := slices.IndexFunc(out, func(o term) bool { return o.v == x.v }); k >= 0 {
				out[k].in = out[k].in.or(x.in)
			} else {
				out = append(out, x)
			}
		}
	}
	return out
}
