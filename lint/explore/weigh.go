package explore

import (
	"maps"
	"math"
	"slices"

	"ferrule/lint/network"
)

// Sum is the largest sum of weights beyond an edge.
type Sum struct {
	Value float64 // in the unit of the weights
	Exact bool    // some allowed state has it; else none has more, and it may be that none has so much
	View  *View   // a state that has it; nil unless exact
	Vars  []int   // the switches whose choice of position brings it about
}

// Burden is the largest sums of weights beyond the edges of a zone, over all states of a filter.
type Burden struct {
	s     *Space
	trees []*tree // by choice of the filter
}

// Weigh finds for every edge of a zone, at once, how large the sum of weights beyond it can get: of the
// nodes joined to its far end by a way that does not lead back through it, in any allowed state, at rest
// or in transit, in which the edge conducts. Weights belong to nodes and are not negative; use says
// which edges count, nil all that do not touch the return side.
//
// The network is taken as a tree of what is always joined and of switches that choose. What closing
// more can only add to is closed. Two sweeps over the tree, each taking at every switch the position
// that gives most, then give all sums exactly. Where ways close to rings through switches, everything
// in the ring counts as joined, and the sum is a bound; so it is where interlocks forbid the positions
// that give most.
func (s *Space) Weigh(z *network.Zone, f Filter, use func(edge int) bool, weights map[network.NodeID]float64) *Burden {
	if use == nil {
		use = func(e int) bool {
			x := &s.Net.Edges[e]
			return !s.Net.Nodes[x.A].Return && !s.Net.Nodes[x.B].Return
		}
	}
	b := &Burden{s: s}
	for _, q := range s.posed(z, f) {
		if q.some != No {
			b.trees = append(b.trees, s.tree(q, use, weights))
		}
	}
	return b
}

// Beyond is the sum beyond an edge seen from one of its ends. ok is false where the edge conducts in no
// state or is none that counts.
func (b *Burden) Beyond(edge int, from network.NodeID) (best Sum, ok bool) {
	for _, t := range b.trees {
		g, found := t.beyond(edge, from)
		if !found {
			continue
		}
		if s := b.sum(t, g); !ok || s.Value > best.Value || s.Value == best.Value && s.Exact && !best.Exact {
			best, ok = s, true
		}
	}
	return best, ok
}

// sum checks that an allowed state has what the sweeps found.
func (b *Burden) sum(t *tree, g gain) Sum {
	out := Sum{Value: g.any.sum}
	if g.any.loose || t.q.some != Yes {
		return out
	}
	c := claim{}
	g.any.pick(c)
	out.Vars = slices.Sorted(maps.Keys(c))
	whole := maps.Clone(t.full)
	maps.Copy(whole, c)
	at, ok := b.s.extend(t.q, whole)
	if !ok {
		out.Vars = nil
		return out
	}
	out.Exact, out.View = true, b.s.state(t.q, at)
	return out
}

// amount is the largest sum beyond a place.
type amount struct {
	sum   float64
	loose bool        // may be more than any state has
	pick  func(claim) // puts the switches where they have to be
}

// gain is what lies beyond a place at rest, and with at most one switch on its way.
type gain struct{ rest, any amount }

func own(w float64, loose bool) gain {
	a := amount{w, loose, func(claim) {}}
	return gain{a, a}
}

func (a amount) plus(b amount) amount {
	return amount{a.sum + b.sum, a.loose || b.loose, func(c claim) { a.pick(c); b.pick(c) }}
}

// more takes the larger of two amounts, of equals the one that is sure.
func (a amount) more(b amount) amount {
	if b.sum > a.sum || b.sum == a.sum && a.loose && !b.loose {
		return b
	}
	return a
}

// plus puts together what lies beyond two ways; one of them may have its throw.
func (g gain) plus(o gain) gain {
	return gain{g.rest.plus(o.rest), g.rest.plus(o.any).more(g.any.plus(o.rest))}
}

// choice is a gain had while a variable stands at a value; a throw is the one there may be.
func (g gain) choice(v, k int, throw bool) gain {
	with := func(a amount) amount {
		pick := a.pick
		a.pick = func(c claim) { c[v] = k; pick(c) }
		return a
	}
	if throw {
		return gain{amount{sum: math.Inf(-1)}, with(g.rest)}
	}
	return gain{with(g.rest), with(g.any)}
}

func (g gain) more(o gain) gain { return gain{g.rest.more(o.rest), g.any.more(o.any)} }
