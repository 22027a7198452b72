package explore

import (
	"slices"

	"ferrule/lint/network"
)

// Passes gives, for each choice of a filter that a state of the whole plan passes (on its way, at both
// ends), what is so for certain once only some variables are known to stand where they do.
func (s *Space) Passes(f Filter, v *View) (out []Known) {
	all := make([]int, len(v.pos))
	for i := range all {
		all[i] = i
	}
	for _, c := range f.choices {
		end := slices.Clone(v.pos)
		if v.Transit != nil {
			end[v.Transit.Var] = v.Transit.Throw.To
		}
		if c.admits(s, all, v.pos) && c.admits(s, all, end) {
			out = append(out, Known{s, v, c})
		}
	}
	return out
}

// Known is a state that passes a choice.
type Known struct {
	s *Space
	v *View
	c choice
}

// Conducts says whether an edge is closed whatever the variables that are not listed do.
func (k Known) Conducts(edge int, vars []int) bool {
	for _, l := range k.s.Net.Edges[edge].When {
		if !k.sure(l, vars) {
			return false
		}
	}
	return true
}

func (k Known) sure(l network.Literal, vars []int) bool {
	if slices.Contains(vars, l.Var) {
		return k.v.meets(l)
	}
	for p := k.c.from(k.s, l.Var, 0); p >= 0; p = k.c.from(k.s, l.Var, p+1) {
		if !l.At[p] {
			return false
		}
	}
	return true
}

// Free lists the variables that are neither among some nor pinned.
func (k Known) Free(vars []int) (out []int) {
	for i := range k.s.Net.Vars {
		if p := k.c.from(k.s, i, 0); !slices.Contains(vars, i) && k.c.from(k.s, i, p+1) >= 0 {
			out = append(out, i)
		}
	}
	return out
}

// View is the state.
func (k Known) View() *View { return k.v }

// Between is what all states lie between that agree with the state in some variables and pass the
// choice.
func (k Known) Between(vars []int) (most, least *View) {
	free := k.Free(vars)
	most = k.v.Loosen(free...)
	out := *most
	out.root, out.pos = nil, slices.Clone(most.pos)
	for _, v := range free {
		out.pos[v] = -1
	}
	return most, &out
}

// Frontier answers a question about ways by following all values at once, under the first choice of a
// filter; rest says that the state it found is at rest.
func (s *Space) Frontier(z *network.Zone, f Filter, ends ...Ends) (t Truth, rest bool) {
	q := s.posed(z, f)[0]
	if q.some != Yes {
		return q.some, false
	}
	p, g := q.plot(nil), &joining{}
	for _, x := range ends {
		w, joined := p.web(p.ends(x))
		if w != nil {
			g.webs = append(g.webs, w)
		} else if !joined {
			return No, false
		}
	}
	looked := 0
	t, c := s.frontier(q, g, s.involved(g.vars()), &looked)
	rest = true
	for v, k := range c {
		rest = rest && q.rest[v].has(k)
	}
	return t, rest
}
