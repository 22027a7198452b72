package quantity

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Largest and smallest magnitudes that a plan may write, in SI. Anything beyond is a slip or an attack.
const (
	largest  = 1e12
	smallest = 1e-12
	absolute = -273.15 // degrees C

	maxDigits = 400 // of a number; the quotient of an expression has about 160
)

// Parse reads a number with a unit, such as "10 A", "6 mohm", "-0.29 %/C" or "12 V ac". With dims
// only these dimensions fit; without, all do. A bare number is a ratio. Errors are of type *Error.
func Parse(text string, dims ...Dimension) (Quantity, error) {
	fail := func(near, format string, args ...any) (Quantity, error) {
		return Quantity{}, &Error{Text: text, Why: fmt.Sprintf(format, args...), Near: near, Fits: fits(dims)}
	}
	number, rest, why := split(text)
	if why != "" {
		return fail("", "%s", why)
	}
	symbol, kind := cutKind(rest)
	if symbol == "" && kind != Unmarked {
		return fail("V "+kind.String(), "%q has no unit", clip(text))
	}
	d, u := Ratio, unit{factor: 1}
	if symbol != "" {
		var ok bool
		if d, u, ok = find(symbol); !ok {
			return fail(near(symbol), "%q is not a unit", clip(rest))
		}
	} else if len(dims) > 0 && !slices.Contains(dims, Ratio) {
		return fail("", "%q has no unit: %s is wanted", clip(text), wanted(dims))
	}
	if len(dims) > 0 && !slices.Contains(dims, d) {
		return fail("", "%q is %s: %s is wanted", clip(text), d, wanted(dims))
	}
	if kind != Unmarked && d != Voltage {
		return fail("", "%q is %s: only a voltage is marked ac or dc", clip(text), d)
	}
	q := Quantity{Value: number*u.factor + u.offset, Dim: d, Kind: kind}
	if size := math.Abs(q.Value); number != 0 && (math.Abs(number) > largest || size > largest || size < smallest && u.offset == 0) {
		return fail("", "%q is out of any range that a wiring plan can have", clip(text))
	}
	if d == Temperature && q.Value < absolute {
		return fail("", "%q is below absolute zero", clip(text))
	}
	return q, nil
}

// split parts a text into its number and what follows it.
func split(text string) (number float64, rest, why string) {
	s := strings.TrimFunc(text, blank)
	if s == "" {
		return 0, "", "the text is empty: a number with a unit is wanted"
	}
	n := numberLength(s)
	if n == 0 {
		return 0, "", fmt.Sprintf("%q does not begin with a number", clip(text))
	}
	rest = strings.TrimFunc(s[n:], blank)
	if why := trailing(text, s[n:], rest); why != "" {
		return 0, "", why
	}
	number, err := strconv.ParseFloat(s[:n], 64)
	if n > maxDigits || err != nil {
		return 0, "", fmt.Sprintf("%q is not a number that can be used", clip(s[:n]))
	}
	return number, rest, ""
}

// trailing recognizes numbers that go on where they ought to have ended.
func trailing(text, tail, rest string) string {
	if rest == "" {
		return ""
	}
	switch c := rest[0]; {
	case c == ',' || c == '\'' && len(rest) > 1:
		return fmt.Sprintf("%q: write a decimal point, and no separators for thousands", clip(text))
	case c >= '0' && c <= '9' && len(rest) < len(tail) && !strings.HasPrefix(rest, "1/"):
		return fmt.Sprintf("%q: write the number without spaces", clip(text))
	case c == '/' && len(rest) > 1 && rest[1] >= '0' && rest[1] <= '9':
		return fmt.Sprintf("%q: write the fraction as a decimal number", clip(text))
	case c == '.' || c == '+' || c == '-':
		return fmt.Sprintf("%q does not begin with one number", clip(text))
	}
	return ""
}

// numberLength is the length of the decimal number that s begins with, 0 where it does not.
// Hexadecimal, infinities and the like are no numbers here.
func numberLength(s string) int {
	i, digits := 0, 0
	run := func() {
		for i < len(s) && s[i] >= '0' && s[i] <= '9' {
			i, digits = i+1, digits+1
		}
	}
	if s[0] == '-' || s[0] == '+' {
		i++
	}
	run()
	if i < len(s) && s[i] == '.' {
		i++
		run()
	}
	if digits == 0 {
		return 0
	}
	return i + exponentLength(s[i:])
}

func exponentLength(s string) int {
	if s == "" || s[0] != 'e' && s[0] != 'E' {
		return 0
	}
	i := 1
	if i < len(s) && (s[i] == '-' || s[i] == '+') {
		i++
	}
	from := i
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	if i == from {
		return 0
	}
	return i
}

// blank tells spaces that may stand around a number and its unit, the narrow ones of web pages included.
func blank(r rune) bool {
	return r == ' ' || r == '\t' || r == '\u00a0' || r == '\u2009' || r == '\u202f'
}

// cutKind takes a trailing "ac" or "dc" off a unit.
func cutKind(rest string) (string, Kind) {
	i := strings.LastIndexFunc(rest, blank)
	word, before := rest, ""
	if i >= 0 {
		word, before = strings.TrimLeftFunc(rest[i:], blank), strings.TrimRightFunc(rest[:i], blank)
	}
	switch {
	case strings.EqualFold(word, "ac"):
		return before, AC
	case strings.EqualFold(word, "dc"):
		return before, DC
	}
	return rest, Unmarked
}

var spelled = strings.NewReplacer("Ω", "ohm", "\u2126", "ohm", "°", "", "/K", "/C")

// canonical spells a unit's symbol the way the table does.
func canonical(symbol string) string { return spelled.Replace(symbol) }

// String is the kind as it is written after a voltage: "ac", "dc" or nothing.
func (k Kind) String() string {
	return [...]string{Unmarked: "", DC: "dc", AC: "ac"}[k]
}
