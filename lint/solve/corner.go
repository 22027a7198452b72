package solve

import "math"

// untilCorner is how much of a step can be made before some element turns from one straight piece of
// its characteristic to another: a step that stops just beyond it cannot swing from piece to piece.
func (s *System) untilCorner() float64 {
	t := 1.0
	for k := range s.net.Elements {
		e, at := &s.net.Elements[k], &s.elements[k].at
		first, second, ok := e.corners()
		if !ok {
			continue
		}
		u, du := s.x[at[0]]-s.x[at[1]], s.step[at[1]]-s.step[at[0]]
		t = min(t, until(u, du, first), until(u, du, second))
	}
	for k := range s.net.Converters {
		c, at := &s.net.Converters[k], &s.converters[k].at
		u, du := s.x[at[2]]-s.x[at[3]], s.step[at[3]]-s.step[at[2]]
		t = min(t, until(u, du, c.Volts), until(u, du, c.Volts-c.Ohms*c.Amps))
	}
	return t
}

// until is the share of a step of du after which u is just past a corner; more than 1 where it moves
// away from it.
func until(u, du, corner float64) float64 {
	if !((corner-u)*du > 0) {
		return 2
	}
	return (math.Abs(corner-u) + past) / math.Abs(du)
}

// corners gives the voltages at which an element turns, twice the same where there is but one.
func (e *Element) corners() (first, second float64, ok bool) {
	switch e.Kind {
	case Battery:
		first = e.Volts + e.Ohms*e.Amps
		return first, first, e.Amps > 0
	case Regulated:
		return e.Volts, e.Volts - e.Ohms*e.Amps, true
	case Steady:
		floor := max(e.Floor, leastFloor)
		return floor, -floor, true
	case Valve:
		return e.Volts, e.Volts, true
	}
	return 0, 0, false
}

// inRange says whether every constant power stands at a voltage at which it is one.
func (s *System) inRange(x []float64) bool {
	for k := range s.net.Elements {
		e, at := &s.net.Elements[k], &s.elements[k].at
		if e.Kind == Power && e.Watts > 0 && e.Amps == 0 && x[at[0]]-x[at[1]] < e.floor() {
			return false
		}
	}
	for k := range s.net.Converters {
		at := &s.converters[k].at
		ui, uo := x[at[0]]-x[at[1]], x[at[2]]-x[at[3]]
		if ui < lowest && s.net.Converters[k].flow(ui, uo, 1, 0).in > 0 {
			return false
		}
	}
	return true
}
