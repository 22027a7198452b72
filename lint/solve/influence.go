package solve

// Linear prepares the linear part of a network, its branches, batteries and resistors, for questions of
// influence; false where it has no solution.
func (s *System) Linear() bool {
	s.f.clear()
	for k, b := range s.net.Branches {
		if b.Ohms > 0 {
			s.conduct(s.branch[k], 1/b.Ohms)
		}
	}
	for k, e := range s.net.Elements {
		if e.Kind == Battery || e.Kind == Resistor {
			s.conduct(s.element[k], 1/e.Ohms)
		}
	}
	return s.f.decompose()
}

// Influence is, by node, what a current of 1 A put in there and taken out at the reference adds to the
// current in a branch, from its A to its B. Linear comes first.
func (s *System) Influence(branch int) []float64 {
	b := s.net.Branches[branch]
	clear(s.scratch)
	s.leave(s.scratch, b.A, 1/b.Ohms)
	s.leave(s.scratch, b.B, -1/b.Ohms)
	s.f.solve(s.scratch)
	return s.volts(s.scratch)
}
