package quantity

import (
	"fmt"
	"strings"
)

// Error says why a text is not the quantity or size that was wanted.
type Error struct {
	Text string   // the whole text
	Why  string   // what is wrong, as a clause: `"10" has no unit`
	Near string   // the unit that was probably meant, "" where none is near
	Fits []string // the units that would fit
}

func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Why)
	if e.Near != "" {
		fmt.Fprintf(&b, "; did you mean %q?", e.Near)
	}
	if len(e.Fits) > 0 {
		fmt.Fprintf(&b, " (units that fit: %s)", strings.Join(e.Fits, ", "))
	}
	return b.String()
}

// clip shortens a text from a plan for a message.
func clip(s string) string {
	r := []rune(s)
	if len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return s
}

// spellings are words that people write for a unit.
var spellings = map[string]string{
	"a": "A", "amp": "A", "ampere": "A", "v": "V", "volt": "V", "vdc": "V dc", "vac": "V ac",
	"r": "ohm", "milliohm": "mohm", "w": "W", "watt": "W", "va": "W", "kw": "kW",
	"ah": "Ah", "amp-hour": "Ah", "amphour": "Ah", "wh": "Wh", "kwh": "kWh",
	"meter": "m", "metre": "m", "foot": "ft", "feet": "ft", "'": "ft", "inch": "in", "inche": "in",
	"\"": "in", "yard": "yd", "c": "C", "degc": "C", "celsius": "C", "f": "F", "degf": "F", "fahrenheit": "F",
	"sec": "s", "second": "s", "minute": "min", "hr": "h", "hour": "h", "day": "d",
	"percent": "%", "pct": "%", "mcm": "kcmil", "cmil": "kcmil", "awg": "AWG", "ga": "AWG", "gauge": "AWG",
	"sqmm": "mm2", "mm^2": "mm2", "qmm": "mm2",
}

// near guesses the unit that was meant by one that does not exist.
func near(symbol string) string {
	s := strings.ToLower(symbol)
	if u, ok := spellings[s]; ok {
		return u
	}
	if u, ok := spellings[strings.TrimSuffix(s, "s")]; ok {
		return u
	}
	for d := Current; d <= VoltageCoefficient; d++ {
		for _, u := range dimensions[d].units {
			if strings.EqualFold(u.symbol, symbol) {
				return u.symbol
			}
		}
	}
	return ""
}

func fits(dims []Dimension) []string {
	var out []string
	for _, d := range dims {
		out = append(out, d.Units()...)
	}
	return out
}

func wanted(dims []Dimension) string {
	var names []string
	for _, d := range dims {
		names = append(names, d.String())
	}
	return strings.Join(names, " or ")
}
