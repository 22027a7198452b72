package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestParseSize(t *testing.T) {
	tests := []struct {
		text, name string
		area       float64
		awg        int
		system     System
	}{
		{"10 AWG", "10 AWG", 5.261, 10, AWG},
		{"10awg", "10 AWG", 5.261, 10, AWG},
		{"2/0 AWG", "2/0 AWG", 67.43, -1, AWG},
		{"0 AWG", "1/0 AWG", 53.48, 0, AWG},
		{"4/0 AWG", "4/0 AWG", 107.2, -3, AWG},
		{"6 mm2", "6 mm2", 6, 0, Metric},
		{"0.75 mm²", "0.75 mm2", 0.75, 0, Metric},
		{"2.50 mm2", "2.5 mm2", 2.5, 0, Metric},
		// 1 kcmil is 0.5067 mm2 (NIST Handbook 44, appendix C, from memory).
		{"250 kcmil", "250 kcmil", 126.7, 0, KCMIL},
	}
	for _, test := range tests {
		s, err := ParseSize(test.text)
		if err != nil || s.Name != test.name || s.AWG != test.awg || s.System != test.system || math.Abs(s.Area-test.area) > 0.0005*test.area {
			t.Errorf("ParseSize(%q) = %+v, %v", test.text, s, err)
		}
	}
}

func TestParseSizeErrors(t *testing.T) {
	tests := []struct{ text, want, near string }{
		{"10", "has no unit", ""},
		{"", "has no unit", ""},
		{"AWG", "does not begin with a number", ""},
		{"10 ga", `"ga" is not a unit of conductor size`, "AWG"},
		{"500 MCM", `"MCM" is not a unit of conductor size`, "kcmil"},
		{"10 m", `"m" is not a unit of conductor size`, ""},
		{"0000 AWG", "number of zeros", "4/0 AWG"},
		{"5/0 AWG", "the largest is 4/0 AWG", "4/0 AWG"},
		{"41 AWG", "the thinnest is 40 AWG", ""},
		{"10.5 AWG", "a whole number", ""},
		{"1/2 AWG", "a whole number", ""},
		{"-1 AWG", "does not begin with a number", ""},
		{"0 mm2", "is not a conductor size", ""},
		{"1/0 mm2", "is not a conductor size", ""},
		{"99999 kcmil", "is not a conductor size", ""},
		{strings.Repeat("1", 100) + " AWG", "does not begin with a number", ""},
	}
	for _, test := range tests {
		_, err := ParseSize(test.text)
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(err.Error(), test.want) || e.Near != test.near {
			t.Errorf("ParseSize(%q): %v, want %q near %q", test.text, err, test.want, test.near)
		}
	}
}

// NFPA 70 Chapter 9 Table 8, area in circular mils, as reproduced: the standard rounds what ASTM B258
// gives, to four figures. The same rows in mm2 are by 1 circular mil = pi/4 * (0.0254 mm)^2.
func TestGaugeAreas(t *testing.T) {
	for n, cmil := range map[int]float64{18: 1620, 16: 2580, 14: 4110, 12: 6530, 10: 10380, 8: 16510, 6: 26240, 4: 41740, 2: 66360, 1: 83690} {
		if got := Gauge(n).Area / circularMil; math.Abs(got-cmil) > 0.003*cmil {
			t.Errorf("%d AWG has %.0f circular mils, want %.0f", n, got, cmil)
		}
	}
	// ASTM B258: 36 AWG is 0.0050 in, 4/0 AWG 0.4600 in, exactly.
	for n, inch := range map[int]float64{36: 0.005, -3: 0.46} {
		if got := 2 * math.Sqrt(Gauge(n).Area/math.Pi) / 25.4; math.Abs(got-inch) > 1e-9 {
			t.Errorf("gauge %d has %.6f in, want %.4f", n, got, inch)
		}
	}
	if Gauge(41) != (Size{}) || Gauge(-4) != (Size{}) {
		t.Error("gauges beyond the scale are no sizes")
	}
}
