package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema/files"
)

// A search that met its bound has not seen every state: what it did see proves nothing.
func TestUnfinishedSearchHoldsNothing(t *testing.T) {
	for rule, plan := range map[string]string{
		"ac/two-sources-joined":               "ac/testdata/two-sources-joined/near-interlock.wiring.hcl",
		"ac/live-inlet-pins":                  "ac/testdata/live-inlet-pins/near-interlock.wiring.hcl",
		"bonding/neutral-bond-count":          "bonding/testdata/neutral-bond-count/near-interlock.wiring.hcl",
		"life-safety/one-cutoff-takes-all":    "life-safety/testdata/one-cutoff-takes-all/near-interlock.wiring.hcl",
		"converter/constant-power-collapse":   "converter/testdata/constant-power-collapse/near.wiring.hcl",
		"converter/inrush":                    "converter/testdata/inrush/near.wiring.hcl",
		"load/outside-voltage-window":         "load/testdata/outside-voltage-window/near-starved.wiring.hcl",
		"solar/cold-voltage":                  "solar/testdata/cold-voltage/near.wiring.hcl",
		"backfeed/tie-carries-house-load":     "backfeed/testdata/tie-carries-house-load/near.wiring.hcl",
		"charging/alternator-overload":        "charging/testdata/alternator-overload/near.wiring.hcl",
		"overcurrent/second-source-unguarded": "overcurrent/testdata/second-source-unguarded/near.wiring.hcl",
	} {
		p, diags, _ := (&files.Reader{}).Load(plan)
		if len(diags) > 0 {
			t.Errorf("%s: %s", plan, diags)
			continue
		}
		r := check.Run(p, All(), check.Options{Bound: 1})
		answers := r.Verdicts[rule]
		if len(answers) == 0 || r.Summary.States.Complete {
			t.Errorf("%s: %d answers, complete %v", plan, len(answers), r.Summary.States.Complete)
		}
		for _, v := range answers {
			if v.Outcome == lint.Holds {
				t.Errorf("%s: %s holds of %s after one state", plan, rule, v.Subject.Header().Addr)
			}
		}
	}
}

// Twelve batteries with a disconnect each have more states than are solved for the lowest volts: what a constant
// power draws is not known then, and nothing may rest on a guess of it.
func TestMoreStatesThanAreSolved(t *testing.T) {
	for n, found := range map[int]lint.Outcome{4: lint.Violated, 12: lint.NotProven} {
		var b strings.Builder
		b.WriteString("system \"gadwall\" {}\nbus \"m\" {}\n")
		for i := range n {
			fmt.Fprintf(&b, `
source "b%[1]d" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}
switch "d%[1]d" {
  terminals = ["i", "o"]
  position "off" {}
  position "on" {
    joins = [["i", "o"]]
  }
}
conductor "c%[1]d" {
  from = source.b%[1]d
  to = switch.d%[1]d.i
  size = "8 AWG"
  length = "1 m"
}
conductor "o%[1]d" {
  from = switch.d%[1]d.o
  to = bus.m
  size = "8 AWG"
  length = "1 m"
}
`, i)
		}
		b.WriteString(`
fuse "x" {
  rating = "15 A"
  on = bus.m
}
conductor "w" {
  from = fuse.x.load
  to = load.l
  size = "14 AWG"
  length = "8 m"
}
load "l" {
  power = "140 W"
  behavior = "constant-power"
}
`)
		reader, err := (&files.Reader{}).Instead("gadwall.wiring.hcl", []byte(b.String()))
		if err != nil {
			t.Fatal(err)
		}
		p, diags, _ := reader.Load("gadwall.wiring.hcl")
		if len(diags) > 0 {
			t.Fatal(diags)
		}
		own := slices.DeleteFunc(All(), func(r *lint.Rule) bool { return r.ID != "overcurrent/undersize-device" })
		r := check.Run(p, own, check.Options{})
		for _, v := range r.Verdicts["overcurrent/undersize-device"] {
			if v.Subject.Header().Addr == "fuse.x" && v.Outcome != found {
				t.Errorf("%d batteries: %v: %s", n, v.Outcome, v.Message)
			}
		}
		if r.Summary.States.Complete != (found == lint.Violated) {
			t.Errorf("%d batteries: complete %v", n, r.Summary.States.Complete)
		}
	}
}
