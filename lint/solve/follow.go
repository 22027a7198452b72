package solve

// finest is how closely the fold is told, as a share of all powers.
const finest = 1e-6

// Solve finds the operating point.
func (s *System) Solve() *Point {
	p := &Point{}
	x := make([]float64, s.n)
	if !s.opening(x) || !s.newton(x, 0, &p.Steps) {
		return p
	}
	if !s.powered() {
		return s.result(p, x)
	}
	s.follow(p, x)
	if p.Margin < 1 {
		return p
	}
	return s.result(p, x)
}

// follow leads x from no power to full power, in one step where that works, and to the fold where
// there is one before.
func (s *System) follow(p *Point, x []float64) {
	good := append([]float64(nil), x...)
	for step := 1.0; p.Margin < 1; {
		to := min(1, p.Margin+step)
		copy(x, good)
		if s.newton(x, to, &p.Steps) {
			p.Margin = to
			copy(good, x)
			step *= 2
			continue
		}
		if step = min(step, 1-p.Margin) / 2; step < finest*max(p.Margin, 1e-3) {
			p.Folds = p.Margin > 0
			return
		}
	}
}

// powered says whether anything draws a constant power.
func (s *System) powered() bool {
	for _, e := range s.net.Elements {
		if e.Kind == Power && e.Watts != 0 {
			return true
		}
	}
	return len(s.net.Converters) > 0
}

// result works out the currents.
func (s *System) result(p *Point, x []float64) *Point {
	p.Found, p.Margin = true, 1
	p.Volts = s.volts(x)
	n := s.net
	p.Branch, p.Element = make([]float64, len(n.Branches)), make([]float64, len(n.Elements))
	p.In, p.Out = make([]float64, len(n.Converters)), make([]float64, len(n.Converters))
	for k, b := range n.Branches {
		if b.Ohms > 0 {
			p.Branch[k] = (p.Volts[b.A] - p.Volts[b.B]) / b.Ohms
		}
	}
	for k := range n.Elements {
		e := &n.Elements[k]
		p.Element[k], _ = e.amps(p.Volts[e.P]-p.Volts[e.N], 1)
	}
	for k := range n.Converters {
		c := &n.Converters[k]
		w := c.flow(p.Volts[c.InP]-p.Volts[c.InN], p.Volts[c.OutP]-p.Volts[c.OutN], 1)
		p.In[k], p.Out[k] = w.in, w.out
	}
	s.joined.share(n, p)
	return p
}
