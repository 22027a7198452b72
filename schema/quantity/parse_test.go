package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParse(t *testing.T) {
	// Factors are those of the International System; foot 0.3048 m, inch 0.0254 m and yard 0.9144 m
	// exactly (international yard and pound agreement, 1959, from memory).
	tests := []struct {
		text string
		want Quantity
	}{
		{"10 A", Quantity{10, Current, 0}},
		{"10A", Quantity{10, Current, 0}},
		{" 10\tA ", Quantity{10, Current, 0}},
		{"10\u00a0A", Quantity{10, Current, 0}},
		{"10\u202fA", Quantity{10, Current, 0}},
		{"500 mA", Quantity{0.5, Current, 0}},
		{"10 kA", Quantity{10000, Current, 0}},
		{"12.8 V", Quantity{12.8, Voltage, 0}},
		{"200 mV", Quantity{0.2, Voltage, 0}},
		{"1 kV", Quantity{1000, Voltage, 0}},
		{"12 V ac", Quantity{12, Voltage, AC}},
		{"58 V dc", Quantity{58, Voltage, DC}},
		{"58 V  DC", Quantity{58, Voltage, DC}},
		{"6 mohm", Quantity{0.006, Resistance, 0}},
		{"6 mΩ", Quantity{0.006, Resistance, 0}},
		{"4 \u2126", Quantity{4, Resistance, 0}},
		{"4 ohm", Quantity{4, Resistance, 0}},
		{"1 kohm", Quantity{1000, Resistance, 0}},
		{"60 W", Quantity{60, Power, 0}},
		{"2 kW", Quantity{2000, Power, 0}},
		{"5 mW", Quantity{0.005, Power, 0}},
		{"100 Ah", Quantity{100, Charge, 0}},
		{"800 mAh", Quantity{0.8, Charge, 0}},
		{"1200 Wh", Quantity{1200, Energy, 0}},
		{"1.2 kWh", Quantity{1200, Energy, 0}},
		{"2.5 m", Quantity{2.5, Length, 0}},
		{"25 cm", Quantity{0.25, Length, 0}},
		{"178 mm", Quantity{0.178, Length, 0}},
		{"12 ft", Quantity{3.6576, Length, 0}},
		{"7 in", Quantity{0.1778, Length, 0}},
		{"2 yd", Quantity{1.8288, Length, 0}},
		{"40 C", Quantity{40, Temperature, 0}},
		{"-20 C", Quantity{-20, Temperature, 0}},
		{"105 °C", Quantity{105, Temperature, 0}},
		{"221 F", Quantity{105, Temperature, 0}},
		{"32 F", Quantity{0, Temperature, 0}},
		{"0.5 s", Quantity{0.5, Duration, 0}},
		{"20 ms", Quantity{0.02, Duration, 0}},
		{"10 min", Quantity{600, Duration, 0}},
		{"3 h", Quantity{10800, Duration, 0}},
		{"2 d", Quantity{172800, Duration, 0}},
		{"90 %", Quantity{0.9, Ratio, 0}},
		{"90%", Quantity{0.9, Ratio, 0}},
		{"0.9", Quantity{0.9, Ratio, 0}},
		{"-0.29 %/C", Quantity{-0.0029, Coefficient, 0}},
		{"-0.29 %/K", Quantity{-0.0029, Coefficient, 0}},
		{"-0.29 %/°C", Quantity{-0.0029, Coefficient, 0}},
		{"0.004 1/C", Quantity{0.004, Coefficient, 0}},
		{"-60 mV/C", Quantity{-0.06, VoltageCoefficient, 0}},
		{"-0.06 V/C", Quantity{-0.06, VoltageCoefficient, 0}},
		{"0 A", Quantity{0, Current, 0}},
		{"+5 A", Quantity{5, Current, 0}},
		{".5 A", Quantity{0.5, Current, 0}},
		{"5. A", Quantity{5, Current, 0}},
		{"1.5e3 A", Quantity{1500, Current, 0}},
		{"1e-3 A", Quantity{0.001, Current, 0}},
	}
	for _, test := range tests {
		q, err := Parse(test.text)
		if err != nil {
			t.Errorf("Parse(%q): %v", test.text, err)
			continue
		}
		if math.Abs(q.Value-test.want.Value) > 1e-12*math.Abs(test.want.Value)+1e-12 || q.Dim != test.want.Dim || q.Kind != test.want.Kind {
			t.Errorf("Parse(%q) = %+v, want %+v", test.text, q, test.want)
		}
	}
}

