package solve

import "math"

// System is a network prepared for solving: the figures of its branches, elements and converters may
// change between solves, and which nodes they join may not; nor may a resistance become 0. It is not for
// use by several goroutines at once.
type System struct {
	net *Net
	islands
	f      *factor
	joined *sharing

	branches, elements []pair
	converters         []quad
	base               []float64 // the matrix of the branches alone
	siemens            []float64 // by branch; 0 where it joins
	stiff              []float64 // by unknown: the sum of the steepest slopes there, 1/ohm
	corners            int       // elements whose characteristic has corners

	// Voltages by unknown with one more, of the references, that stays 0; and what leaves each unknown,
	// with one more for what leaves the references.
	x, trial, good []float64
	left, leaving  []float64
	step           []float64
	reach          float64 // V, the largest of the step
	moved          float64 // V, the most that the last step moved, if its matrix was the true one
	largest        float64 // A, of all currents at the last load
	budget         int     // multiplications left for a solve
}

// New prepares a network. The error says that it is too densely meshed.
func New(n *Net) (*System, error) {
	s := &System{net: n, islands: merge(n)}
	s.branches, s.elements, s.converters = make([]pair, len(n.Branches)), make([]pair, len(n.Elements)), make([]quad, len(n.Converters))
	near := make([][]int32, s.n)
	for k, b := range n.Branches {
		s.unknowns(s.branches[k].at[:], b.A, b.B)
		meet(near, s.branches[k].at[:])
	}
	for k, e := range n.Elements {
		s.unknowns(s.elements[k].at[:], e.P, e.N)
		meet(near, s.elements[k].at[:])
	}
	for k, c := range n.Converters {
		s.unknowns(s.converters[k].at[:], c.InP, c.InN, c.OutP, c.OutN)
		meet(near, s.converters[k].at[:])
	}
	f, place, err := newFactor(s.n, near, len(n.Converters) == 0)
	if err != nil {
		return nil, err
	}
	s.f = f
	s.renumber(place)
	s.place(place)
	s.joined, err = newSharing(n)
	return s, err
}

func (s *System) place(place []int32) {
	for _, list := range [][]pair{s.branches, s.elements} {
		for k := range list {
			renumber(list[k].at[:], place)
			s.f.place(list[k].code[:], list[k].at[:])
		}
	}
	for k := range s.converters {
		renumber(s.converters[k].at[:], place)
		s.f.place(s.converters[k].code[:], s.converters[k].at[:])
	}
	s.corners = len(s.converters) + len(s.elements)
	s.base, s.siemens = make([]float64, len(s.f.values)), make([]float64, len(s.branches))
	for _, v := range []*[]float64{&s.stiff, &s.x, &s.trial, &s.good, &s.left, &s.leaving, &s.step} {
		*v = make([]float64, s.n+1)
	}
}

// prepare takes the figures of a network that stay while it is solved.
func (s *System) prepare() {
	clear(s.base)
	clear(s.stiff)
	for k := range s.branches {
		if ohms := s.net.Branches[k].Ohms; ohms > 0 {
			t := &s.branches[k]
			s.siemens[k] = 1 / ohms
			t.conduct(s.base, s.siemens[k])
			s.stiff[t.at[0]] += s.siemens[k]
			s.stiff[t.at[1]] += s.siemens[k]
		}
	}
	steep := func(at []int32, ohms float64) {
		for _, i := range at {
			if ohms > 0 {
				s.stiff[i] += 1 / ohms
			}
		}
	}
	for k := range s.elements {
		steep(s.elements[k].at[:], s.net.Elements[k].Ohms)
	}
	for k := range s.converters {
		steep(s.converters[k].at[2:], s.net.Converters[k].Ohms)
	}
}

// opening solves the network as a linear one: the first guess. Sources are on, and steady draws count
// unless what they draw from is held by nothing.
func (s *System) opening() bool {
	return s.open(true) && greatest(s.x) < mostVolts || s.open(false)
}

func (s *System) open(steady bool) bool {
	copy(s.f.values, s.base)
	clear(s.x)
	for k := range s.elements {
		e, t := &s.net.Elements[k], &s.elements[k]
		i, slope := e.opening()
		if steady && e.Kind == Steady {
			i, slope = -e.Amps, 0
		}
		s.x[t.at[0]] += i
		s.x[t.at[1]] -= i
		t.conduct(s.f.values, -slope)
	}
	for k := range s.converters {
		c, t := &s.net.Converters[k], &s.converters[k]
		s.x[t.at[2]] += c.Volts / c.Ohms
		s.x[t.at[3]] -= c.Volts / c.Ohms
		t.slopes(s.f.values, flow{inByIn: leak, outByOut: -1 / c.Ohms})
	}
	if !s.decompose() {
		return false
	}
	s.f.solve(s.x[:s.n])
	s.x[s.n] = 0
	return true
}

// decompose factors the matrix; false where it is singular or the budget is spent.
func (s *System) decompose() bool {
	s.budget -= len(s.f.hits) + len(s.f.values)
	return s.budget > 0 && s.f.decompose()
}

// load works out what leaves each unknown, in A, at voltages x and powers times scale, and the matrix of
// its derivatives: without those of constant powers where calm, which fall and can turn a step the wrong
// way.
func (s *System) load(left, x []float64, scale float64, calm bool) {
	clear(left)
	values := s.f.values
	copy(values, s.base)
	low, high := 0.0, 0.0
	for k := range s.branches {
		t := &s.branches[k]
		i := (x[t.at[0]] - x[t.at[1]]) * s.siemens[k]
		left[t.at[0]] += i
		left[t.at[1]] -= i
		if i > high {
			high = i
		} else if i < low {
			low = i
		}
	}
	s.largest = max(high, -low)
	for k := range s.elements {
		t, e := &s.elements[k], &s.net.Elements[k]
		i, slope := e.amps(x[t.at[0]]-x[t.at[1]], scale, leakage)
		if calm && e.Kind == Power {
			slope = -leak
		}
		left[t.at[0]] -= i
		left[t.at[1]] += i
		t.conduct(values, -slope)
		s.largest = max(s.largest, math.Abs(i))
	}
	for k := range s.converters {
		at := &s.converters[k].at
		w := s.net.Converters[k].flow(x[at[0]]-x[at[1]], x[at[2]]-x[at[3]], scale, leakage)
		left[at[0]] += w.in
		left[at[1]] -= w.in
		left[at[2]] -= w.out
		left[at[3]] += w.out
		if calm {
			w.inByIn = leak
		}
		s.converters[k].slopes(values, w)
		s.largest = max(s.largest, math.Abs(w.in), math.Abs(w.out))
	}
	left[s.n] = 0
}
