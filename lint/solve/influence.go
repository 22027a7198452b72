package solve

// Linear prepares the linear part of a network, its branches, batteries and resistors, for questions of
// influence; false where it has no solution. Solving takes it back.
func (s *System) Linear() bool {
	s.prepare()
	copy(s.f.values, s.base)
	for k := range s.net.Elements {
		if e := &s.net.Elements[k]; e.Kind == Battery || e.Kind == Resistor {
			s.elements[k].conduct(s.f.values, 1/e.Ohms)
		}
	}
	return s.f.decompose()
}

// Influence is, by node, what a current of 1 A put in there and taken out at the reference adds to the
// current in a branch, from its A to its B. Linear comes first.
func (s *System) Influence(branch int) []float64 {
	at := &s.branches[branch].at
	clear(s.step)
	s.step[at[0]] += s.siemens[branch]
	s.step[at[1]] -= s.siemens[branch]
	s.f.solve(s.step[:s.n])
	volts := make([]float64, s.net.Nodes)
	s.spread(volts, s.step)
	return volts
}
