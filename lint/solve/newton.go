package solve

import "math"

const (
	mostSteps = 60    // of Newton's method for one scale of the powers
	mostTries = 12    // halvings of one step
	past      = 1e-10 // V, by which a step goes past a corner
	amount    = 1e-10 // A, in a node of small currents
	relative  = 1e-13 // of the largest current
	rounding  = 1e-15 // of the largest term, in A, that a difference of voltages is made of
)

// newton moves x to a root at one scale of the powers; false where it does not get there, or gets to
// a root off the branch that starts at no power.
func (s *System) newton(x []float64, scale float64, steps *int) bool {
	s.load(s.residual, x, scale, trueSlopes)
	merit := norm(s.residual)
	for range mostSteps + 4*s.corners {
		*steps++
		if !s.f.decompose() {
			return false
		}
		if !s.f.sign {
			if s.load(s.residual, x, scale, calmSlopes); !s.f.decompose() {
				return false
			}
		}
		copy(s.scratch, s.residual)
		s.f.solve(s.scratch)
		corner := s.untilCorner(x)
		t, better := s.search(x, scale, merit, corner)
		for i := range x {
			x[i] -= t * s.scratch[i]
		}
		enough := s.load(s.residual, x, scale, trueSlopes)
		was := merit
		if merit = norm(s.residual); merit != merit {
			return false
		}
		if biggest(s.residual) <= enough {
			return s.f.decompose() && s.f.sign && s.inRange(x)
		}
		if !better && (corner == 1 || t < corner) && merit >= was {
			return false
		}
	}
	return false
}

// search finds how much of a step makes the residual smaller: t of it, a half of that, a quarter.
func (s *System) search(x []float64, scale, merit, t float64) (float64, bool) {
	for range mostTries {
		for i := range x {
			s.trial[i] = x[i] - t*s.scratch[i]
		}
		s.load(s.residual, s.trial, scale, noSlopes)
		switch m := norm(s.residual); {
		case m < merit*(1-1e-4*t):
			return t, true
		case t < 1e-6 && m <= merit*(1+1e-6): // too short a way to a corner to tell
			return t, false
		}
		t /= 2
	}
	return t, false
}

// untilCorner is how much of a step can be made before some element turns from one straight piece of
// its characteristic to another: a step that stops just beyond it cannot swing from piece to piece.
func (s *System) untilCorner(x []float64) float64 {
	t := 1.0
	ask := func(p, n int, corner float64) {
		u := s.at(x, p) - s.at(x, n)
		if du := s.at(s.scratch, n) - s.at(s.scratch, p); (corner-u)*du > 0 {
			t = min(t, (math.Abs(corner-u)+past)/math.Abs(du))
		}
	}
	for k := range s.net.Elements {
		switch e := &s.net.Elements[k]; e.Kind {
		case Battery:
			if e.Amps > 0 {
				ask(e.P, e.N, e.Volts+e.Ohms*e.Amps)
			}
		case Regulated:
			ask(e.P, e.N, e.Volts)
			ask(e.P, e.N, e.Volts-e.Ohms*e.Amps)
		case Steady:
			ask(e.P, e.N, max(e.Floor, leastFloor))
			ask(e.P, e.N, -max(e.Floor, leastFloor))
		case Valve:
			ask(e.P, e.N, e.Volts)
		}
	}
	for k := range s.net.Converters {
		c := &s.net.Converters[k]
		ask(c.OutP, c.OutN, c.Volts)
		ask(c.OutP, c.OutN, c.Volts-c.Ohms*c.Amps)
	}
	return t
}

// inRange says whether every constant power stands at a voltage at which it is one.
func (s *System) inRange(x []float64) bool {
	for k := range s.net.Elements {
		if e := &s.net.Elements[k]; e.Kind == Power && e.Watts > 0 && e.Amps == 0 && s.at(x, e.P)-s.at(x, e.N) < e.floor() {
			return false
		}
	}
	for k := range s.net.Converters {
		c := &s.net.Converters[k]
		ui, uo := s.at(x, c.InP)-s.at(x, c.InN), s.at(x, c.OutP)-s.at(x, c.OutN)
		if w := c.flow(ui, uo, 1); ui < lowest && w.in > 0 {
			return false
		}
	}
	return true
}

func norm(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return sum
}

func biggest(v []float64) float64 {
	m := 0.0
	for _, x := range v {
		m = max(m, math.Abs(x))
	}
	return m
}
