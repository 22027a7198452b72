package quantity

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Circular mil in mm2: a circle of one thousandth of an inch, pi/4 * (0.0254 mm)^2.
const circularMil = math.Pi / 4 * 0.0254 * 0.0254

// Thinnest and thickest gauges: 40 AWG, and 4/0 AWG, whose gauge number is -3.
const (
	thinnest = 40
	thickest = -3
)

var sizeUnits = []string{"AWG", "kcmil", "mm2"}

// ParseSize reads a conductor size: "10 AWG", "2/0 AWG", "250 kcmil" or "6 mm2". Errors are of
// type *Error.
func ParseSize(text string) (Size, error) {
	s := strings.TrimFunc(text, blank)
	i := strings.IndexFunc(s, func(r rune) bool { return r != '/' && r != '.' && (r < '0' || r > '9') })
	if i < 0 {
		return sizeError(text, "", "%q has no unit: a conductor size is wanted", clip(text))
	}
	number, symbol := s[:i], strings.TrimFunc(s[i:], blank)
	if number == "" || len(number) > 20 {
		return sizeError(text, "", "%q does not begin with a number: a conductor size is wanted", clip(text))
	}
	switch strings.ToLower(symbol) {
	case "awg":
		return parseGauge(text, number)
	case "kcmil":
		return parseArea(text, number, KCMIL, 1, 2500)
	case "mm2", "mm²":
		return parseArea(text, number, Metric, 0.01, 1000)
	}
	meant := near(symbol)
	if symbol == "mm" {
		meant = "mm2"
	}
	if !slices.Contains(sizeUnits, meant) {
		meant = ""
	}
	return sizeError(text, meant, "%q is not a unit of conductor size", clip(symbol))
}

func sizeError(text, near, format string, args ...any) (Size, error) {
	return Size{}, &Error{Text: text, Why: fmt.Sprintf(format, args...), Near: near, Fits: sizeUnits}
}

func parseGauge(text, number string) (Size, error) {
	if aught, ok := strings.CutSuffix(number, "/0"); ok {
		if len(aught) == 1 && aught[0] >= '1' && aught[0] <= '4' {
			return Gauge(1 - int(aught[0]-'0')), nil
		}
		return sizeError(text, "4/0 AWG", "%q is not a gauge: the largest is 4/0 AWG", clip(text))
	}
	if len(number) > 1 && strings.Trim(number, "0") == "" {
		return sizeError(text, fmt.Sprintf("%d/0 AWG", len(number)), "%q is written with its number of zeros", clip(text))
	}
	n, err := strconv.Atoi(number)
	if err != nil {
		return sizeError(text, "", "%q is not a gauge: a whole number, or 1/0 to 4/0", clip(text))
	}
	if n > thinnest {
		return sizeError(text, "", "%q is not a gauge: the thinnest is %d AWG", clip(text), thinnest)
	}
	return Gauge(n), nil
}

func parseArea(text, number string, in System, least, most float64) (Size, error) {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || v < least || v > most {
		return sizeError(text, "", "%q is not a conductor size", clip(text))
	}
	plain := strconv.FormatFloat(v, 'f', -1, 64)
	if in == KCMIL {
		return Size{Name: plain + " kcmil", Area: v * 1000 * circularMil, System: KCMIL}, nil
	}
	return Size{Name: plain + " mm2", Area: v, System: Metric}, nil
}

// Gauge is the size with an AWG number, 40 to 0 for 1/0 and on to -3 for 4/0; the zero Size
// beyond. Area by ASTM B258: d = 0.127 mm * 92^((36-n)/39).
func Gauge(n int) Size {
	if n > thinnest || n < thickest {
		return Size{}
	}
	d := 0.127 * math.Pow(92, float64(36-n)/39)
	name := strconv.Itoa(n)
	if n < 1 {
		name = strconv.Itoa(1-n) + "/0"
	}
	return Size{Name: name + " AWG", Area: math.Pi / 4 * d * d, AWG: n, System: AWG}
}

// String is the size as the trade writes it.
func (s Size) String() string { return s.Name }
