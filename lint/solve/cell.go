package solve

import "math"

// Cell is the single-diode model of a solar array, I = IL - Id (exp((U + I Rs - Uo) / a) - exp(-Uo / a)),
// with the exponent counted from the open-circuit voltage Uo: a sharp knee makes a small, and exp(Uo/a)
// would not fit in a number.
type Cell struct {
	light, diode float64 // A
	open, a      float64 // V
	series       float64 // ohm
	none         float64 // exp(-Uo/a)
}

// NewCell fits the model to a module's four data-sheet figures (V, A) and scales it to series modules
// in parallel strings. voc may be that of another temperature: the knee keeps its distance below it.
// sun is the irradiance, 0 to 1 of the data sheet's. ok is false where no curve passes the figures.
func NewCell(voc, isc, vmp, imp, sun float64, series, parallel int) (*Cell, bool) {
	if !(voc > vmp && isc > imp && vmp > 0 && imp > 0 && sun >= 0) {
		return nil, false
	}
	knee := math.Log(1 - imp/isc)
	a := (2*vmp - voc) / (imp/(isc-imp) + knee) // the power's slope is zero at (vmp, imp)
	rs := (a*knee + voc - vmp) / imp
	if !(a > 0) || rs < 0 {
		a, rs = (vmp-voc)/knee, 0
	}
	ns, np := float64(series), float64(parallel)
	none := math.Exp(-voc / a)
	return &Cell{light: isc * sun * np, diode: isc * np / (1 - none), open: voc * ns, a: a * ns, series: rs * ns / np, none: none}, true
}

// steepest is where the exponential is followed by its tangent, so that no voltage overflows it: far
// beyond the open-circuit voltage.
const steepest = 40

func exponential(x float64) (y, slope float64) {
	if x > steepest {
		top := math.Exp(steepest)
		return top * (1 + x - steepest), top
	}
	y = math.Exp(x)
	return y, y
}

// through is the current in the diode at its voltage, and its slope.
func (c *Cell) through(d float64) (amps, slope float64) {
	y, dy := exponential((d - c.open) / c.a)
	return c.diode * (y - c.none), c.diode * dy / c.a
}

// Amps is the current out of the array at a voltage, and its slope.
func (c *Cell) Amps(u float64) (amps, slope float64) {
	d := u
	if c.series > 0 {
		d = c.diodeVolts(u)
	}
	i, g := c.through(d)
	return c.light - i, -g / (1 + g*c.series)
}

// diodeVolts solves d = u + Rs I(d) from above, where Newton's steps only go down.
func (c *Cell) diodeVolts(u float64) float64 {
	d := u + c.series*(c.light+c.diode*c.none)
	for range 100 {
		i, g := c.through(d)
		step := (d - u - c.series*(c.light-i)) / (1 + c.series*g)
		d -= step
		if math.Abs(step) <= 1e-15*(1+math.Abs(d)) {
			break
		}
	}
	return d
}

// OpenVolts is the voltage at which the array gives nothing.
func (c *Cell) OpenVolts() float64 {
	if c.light <= 0 {
		return 0
	}
	return max(0, c.open+c.a*math.Log(c.light/c.diode+c.none))
}