func TestParseErrors(t *testing.T) {
	tests := []struct {
		text string
		dims []Dimension
		want string // part of the message
		near string
	}{
		{"", nil, "the text is empty", ""},
		{"  ", nil, "the text is empty", ""},
		{"A", nil, "does not begin with a number", ""},
		{"10", []Dimension{Current}, `"10" has no unit: a current is wanted (units that fit: A, mA, kA)`, ""},
		{"10", []Dimension{Current, Power}, "a current or a power is wanted", ""},
		{"10 amps", []Dimension{Current}, `"amps" is not a unit`, "A"},
		{"10 a", nil, `"a" is not a unit`, "A"},
		{"10 Volts", nil, `"Volts" is not a unit`, "V"},
		{"12 Vdc", nil, `"Vdc" is not a unit`, "V dc"},
		{"10 KWH", nil, `"KWH" is not a unit`, "kWh"},
		{"3 hours", nil, `"hours" is not a unit`, "h"},
		{"6 feet", nil, `"feet" is not a unit`, "ft"},
		{"6'", nil, `"'" is not a unit`, "ft"},
		{"6\"", nil, `is not a unit`, "in"},
		{"6 Mohm", nil, `"Mohm" is not a unit`, "mohm"},
		{"10 zorkmids", nil, `"zorkmids" is not a unit`, ""},
		{"12 V", []Dimension{Current}, `"12 V" is a voltage: a current is wanted (units that fit: A, mA, kA)`, ""},
		{"5 mm", []Dimension{Current}, `is a length: a current is wanted`, ""},
		{"5 A ac", nil, "only a voltage is marked ac or dc", ""},
		{"12 ac", nil, "has no unit", "V ac"},
		{"1,5 A", nil, "write a decimal point", ""},
		{"1,000 A", nil, "no separators for thousands", ""},
		{"1'000 A", nil, "no separators for thousands", ""},
		{"1 000 A", nil, "write the number without spaces", ""},
		{"1_000 A", nil, `"_000 A" is not a unit`, ""},
		{"1/2 in", nil, "write the fraction as a decimal number", ""},
		{"1.2.3 A", nil, "does not begin with one number", ""},
		{"--5 A", nil, "does not begin with a number", ""},
		{"5-6 A", nil, "does not begin with one number", ""},
		{"0x10 A", nil, "is not a unit", ""},
		{"NaN A", nil, "does not begin with a number", ""},
		{"Inf A", nil, "does not begin with a number", ""},
		{"-inf", nil, "does not begin with a number", ""},
		{"1e400 A", nil, "is not a number that can be used", ""},
		{"1e99 A", nil, "out of any range", ""},
		{"1e-99 A", nil, "out of any range", ""},
		{"5e A", nil, `"e A" is not a unit`, ""},
		{strings.Repeat("9", 1000) + " A", nil, "is not a number that can be used", ""},
		{"-300 C", nil, "below absolute zero", ""},
		{"-500 F", nil, "below absolute zero", ""},
		{"10 A A", nil, `"A A" is not a unit`, ""},
		{"10 \x00A", nil, "is not a unit", ""},
	}
	for _, test := range tests {
		_, err := Parse(test.text, test.dims...)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("Parse(%q) gives %v, want an *Error", test.text, err)
			continue
		}
		if !strings.Contains(err.Error(), test.want) || e.Near != test.near || e.Text != test.text {
			t.Errorf("Parse(%q): %q near %q, want %q near %q", test.text, err, e.Near, test.want, test.near)
		}
	}
}

func TestEveryUnitParses(t *testing.T) {
	for d := Current; d <= VoltageCoefficient; d++ {
		if d.Symbol() == "" || Of(d.Symbol()) != d || strings.HasPrefix(d.String(), "nothing") {
			t.Errorf("dimension %d: symbol %q, name %q", d, d.Symbol(), d)
		}
		for _, u := range d.Units() {
			q, err := Parse("7 "+u, d)
			if err != nil || q.Dim != d {
				t.Errorf("Parse(%q) = %+v, %v", "7 "+u, q, err)
			}
		}
	}
}

// What is printed reads back as the value, within the printed precision: half a unit of the third
// significant digit.
func TestPrintThenParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Dimension(rapid.IntRange(int(Current), int(VoltageCoefficient)).Draw(t, "dimension"))
		v := rapid.Float64Range(0.1, 1).Draw(t, "mantissa") * math.Pow(10, float64(rapid.IntRange(-5, 6).Draw(t, "exponent")))
		if rapid.Bool().Draw(t, "negative") && d != Temperature {
			v = -v
		}
		q := Quantity{Value: v, Dim: d}
		if d == Voltage {
			q.Kind = Kind(rapid.IntRange(0, 2).Draw(t, "kind"))
		}
		text := ungroup(q.String())
		back, err := Parse(text, d)
		if err != nil {
			t.Fatalf("%v prints as %q: %v", v, text, err)
		}
		if math.Abs(back.Value-v) > 0.005*math.Abs(v) || back.Kind != q.Kind {
			t.Fatalf("%v prints as %q and reads as %v", v, text, back.Value)
		}
		// 119.6 min prints as 120 min, which reads and prints as 2 h: hours are no power of ten.
		if again := back.String(); ungroup(again) != text && d != Duration {
			t.Fatalf("%q reads and prints as %q", text, again)
		}
	})
}

// ungroup takes out the spaces that set off thousands.
func ungroup(s string) string {
	b := []byte{}
	for i := range len(s) {
		if s[i] == ' ' && i > 0 && i+1 < len(s) && digit(s[i-1]) && digit(s[i+1]) {
			continue
		}
		b = append(b, s[i])
	}
	return string(b)
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

func FuzzParse(f *testing.F) {
	for _, s := range []string{"10 A", "12 V ac", "-0.29 %/C", "2/0 AWG", "6 mm2", "250 kcmil", "1e99 V", "0.9", "221 F", "1,5 A", "6 mΩ", "\xff", "1/2 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if q, err := Parse(s); err == nil {
			if math.IsNaN(q.Value) || math.IsInf(q.Value, 0) || math.Abs(q.Value) > largest || q.Dim == 0 {
				t.Errorf("Parse(%q) = %+v", s, q)
			}
			usual := q.Value == 0 || math.Abs(q.Value) > 1e-9 && math.Abs(q.Value) < 1e9 // not at the edges of what can be written
			if back, err := Parse(ungroup(q.String()), q.Dim); usual && (err != nil || math.Abs(back.Value-q.Value) > 0.0051*math.Abs(q.Value)) {
				t.Errorf("Parse(%q) = %+v prints as %q: %+v, %v", s, q, q, back, err)
			}
		}
		if size, err := ParseSize(s); err == nil {
			if again, err := ParseSize(size.Name); err != nil || again != size || size.Area <= 0 {
				t.Errorf("ParseSize(%q) = %+v, read again %+v, %v", s, size, again, err)
			}
		}
	})
}
