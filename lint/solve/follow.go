package solve

const (
	finest = 1e-6    // how closely the fold is told, as a share of the powers there
	faint  = 1e-12   // the least share of the powers that is told from none
	most   = 1 << 28 // multiplications for one solve: about a second
	again  = 12      // times that a fold may turn out to have been a step too far
)

// Solve finds the operating point.
func (s *System) Solve() *Point {
	p := &Point{}
	s.budget = most
	s.prepare()
	if !s.opening() || !s.newton(0) {
		return p
	}
	if s.powered() && !s.follow(p) {
		return p
	}
	s.result(p)
	return p
}

// follow leads x from no power to full power, in one step where that works, and to the fold where there
// is one before. Between a share that has a point and one from which none is reached it halves; the
// latter is tried again from close by before it counts as beyond the fold.
func (s *System) follow(p *Point) bool {
	copy(s.good, s.x)
	for low, high, tries := 0.0, 1.0, 0; low < 1; tries++ {
		if s.attain(1) {
			return true
		}
		for near := finest * max(low, faint/finest); high-low > near; near = finest * max(low, faint/finest) {
			if middle := (low + high) / 2; s.attain(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		if tries == again || !s.attain(high) {
			p.Margin, p.Folds = max(low, faint), s.budget > 0
			return false
		}
		low, high = high, 1
	}
	return true
}

// attain leads x from the last good point to another share of the powers.
func (s *System) attain(scale float64) bool {
	copy(s.x, s.good)
	if s.budget <= 0 || !s.newton(scale) {
		return false
	}
	copy(s.good, s.x)
	return true
}

// powered says whether anything draws a constant power.
func (s *System) powered() bool {
	for k := range s.net.Elements {
		if e := &s.net.Elements[k]; e.Kind == Power && e.Watts != 0 {
			return true
		}
	}
	return len(s.net.Converters) > 0
}

// result works out the currents.
func (s *System) result(p *Point) {
	n := s.net
	p.Found, p.Margin = true, 1
	all := make([]float64, n.Nodes+len(n.Branches)+len(n.Elements)+2*len(n.Converters))
	cut := func(size int) (part []float64) {
		part, all = all[:size:size], all[size:]
		return part
	}
	p.Volts, p.Branch, p.Element = cut(n.Nodes), cut(len(n.Branches)), cut(len(n.Elements))
	p.In, p.Out = cut(len(n.Converters)), cut(len(n.Converters))
	s.spread(p.Volts, s.x)
	for k, b := range n.Branches {
		if b.Ohms > 0 {
			p.Branch[k] = (p.Volts[b.A] - p.Volts[b.B]) / b.Ohms
		}
	}
	for k := range n.Elements {
		e := &n.Elements[k]
		p.Element[k], _ = e.amps(p.Volts[e.P]-p.Volts[e.N], 1, 0)
	}
	for k := range n.Converters {
		c := &n.Converters[k]
		w := c.flow(p.Volts[c.InP]-p.Volts[c.InN], p.Volts[c.OutP]-p.Volts[c.OutN], 1, 0)
		p.In[k], p.Out[k] = w.in, w.out
	}
	s.joined.share(n, p)
}
