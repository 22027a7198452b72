package connector

import (
	"testing"

	"ferrule/lint"
	"ferrule/lint/derive"
)

// The limits by which a live contact is graded. 60 V DC as the limit of what may be touched in the dry, 240 VA
// as the limit of energy within reach: safety standards of electronic equipment (from memory). 5 A and
// 30 V: common practice.
func TestWordOfAContact(t *testing.T) {
	for _, c := range []struct {
		volts, amps float64
		stiff, ac   bool
		want        lint.Severity
	}{
		{volts: 12.8, stiff: true, want: lint.Warning},
		{volts: 60, stiff: true, want: lint.Warning},
		{volts: 60.1, stiff: true, want: lint.Danger},
		{volts: 60.1, amps: 0.1, want: lint.Danger},
		{volts: 6.4, stiff: true, want: 0},
		{volts: 12, amps: 19.9, want: lint.Notice},
		{volts: 12, amps: 20, want: lint.Warning},
		{volts: 30.1, amps: 4.9, want: lint.Notice},
		{volts: 30.1, amps: 5, want: lint.Warning},
		{volts: 30, amps: 5, want: lint.Notice},
		{volts: 11.9, amps: 100, want: 0},
		{volts: 24, ac: true, want: lint.Danger},
	} {
		x := touch{volts: derive.Number{Value: c.volts}, stiff: c.stiff, ac: c.ac, amps: []derive.Number{{Value: c.amps}}}
		if got := x.word(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
