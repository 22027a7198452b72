package solve

import "math"

// Cell is the single-diode model of a solar array: I = IL - I0 (exp((U + I Rs) / a) - 1).
type Cell struct {
	light, dark float64 // A
	a           float64 // V
	series      float64 // ohm
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
	return &Cell{light: isc * sun * np, dark: isc * np / math.Expm1(voc/a), a: a * ns, series: rs * ns / np}, true
}

// steepest is where the exponential is followed by its tangent, so that no voltage overflows it.
const steepest = 60

func exponential(x float64) (y, slope float64) {
	if x > steepest {
		top := math.Exp(steepest)
		return top * (1 + x - steepest), top
	}
	y = math.Exp(x)
	return y, y
}

// Amps is the current out of the array at a voltage, and its slope.
func (c *Cell) Amps(u float64) (amps, slope float64) {
	d := u // the diode's voltage; the function below falls and is concave in it
	if c.series > 0 {
		d = c.diodeVolts(u)
	}
	y, dy := exponential(d / c.a)
	g := c.dark * dy / c.a
	return c.light - c.dark*(y-1), -g / (1 + g*c.series)
}

// diodeVolts solves d = u + Rs I(d) from above, where Newton's steps only go down.
func (c *Cell) diodeVolts(u float64) float64 {
	d := u + c.series*c.light + c.series*c.dark
	for range 100 {
		y, dy := exponential(d / c.a)
		f := d - u - c.series*(c.light-c.dark*(y-1))
		step := f / (1 + c.series*c.dark*dy/c.a)
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
	return c.a * math.Log1p(c.light/c.dark)
}
