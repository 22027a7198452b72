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

	branches, elements, converters []stamp
	base                           []float64 // the matrix of the branches alone
	siemens                        []float64 // by branch; 0 where it joins
	stiff                          []float64 // by unknown: the sum of the steepest slopes there, 1/ohm
	corners                        int       // elements whose characteristic has corners

	// Voltages by unknown with one more, of the references, that stays 0; and what leaves each unknown,
	// with one more for what leaves the references.
	x, trial, good []float64
	left, leaving  []float64
	step           []float64
	largest        float64 // A, of all currents at the last load
	budget         int     // multiplications left for a solve
}

// stamp is where a part stands: the unknowns of its nodes (of the references, the one beyond), and where
// the slope of what enters each by each other one lies in the matrix.
type stamp struct {
	at   [4]int32
	code [16]int32
	size int
}

// New prepares a network. The error says that it is too densely meshed.
func New(n *Net) (*System, error) {
	s := &System{net: n, islands: merge(n)}
	for _, b := range n.Branches {
		s.branches = append(s.branches, s.stamp(b.A, b.B))
	}
	for _, e := range n.Elements {
		s.elements = append(s.elements, s.stamp(e.P, e.N))
	}
	for _, c := range n.Converters {
		s.converters = append(s.converters, s.stamp(c.InP, c.InN, c.OutP, c.OutN))
	}
	near := make([][]int32, s.n)
	parts := [][]stamp{s.branches, s.elements, s.converters}
	for _, list := range parts {
		for k := range list {
			list[k].meet(near)
		}
	}
	var err error
	if s.f, err = newFactor(s.n, near, len(n.Converters) == 0); err != nil {
		return nil, err
	}
	for _, list := range parts {
		for k := range list {
			list[k].place(s.f, s.n)
		}
	}
	s.corners = len(n.Converters) + len(n.Elements)
	s.base, s.siemens = make([]float64, len(s.f.values)), make([]float64, len(n.Branches))
	for _, v := range []*[]float64{&s.stiff, &s.x, &s.trial, &s.good, &s.left, &s.leaving, &s.step} {
		*v = make([]float64, s.n+1)
	}
	s.joined, err = newSharing(n)
	return s, err
}

func (s *System) stamp(nodes ...int) stamp {
	t := stamp{size: len(nodes)}
	for i, node := range nodes {
		if t.at[i] = int32(s.row[node]); s.row[node] < 0 {
			t.at[i] = int32(s.n)
		}
	}
	return t
}

// meet notes which unknowns a part couples.
func (t *stamp) meet(near [][]int32) {
	for _, i := range t.at[:t.size] {
		for _, j := range t.at[:t.size] {
			if int(i) < len(near) && int(j) < len(near) && i != j {
				near[i] = append(near[i], j)
			}
		}
	}
}

func (t *stamp) place(f *factor, n int) {
	for i, a := range t.at[:t.size] {
		for j, b := range t.at[:t.size] {
			t.code[i*t.size+j] = f.nowhere()
			if int(a) < n && int(b) < n {
				t.code[i*t.size+j] = f.code(f.at[a], f.at[b])
			}
		}
	}
}

// conduct stamps a conductance between the two nodes of a part.
func (t *stamp) conduct(values []float64, g float64) {
	values[t.code[0]] += g
	values[t.code[1]] -= g
	values[t.code[2]] -= g
	values[t.code[3]] += g
}

// prepare takes the figures of a network that stay while it is solved.
func (s *System) prepare() {
	clear(s.base)
	clear(s.stiff)
	steep := func(t *stamp, ohms float64) {
		for _, i := range t.at[:t.size] {
			if ohms > 0 {
				s.stiff[i] += 1 / ohms
			}
		}
	}
	for k := range s.net.Branches {
		if b := &s.net.Branches[k]; b.Ohms > 0 {
			s.siemens[k] = 1 / b.Ohms
			s.branches[k].conduct(s.base, s.siemens[k])
		}
		steep(&s.branches[k], s.net.Branches[k].Ohms)
	}
	for k := range s.net.Elements {
		steep(&s.elements[k], s.net.Elements[k].Ohms)
	}
	for k := range s.net.Converters {
		steep(&s.converters[k], s.net.Converters[k].Ohms)
	}
}

// opening solves the network as its sources alone would make it: the first guess.
func (s *System) opening() bool {
	copy(s.f.values, s.base)
	clear(s.x)
	source := func(t *stamp, p, n int, i, slope float64) {
		s.x[t.at[p]] += i
		s.x[t.at[n]] -= i
		for _, c := range [4][2]int{{p, p}, {p, n}, {n, p}, {n, n}} {
			g := -slope
			if c[0] != c[1] {
				g = slope
			}
			s.f.values[t.code[c[0]*t.size+c[1]]] += g
		}
	}
	for k := range s.net.Elements {
		i, slope := s.net.Elements[k].opening()
		source(&s.elements[k], 0, 1, i, slope)
	}
	for k := range s.net.Converters {
		c := &s.net.Converters[k]
		source(&s.converters[k], 2, 3, c.Volts/c.Ohms, -1/c.Ohms)
		source(&s.converters[k], 0, 1, 0, -leak)
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
	copy(s.f.values, s.base)
	s.largest = 0
	for k := range s.branches {
		t := &s.branches[k]
		a, b := t.at[0], t.at[1]
		i := (x[a] - x[b]) * s.siemens[k]
		left[a] += i
		left[b] -= i
		s.largest = max(s.largest, math.Abs(i))
	}
	for k := range s.elements {
		t, e := &s.elements[k], &s.net.Elements[k]
		p, n := t.at[0], t.at[1]
		i, slope := e.amps(x[p]-x[n], scale, leakage)
		if calm && e.Kind == Power {
			slope = -leak
		}
		left[p] -= i
		left[n] += i
		t.conduct(s.f.values, -slope)
		s.largest = max(s.largest, math.Abs(i))
	}
	for k := range s.converters {
		s.loadConverter(k, left, x, scale, calm)
	}
	left[s.n] = 0
}

func (s *System) loadConverter(k int, left, x []float64, scale float64, calm bool) {
	t := &s.converters[k]
	at := &t.at
	w := s.net.Converters[k].flow(x[at[0]]-x[at[1]], x[at[2]]-x[at[3]], scale, leakage)
	left[at[0]] += w.in
	left[at[1]] -= w.in
	left[at[2]] -= w.out
	left[at[3]] += w.out
	if calm {
		w.inByIn = leak
	}
	for i, row := range [4][2]float64{{w.inByIn, w.inByOut}, {-w.inByIn, -w.inByOut}, {-w.outByIn, -w.outByOut}, {w.outByIn, w.outByOut}} {
		s.f.values[t.code[4*i]] += row[0]
		s.f.values[t.code[4*i+1]] -= row[0]
		s.f.values[t.code[4*i+2]] += row[1]
		s.f.values[t.code[4*i+3]] -= row[1]
	}
	s.largest = max(s.largest, math.Abs(w.in), math.Abs(w.out))
}
