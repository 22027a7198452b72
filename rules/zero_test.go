package rules

import (
	"regexp"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/schema"
)

const unknownPlan = `
system "unknown" {
  practice = "us-rv"
}

source "bat" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "n" {
  from = source.bat
  to   = switch.main.a
  size = "10 AWG"
}

switch "main" {
  terminals = ["a", "b"]
}

conductor "on" {
  from = switch.main.b
  to   = bus.panel
}

bus "panel" {
}

fuse "lamp" {
  kind   = "blade"
  rating = "10 A"
}

conductor "tap" {
  from   = bus.panel
  to     = fuse.lamp.line
  size   = "14 AWG"
  length = "2 m"
}

conductor "lamp" {
  from   = fuse.lamp.load
  to     = load.lamp
  size   = "14 AWG"
  length = "2 m"
}

load "lamp" {
}

switch "rated" {
  terminals = ["a", "b"]
  rating    = "5 A"
}

conductor "rated" {
  from = bus.panel
  to   = switch.rated.a
  size = "14 AWG"
}

conductor "fan" {
  from = switch.rated.b
  to   = load.fan
  size = "14 AWG"
}

load "fan" {
}

switch "spare" {
  terminals = ["a", "b"]
}

source "sun" {
  kind = "solar"
}

converter "tracker" {
  kind = "mppt"
  input {
    voltage_max = "100 V"
  }
}

switch "roof" {
  terminals = ["a", "b"]
}

conductor "roof" {
  from = source.sun
  to   = switch.roof.a
  size = "10 AWG"
}

conductor "down" {
  from = switch.roof.b
  to   = converter.tracker.in
  size = "10 AWG"
}

conductor "charge" {
  from = converter.tracker.out
  to   = bus.panel
  size = "10 AWG"
}
`

// What a plan leaves out is said to be missing: it is no zero, neither in a sentence nor in a
// derivation. A switch that nothing is wired to carries nothing, and that is known.
func TestUnknownIsNoZero(t *testing.T) {
	plan, diags := schema.Decode("t.wiring.hcl", []byte(unknownPlan), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	zero := regexp.MustCompile(`(^|\s)-?0 (A|V|m)\b`)
	r := check.Run(plan, All(), check.Options{})
	seen := 0
	for rule, answers := range r.Verdicts {
		family, _, _ := strings.Cut(rule, "/")
		for _, v := range answers {
			addr := v.Subject.Header().Addr
			if zero.MatchString(v.Message) {
				t.Errorf("%s of %s: %s", rule, addr, v.Message)
			}
			if rule == "switching/contact-rating" && addr == "switch.spare" && v.Outcome != lint.Holds {
				t.Errorf("nothing is wired to %s: %s", addr, v.Message)
			}
			if v.Outcome != lint.NotProven {
				continue
			}
			seen++
			for _, n := range derive.Steps(v.Numbers...) {
				if n.Kind == derive.Formula && n.Value == 0 && strings.Contains("switching conductor overcurrent solar", family) {
					t.Errorf("%s of %s: %s is 0 %s", rule, addr, n.Quantity, n.Unit)
				}
			}
		}
	}
	if seen < 10 {
		t.Errorf("%d answers are not proven", seen)
	}
}
