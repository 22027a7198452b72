package lifesafety

import (
	"fmt"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

const trailer = `
system "t" {
}
source "box" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "%g Ah"
  resistance = "%g mohm"
}
switch "pin" {
  kind      = "breakaway"
  terminals = ["a", "b"]
}
conductor "feed" {
  from   = source.box
  to     = switch.pin.a
  size   = "10 AWG"
  length = "%g m"
}
conductor "brakes" {
  from   = switch.pin.b
  to     = load.brakes
  size   = "10 AWG"
  length = "1 m"
}
load "brakes" {
  kind = "brake"
  draw = "%g A"
}
`

func outcomes(t *testing.T, capacity, mohm, metres, amps float64) map[string]lint.Outcome {
	t.Helper()
	plan, diags := schema.Decode("t.wiring.hcl", []byte(fmt.Sprintf(trailer, capacity, mohm, metres, amps)), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, diags := network.Build(plan)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	out := map[string]lint.Outcome{}
	for _, v := range looseTrailers(lint.NewPass(n, explore.New(n, 0), lint.Guesses{}, time.Time{})) {
		out[v.Cause] = v.Outcome
	}
	return out
}

// Fifteen minutes are 49 CFR 393.43(d), read as quoted; four magnets of 3 to 4 A draw 12 to 16 A (an
// article on brake currents). 16 A for 15 min are 4 Ah; the factor of two on them is common practice.
func TestEnergy(t *testing.T) {
	for _, x := range []struct {
		capacity, amps float64
		want           lint.Outcome
	}{{8, 16, lint.Holds}, {7.9, 16, lint.Violated}, {6, 12, lint.Holds}, {4, 16, lint.Violated}} {
		if got := outcomes(t, x.capacity, 1, 1, x.amps)["energy"]; got != x.want {
			t.Errorf("%g Ah for %g A: %v, want %v", x.capacity, x.amps, got, x.want)
		}
	}
}

// The limits of 11.5 V and 10.5 V are common practice. A full lead-acid battery rests at 12.8 V (from
// memory), so 1.3 V may be lost at 16 A: 81 mohm in all. 10 AWG has 3.28 mohm/m at 20 C (NFPA 70
// Chapter 9 Table 8 stranding included: 3.34), 3.6 at 40 C.
func TestVolts(t *testing.T) {
	for _, x := range []struct {
		mohm, metres float64
		want         lint.Outcome
	}{{20, 4, lint.Holds}, {20, 8, lint.Violated}, {65, 1, lint.Violated}, {60, 1, lint.Holds}} {
		if got := outcomes(t, 100, x.mohm, x.metres, 16)["volts"]; got != x.want {
			t.Errorf("%g mohm and %g m: %v, want %v", x.mohm, x.metres, got, x.want)
		}
	}
}
