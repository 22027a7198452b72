package solve

import "math"

const (
	// leak keeps an element that has no slope from making the matrix singular; it is in the slope alone,
	// never in the current, so no solution depends on it. In 1/ohm.
	leak = 1e-10
	// leakage is what passes, in 1/ohm, beyond a corner where a supply is at its limit or blocks: a
	// microampere for 100 V. Without it a part of a network that nothing draws from could stand at any
	// voltage above what its supplies hold.
	leakage = 1e-8
)

// amps is the current out of an element's P at a voltage across it, and its slope; powers count times
// scale. leakage is 0 for the current as it is told.
func (e *Element) amps(u, scale, leakage float64) (i, slope float64) {
	switch e.Kind {
	case Battery:
		if i = (e.Volts - u) / e.Ohms; e.Amps > 0 && i < -e.Amps {
			return -e.Amps + leakage*(e.Volts+e.Ohms*e.Amps-u), -leakage
		}
		return i, -1 / e.Ohms
	case Regulated:
		return regulated(u, e.Volts, e.Ohms, e.Amps, leakage, e.Back)
	case Array:
		i, slope = e.Cell.Amps(u)
		return i, slope - leak
	case Steady:
		if floor := max(e.Floor, leastFloor); math.Abs(u) < floor {
			return -e.Amps * u / floor, -e.Amps / floor
		}
		return -math.Copysign(e.Amps, u), -leak
	case Power:
		y, dy := inverse(u, e.floor())
		if i, slope = -scale*e.Watts*y, -scale*e.Watts*dy; e.Amps > 0 && i < -e.Amps {
			return -e.Amps, -leak
		}
		return i, slope
	case Resistor:
		return -u / e.Ohms, -1 / e.Ohms
	case Hold:
		return (e.Volts - u) / e.Ohms, -1 / e.Ohms
	case Valve:
		switch i = -(u - e.Volts) / e.Ohms; {
		case i > atCorner:
			return leakage * (e.Volts - u), -leakage
		case i > 0:
			return 0, -1 / e.Ohms
		}
		return i, -1 / e.Ohms
	}
	return 0, 0
}

// leastFloor is the voltage below which a steady draw tapers at the latest.
const leastFloor = 1e-3

// opening is the element as Newton's method first sees it: sources that are on, and no loads.
func (e *Element) opening() (i, slope float64) {
	switch e.Kind {
	case Battery, Regulated, Hold, Valve: // a valve stands where it begins to conduct
		return e.Volts / e.Ohms, -1 / e.Ohms
	case Array:
		at := e.Cell.OpenVolts()
		_, slope = e.Cell.Amps(at)
		return -slope * at, slope - leak
	case Resistor:
		return 0, -1 / e.Ohms
	}
	return 0, -leak
}

// floor is the voltage below which an element of constant power is out of its range.
func (e *Element) floor() float64 { return max(e.Floor, lowest) }

// lowest is the least voltage, in V, at which a constant power is believed.
const lowest = 0.05

// inverse is 1/u, and its tangent below the floor, so that a step too far is finite.
func inverse(u, floor float64) (y, slope float64) {
	if u < floor {
		return (2 - u/floor) / floor, -1 / (floor * floor)
	}
	return 1 / u, -1 / (u * u)
}

// atCorner is how far past a corner, in A, an element keeps the slope from before it, so that a point on
// the corner itself can be left on either side. A point may be left over as much, so no step is wanted there.
const atCorner = amount / 10

func regulated(u, volts, ohms, most, leakage float64, back bool) (i, slope float64) {
	if most <= 0 && !back {
		return leakage * (volts - u), -leakage
	}
	switch i = (volts - u) / ohms; {
	case i > most+atCorner:
		return most + leakage*(volts-ohms*most-u), -leakage
	case i < -atCorner && !back:
		return leakage * (volts - u), -leakage
	case i > most:
		return most, -1 / ohms
	case i < 0 && !back:
		return 0, -1 / ohms
	}
	return i, -1 / ohms
}

// flow is what a converter takes and gives at the voltages of its two sides, with the four slopes.
type flow struct{ in, out, inByIn, inByOut, outByIn, outByOut float64 }

func (c *Converter) flow(ui, uo, scale, leakage float64) flow {
	var f flow
	seeps, slope := regulated(uo, c.Volts, c.Ohms, c.Amps, leakage, c.Back)
	f.out, _ = regulated(uo, c.Volts, c.Ohms, c.Amps, 0, c.Back)
	f.outByOut, seeps = slope, seeps-f.out // what leaks costs no power
	if f.out > 0 {
		c.limit(&f, ui, uo)
	}
	p, byOut, byIn := uo*f.out, f.out+uo*f.outByOut, uo*f.outByIn
	factor := 1 / c.Efficiency
	if p < 0 {
		factor = c.Efficiency
	}
	f.out += seeps
	y, dy := inverse(ui, lowest)
	watts := scale * (p*factor + c.Idle)
	f.in = watts * y
	f.inByIn = watts*dy + scale*factor*byIn*y
	f.inByOut = scale * factor * byOut * y
	return f
}

// limit keeps the output within what the ceiling and the input's limit let through.
func (c *Converter) limit(f *flow, ui, uo float64) {
	most, byIn := math.Inf(1), 0.0
	if c.Ceiling > 0 {
		most = c.Ceiling
	}
	if c.InAmps > 0 {
		if w := c.Efficiency * (ui*c.InAmps - c.Idle); w < most {
			most, byIn = w, c.Efficiency*c.InAmps
		}
	}
	if most < 0 {
		f.out, f.outByOut, f.outByIn = 0, -leak, 0
		return
	}
	if y, dy := inverse(uo, lowest); most*y < f.out {
		f.out, f.outByOut, f.outByIn = most*y, most*dy, byIn*y
	}
}
