package solve

import (
	"math"
)

// System is a network prepared for solving: the figures of its branches, elements and converters may
// change between solves, and which nodes they join may not; nor may a resistance become 0.
type System struct {
	net *Net
	islands
	f *factor

	branch   [][4]int32  // entries (A,A) (A,B) (B,A) (B,B), absent where coded none
	element  [][4]int32  // the same for P and N
	convert  [][16]int32 // InP InN OutP OutN
	joined   *sharing
	residual []float64
	trial    []float64
	scratch  []float64
	corners  int // elements whose characteristic has corners
}

const none = math.MinInt32

// New prepares a network. The error says that it is too densely meshed.
func New(n *Net) (*System, error) {
	s := &System{net: n, islands: merge(n)}
	near := make([][]int32, s.n)
	meet := func(nodes ...int) {
		for _, a := range nodes {
			for _, b := range nodes {
				if i, j := s.row[a], s.row[b]; i >= 0 && j >= 0 && i != j {
					near[i] = append(near[i], int32(j))
				}
			}
		}
	}
	for _, b := range n.Branches {
		meet(b.A, b.B)
	}
	for _, e := range n.Elements {
		meet(e.P, e.N)
	}
	for _, c := range n.Converters {
		meet(c.InP, c.InN, c.OutP, c.OutN)
	}
	var err error
	if s.f, err = newFactor(s.n, near); err != nil {
		return nil, err
	}
	s.place()
	s.corners = len(n.Converters) + len(n.Elements)
	s.residual, s.trial, s.scratch = make([]float64, s.n), make([]float64, s.n), make([]float64, s.n)
	s.joined, err = newSharing(n)
	return s, err
}

// place works out where each part's slopes go in the matrix.
func (s *System) place() {
	code := func(a, b int) int32 {
		i, j := s.row[a], s.row[b]
		if i < 0 || j < 0 {
			return none
		}
		return s.f.code(s.f.at[i], s.f.at[j])
	}
	four := func(a, b int) [4]int32 { return [4]int32{code(a, a), code(a, b), code(b, a), code(b, b)} }
	for _, b := range s.net.Branches {
		s.branch = append(s.branch, four(b.A, b.B))
	}
	for _, e := range s.net.Elements {
		s.element = append(s.element, four(e.P, e.N))
	}
	for _, c := range s.net.Converters {
		nodes := [4]int{c.InP, c.InN, c.OutP, c.OutN}
		var codes [16]int32
		for i, a := range nodes {
			for j, b := range nodes {
				codes[4*i+j] = code(a, b)
			}
		}
		s.convert = append(s.convert, codes)
	}
}

func (s *System) add(code int32, v float64) {
	if code != none {
		*s.f.entry(code) += v
	}
}

// conduct stamps a conductance between two nodes.
func (s *System) conduct(at [4]int32, g float64) {
	s.add(at[0], g)
	s.add(at[1], -g)
	s.add(at[2], -g)
	s.add(at[3], g)
}

func (s *System) at(x []float64, node int) float64 {
	if r := s.row[node]; r >= 0 {
		return x[r]
	}
	return 0
}

func (s *System) leave(f []float64, node int, i float64) {
	if r := s.row[node]; r >= 0 {
		f[r] += i
	}
}

// opening solves the network as its sources alone would make it: the first guess.
func (s *System) opening(x []float64) bool {
	s.f.clear()
	clear(x)
	source := func(at [4]int32, p, n int, i, slope float64) {
		s.conduct(at, -slope)
		s.leave(x, p, i)
		s.leave(x, n, -i)
	}
	for k, b := range s.net.Branches {
		if b.Ohms > 0 {
			s.conduct(s.branch[k], 1/b.Ohms)
		}
	}
	for k := range s.net.Elements {
		e := &s.net.Elements[k]
		i, slope := e.opening()
		source(s.element[k], e.P, e.N, i, slope)
	}
	for k := range s.net.Converters {
		c, at := &s.net.Converters[k], s.convert[k]
		source([4]int32{at[10], at[11], at[14], at[15]}, c.OutP, c.OutN, c.Volts/c.Ohms, -1/c.Ohms)
		source([4]int32{at[0], at[1], at[4], at[5]}, c.InP, c.InN, 0, -leak)
	}
	if !s.f.decompose() {
		return false
	}
	s.f.solve(x)
	return true
}

// slopes says which derivatives load works out.
type slopes uint8

const (
	noSlopes   slopes = iota
	trueSlopes        // all of them
	calmSlopes        // without those of constant powers, which fall and can turn a step the wrong way
)

// load works out what leaves each unknown node, in A, and the matrix of its derivatives. It returns the
// least residual that can be told from rounding.
func (s *System) load(f, x []float64, scale float64, want slopes) float64 {
	largest, terms := 0.0, 0.0
	clear(f)
	if want != noSlopes {
		s.f.clear()
	}
	for k := range s.net.Branches {
		b := &s.net.Branches[k]
		if b.Ohms == 0 {
			continue
		}
		va, vb := s.at(x, b.A), s.at(x, b.B)
		i := (va - vb) / b.Ohms
		terms = max(terms, (math.Abs(va)+math.Abs(vb))/b.Ohms)
		s.leave(f, b.A, i)
		s.leave(f, b.B, -i)
		largest = max(largest, math.Abs(i))
		if want != noSlopes {
			s.conduct(s.branch[k], 1/b.Ohms)
		}
	}
	for k := range s.net.Elements {
		e := &s.net.Elements[k]
		vp, vn := s.at(x, e.P), s.at(x, e.N)
		i, slope := e.amps(vp-vn, scale)
		terms = max(terms, (math.Abs(vp)+math.Abs(vn)+math.Abs(e.Volts))*-slope)
		s.leave(f, e.P, -i)
		s.leave(f, e.N, i)
		largest = max(largest, math.Abs(i))
		if want == calmSlopes && e.Kind == Power {
			slope = -leak
		}
		if want != noSlopes {
			s.conduct(s.element[k], -slope)
		}
	}
	for k := range s.net.Converters {
		i, steep := s.loadConverter(k, f, x, scale, want)
		largest, terms = max(largest, i), max(terms, steep)
	}
	return amount + relative*largest + rounding*terms
}

func (s *System) loadConverter(k int, f, x []float64, scale float64, want slopes) (amps, terms float64) {
	c := &s.net.Converters[k]
	ui, uo := s.at(x, c.InP)-s.at(x, c.InN), s.at(x, c.OutP)-s.at(x, c.OutN)
	w := c.flow(ui, uo, scale)
	s.leave(f, c.InP, w.in)
	s.leave(f, c.InN, -w.in)
	s.leave(f, c.OutP, -w.out)
	s.leave(f, c.OutN, w.out)
	if want == calmSlopes {
		w.inByIn = leak
	}
	if want != noSlopes {
		at := &s.convert[k]
		for i, row := range [4][2]float64{{w.inByIn, w.inByOut}, {-w.inByIn, -w.inByOut}, {-w.outByIn, -w.outByOut}, {w.outByIn, w.outByOut}} {
			s.add(at[4*i], row[0])
			s.add(at[4*i+1], -row[0])
			s.add(at[4*i+2], row[1])
			s.add(at[4*i+3], -row[1])
		}
	}
	return max(math.Abs(w.in), math.Abs(w.out)), (math.Abs(uo)+c.Volts)*math.Abs(w.inByOut-w.outByOut) + math.Abs(ui*w.inByIn)
}
