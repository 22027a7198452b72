package lifesafety

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// A battery that cannot give the current leaves no volts at the magnets, and never fewer than none.
func TestNoNegativeVolts(t *testing.T) {
	for _, x := range []struct {
		mohm, amps float64
		says       string
	}{
		{600, 40, `even a full "box" cannot hold "brakes" up: at 40 A all its volts are lost`},
		{290, 40, `from a full "box", which cannot hold it up for fifteen minutes`},
		{100, 20, `after fifteen minutes; it needs 11.5 V and 10.5 V`},
	} {
		plan, diags := schema.Decode("t.wiring.hcl", []byte(fmt.Sprintf(trailer, 20.0, x.mohm, 1.0, x.amps)), nil)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		n, diags := network.Build(plan)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		asked := false
		for _, v := range looseTrailers(lint.NewPass(n, explore.New(n, 0), lint.Guesses{}, time.Time{})) {
			if v.Cause != "volts" {
				continue
			}
			asked = true
			if v.Outcome != lint.Violated || !strings.Contains(v.Message, x.says) || strings.Contains(v.Message, "-") {
				t.Errorf("%g mohm, %g A: %s", x.mohm, x.amps, v.Message)
			}
			for _, s := range derive.Steps(v.Numbers...) {
				if s.Value < 0 && s.Unit == "V" {
					t.Errorf("%g mohm, %g A: %s is %g V", x.mohm, x.amps, s.Quantity, s.Value)
				}
			}
		}
		if !asked {
			t.Errorf("%g mohm, %g A: nothing is said of the volts", x.mohm, x.amps)
		}
	}
}
