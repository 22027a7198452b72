package explore

import "ferrule/lint/network"

// Span is the allowed states that agree with what is decided so far, as two views between which all
// of them lie. In Most every undecided variable is at all its positions at once: nothing is joined or
// there in any of the states that is not in Most. In Least undecided contacts are open and what comes
// and goes is absent: what is joined or there in Least is so in all of the states. Once all is
// decided both are the same state.
type Span struct {
	Most, Least *View

	edges, vars []int
}

// Because tells what an answer rests on, once or bit by bit: edges, as they conduct or not, and variables
// of what comes and goes. With No it saves the search finding out what must change; with Open it says
// what to decide first. It may be left out: Joins and Feeds tell by themselves.
func (s *Span) Because(edges []int, vars ...int) {
	s.edges, s.vars = append(s.edges, edges...), append(s.vars, vars...)
}

// Not turns an answer round.
func (t Truth) Not() Truth {
	switch t {
	case Yes:
		return No
	case No:
		return Yes
	}
	return Open
}

// And is Yes where both are, No where either is.
func (t Truth) And(o Truth) Truth {
	switch {
	case t == No || o == No:
		return No
	case t == Yes && o == Yes:
		return Yes
	}
	return Open
}

// Or is Yes where either is, No where both are.
func (t Truth) Or(o Truth) Truth { return t.Not().And(o.Not()).Not() }

// Joins says whether all ends are joined, and because of what. Only the first ends that decide it are
// looked at.
func (s *Span) Joins(ends ...Ends) Truth {
	out := Yes
	for _, x := range ends {
		switch {
		case !s.Most.Joined(x.A, x.B):
			s.Because(s.Most.border(x.A))
			return No
		case !s.Least.Joined(x.A, x.B) && out == Yes:
			s.Because(s.Most.between(x.A, x.B))
			out = Open
		case out == Yes:
			s.Because(s.Least.between(x.A, x.B))
		}
	}
	return out
}

// border lists the edges of the zone that would lead on from what a node is joined to.
func (v *View) border(id network.NodeID) (out []int) {
	in := v.find(id)
	for _, list := range [][]int{v.Zone.Edges, v.Zone.Returns} {
		for _, e := range list {
			if x := &v.net.Edges[e]; !v.Conducts(e) && (v.find(x.A) == in) != (v.find(x.B) == in) {
				out = append(out, e)
			}
		}
	}
	return out
}

// Feeds says whether something feeds a port (see Energy.Feeds, and View.Live for back and skip), and
// because of what.
func (s *Span) Feeds(p network.Port, back func(*network.Converter) bool, skip func(*network.Source) bool) Truth {
	most := s.Most.Live(back, skip)
	if !most.Feeds(p) {
		return No
	}
	least, out := s.Least.Live(back, skip), Yes
	if !least.Feeds(p) {
		least, out = most, Open
	}
	edges, vars := least.rests(p)
	s.Because(edges, vars...)
	return out
}
