package explore

import "slices"

// Put is the view with one variable at another position, whatever would go along with it: a plug drawn
// while the pack that it follows is whole shows what the pack carries away.
func (v *View) Put(variable, position int) *View {
	out := *v
	out.root = nil
	out.pos = slices.Clone(v.pos)
	out.pos[variable] = position
	return &out
}

// Leaving is the space of the states from which a variable can be put at a position while everything
// else stays as it is: what an interlock forbids there must be moved first. can is false where an
// interlock forbids the position itself.
func (s *Space) Leaving(variable, position int) (out *Space, can bool) {
	out = s.Without()
	for _, c := range s.never {
		k := slices.Index(c.vars, variable)
		if k < 0 || c.at[k] != position {
			continue
		}
		if len(c.vars) == 1 {
			return nil, false
		}
		out.never = append(out.never, combo{slices.Delete(slices.Clone(c.vars), k, k+1), slices.Delete(slices.Clone(c.at), k, k+1), c.by})
	}
	if len(out.never) == len(s.never) {
		return s, true
	}
	out.groups, out.groupOf, out.tied = nil, nil, nil
	out.tie()
	return out, true
}
