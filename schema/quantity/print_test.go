package quantity

import (
	"math"
	"testing"
)

func TestFormat(t *testing.T) {
	tests := []struct {
		value float64
		dim   Dimension
		want  string
	}{
		{1423.7, Current, "1 420 A"},
		{1425, Current, "1 425 A"},
		{0.005, Current, "5 mA"},
		{0.3, Current, "0.3 A"},
		{9999.9, Current, "10 kA"},
		{10000, Current, "10 kA"},
		{-12.34567, Current, "-12.3 A"},
		{0, Current, "0 A"},
		{math.Copysign(0, -1), Current, "0 A"},
		{12.6, Voltage, "12.6 V"},
		{14.45, Voltage, "14.45 V"},
		{0.0123, Voltage, "12.3 mV"},
		{0.006, Resistance, "6 mohm"},
		{0.00053, Resistance, "0.53 mohm"},
		{0.9999, Resistance, "999.9 mohm"},
		{0.99996, Resistance, "1 ohm"},
		{1200, Power, "1 200 W"},
		{1234567, Power, "1 230 kW"},
		{100, Charge, "100 Ah"},
		{0.178, Length, "178 mm"},
		{2.1, Length, "2.1 m"},
		{40, Temperature, "40 C"},
		{-20.5, Temperature, "-20.5 C"},
		{0.46, Duration, "0.46 s"},
		{0.02, Duration, "20 ms"},
		{600, Duration, "10 min"},
		{6 * 3600, Duration, "6 h"},
		{3 * 86400, Duration, "3 d"},
		{0.00036, Ratio, "0.036 %"},
		{0.9, Ratio, "90 %"},
		{0, Ratio, "0 %"},
		{-0.0029, Coefficient, "-0.29 %/C"},
		{-0.06, VoltageCoefficient, "-60 mV/C"},
		{1234567.8, 0, "1 230 000"},
		{math.NaN(), Current, "unknown A"},
		{math.Inf(1), Current, "unlimited A"},
	}
	for _, test := range tests {
		if got := Format(test.value, test.dim); got != test.want {
			t.Errorf("Format(%v, %s) = %q, want %q", test.value, test.dim, got, test.want)
		}
	}
}

func TestString(t *testing.T) {
	if got := (Quantity{Value: 120, Dim: Voltage, Kind: AC}).String(); got != "120 V ac" {
		t.Errorf("got %q", got)
	}
	if got := Gauge(-1).String(); got != "2/0 AWG" {
		t.Errorf("got %q", got)
	}
}

func TestNumber(t *testing.T) {
	for value, want := range map[float64]string{0: "0", 0.0362: "0.0362", 1234: "1 234", 12345: "12 300", -1e6: "-1 000 000", 0.1 + 0.2: "0.3"} {
		if got := Number(value); got != want {
			t.Errorf("Number(%v) = %q, want %q", value, got, want)
		}
	}
}
