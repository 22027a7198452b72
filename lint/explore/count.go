package explore

import (
	"math/big"

	"ferrule/lint/network"
)

// Total counts the resting states that the plan allows, exactly and without listing them; ok is
// false where the variables that interlocks tie together take too many steps.
func (s *Space) Total() (total *big.Int, ok bool) {
	t := s.tally(s.puzzle(nil, nil), nil)
	t.all = true
	n, ok := t.count()
	return n.rest, ok
}

// Distinct counts the different joined networks of the whole plan over all allowed states, resting
// and in transit, exactly and without listing them. Two states are the same network if they close
// the same edges and the same sources, loads and converters are there. ok is false where the count
// takes too many steps.
func (s *Space) Distinct() (n *big.Int, ok bool) {
	return s.Different(s.Net.Whole(), Ask{Transits: true})
}

// Different counts the networks that a zone can be over the states that List gives, exactly and
// without listing them; ok as for Distinct.
func (s *Space) Different(z *network.Zone, a Ask) (n *big.Int, ok bool) {
	var moving []int
	for _, v := range z.Vars {
		if _, held := a.At[v]; a.Transits && !held || len(a.Throws) > 0 && v == a.Moving {
			moving = append(moving, v)
		}
	}
	p := s.puzzle(a.choice(s, a.moves()), moving)
	if len(a.Throws) > 0 {
		p.only(a.Moving, a.Throws)
	}
	out, ok := s.tally(p, p.questions(z)).count()
	if a.Transits || len(a.Throws) > 0 {
		return out.any, ok
	}
	return out.rest, ok
}

// moves is the variable that must be on its way, -1 for none.
func (a Ask) moves() int {
	if len(a.Throws) > 0 {
		return a.Moving
	}
	return -1
}

// only leaves a variable nothing but some throws.
func (p *puzzle) only(v int, throws []*network.Throw) {
	in := p.where(v, func(k value) bool {
		for _, t := range throws {
			if k.throw != nil && *k.throw == *t {
				return true
			}
		}
		return false
	})
	p.open[v] = p.open[v].and(in.in)
}

// questions are what tells networks of a zone apart: the parts of a View's Signature.
func (p *puzzle) questions(z *network.Zone) []rule {
	var out []rule
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			if when := p.net.Edges[e].When; len(when) > 0 {
				out = append(out, p.condition(when))
			}
		}
	}
	there := func(v int) {
		if v >= 0 {
			out = append(out, rule{p.present(v)})
		}
	}
	for _, i := range z.Sources {
		there(p.net.Sources[i].Present)
	}
	for _, i := range z.Loads {
		there(p.net.Loads[i].Present)
	}
	for _, list := range [][]int{z.Inputs, z.Outputs} {
		for _, i := range list {
			there(p.net.Converters[i].Present)
		}
	}
	return out
}
