package quantity

import (
	"math"
	"strconv"
	"strings"
)

// scale prints values of at least from, in SI, in a unit.
type scale struct {
	from, factor float64
	unit         string
}

// scales are the units that reports print, smallest first. A kilo comes in at ten thousand only:
// the trade reads 1 420 A and 2 000 W.
var scales = [...][]scale{
	Current:     {{0, 1e-3, "mA"}, {0.1, 1, "A"}, {1e4, 1e3, "kA"}},
	Voltage:     {{0, 1e-3, "mV"}, {0.1, 1, "V"}, {1e4, 1e3, "kV"}},
	Resistance:  {{0, 1e-3, "mohm"}, {1, 1, "ohm"}, {1e4, 1e3, "kohm"}},
	Power:       {{0, 1e-3, "mW"}, {0.1, 1, "W"}, {1e4, 1e3, "kW"}},
	Charge:      {{0, 1e-3, "mAh"}, {0.1, 1, "Ah"}},
	Energy:      {{0, 1, "Wh"}, {1e4, 1e3, "kWh"}},
	Length:      {{0, 1e-3, "mm"}, {1, 1, "m"}},
	Temperature: {{0, 1, "C"}},
	Duration:    {{0, 1e-3, "ms"}, {0.1, 1, "s"}, {120, 60, "min"}, {7200, 3600, "h"}, {172800, 86400, "d"}},
	Ratio:       {{0, 1e-2, "%"}},
	Coefficient: {{0, 1e-2, "%/C"}},

	VoltageCoefficient: {{0, 1e-3, "mV/C"}, {1, 1, "V/C"}},
}

// String prints the quantity as a report writes it: "1 420 A", "6 mohm", "12 V ac".
func (q Quantity) String() string {
	s := Format(q.Value, q.Dim)
	if q.Kind != Unmarked {
		s += " " + q.Kind.String()
	}
	return s
}

// Format prints an SI value of a dimension with the prefix that fits. An invalid dimension prints
// the bare number.
func Format(value float64, dim Dimension) string {
	if dim == 0 || int(dim) >= len(scales) {
		return Number(value)
	}
	use := scales[dim][0]
	for _, s := range scales[dim] {
		if math.Abs(round(value)) >= s.from*(1-1e-9) { // rounded once to choose the unit, once to print
			use = s
		}
	}
	if value == 0 || math.IsNaN(value) || math.IsInf(value, 0) {
		use.unit = dim.Symbol()
		if dim >= Ratio {
			use.unit = scales[dim][0].unit
		}
	}
	return Number(value/use.factor) + " " + use.unit
}

// Number prints a number with three significant digits, a fourth where it is exact, and thousands
// set off by a space: "1 420", "12.6", "0.036".
func Number(value float64) string {
	switch {
	case math.IsNaN(value):
		return "unknown"
	case math.IsInf(value, 0):
		return "unlimited"
	}
	s := strconv.FormatFloat(round(value), 'f', -1, 64)
	if s == "-0" {
		s = "0"
	}
	whole, fraction, point := strings.Cut(s, ".")
	sign := ""
	if strings.HasPrefix(whole, "-") {
		sign, whole = "-", whole[1:]
	}
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + " " + whole[i:]
	}
	if point {
		fraction = "." + fraction
	}
	return sign + whole + fraction
}

// round keeps three significant digits, or four where these are the whole value.
func round(v float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	four := digits(v, 4)
	if math.Abs(four-v) <= 1e-12*math.Abs(v) {
		return four
	}
	return digits(v, 3)
}

func digits(v float64, n int) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', n-1, 64), 64)
	if err != nil {
		return v
	}
	return r
}
