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
		r := run(t, b.String(), "overcurrent/undersize-device")
		if len(r.Verdicts["overcurrent/undersize-device"]) != 1 {
			t.Errorf("%d batteries: %d answers", n, len(r.Verdicts["overcurrent/undersize-device"]))
		}
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

// Eight selectors in a row have more states than are listed; whether an alarm goes dark in one is sought all the same.
func TestAlarmAmongTooManyStates(t *testing.T) {
	for feed, found := range map[string]lint.Outcome{"bus.top": lint.Holds, "switch.s3.y": lint.Violated, "switch.own.b": lint.Violated} {
		var b strings.Builder
		b.WriteString("system \"gadwall\" {}\nbus \"top\" {}\nbus \"end\" {}\n")
		for i, at := range []string{"top", "end"} {
			fmt.Fprintf(&b, "source \"b%d\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n}\nconductor \"b%[1]d\" {\n  from = source.b%[1]d\n  to = bus.%s\n}\n", i, at)
		}
		from := "bus.top"
		for i := range 8 {
			fmt.Fprintf(&b, `
switch "s%[1]d" {
  terminals = ["x", "y", "z"]
  position "off" {}
  position "a" {
    joins = [["x", "z"]]
  }
  position "b" {
    joins = [["x", "y"]]
  }
}
conductor "w%[1]d" {
  from = %[2]s
  to = switch.s%[1]d.x
}
load "l%[1]d" {
  draw = "1 A"
}
conductor "l%[1]d" {
  from = switch.s%[1]d.z
  to = load.l%[1]d
}
`, i, from)
			from = fmt.Sprintf("switch.s%d.y", i)
		}
		fmt.Fprintf(&b, `
conductor "last" {
  from = %s
  to = bus.end
}
conductor "alarm" {
  from = %s
  to = load.alarm
}
load "alarm" {
  kind = "alarm"
  critical = "life-safety"
  own_battery = false
  draw = "0.1 A"
`, from, feed)
		if feed == "switch.own.b" { // that somebody may switch it off by its own control is no finding
			b.WriteString("  control = switch.own\n}\nswitch \"own\" {\n  terminals = [\"a\", \"b\"]\n  position \"off\" {}\n  position \"on\" {\n    joins = [[\"a\", \"b\"]]\n  }\n}\nconductor \"own\" {\n  from = switch.s3.y\n  to = switch.own.a\n")
		}
		b.WriteString("}\n")
		r := run(t, b.String(), "life-safety/alarm-can-be-switched-off")
		if v := r.Verdicts["life-safety/alarm-can-be-switched-off"]; len(v) != 1 || v[0].Outcome != found || r.Summary.States.Complete {
			t.Errorf("fed from %s, complete %v: %+v", feed, r.Summary.States.Complete, v)
		}
	}
}

// run asks one rule of a plan.
func run(t *testing.T, plan, rule string) *check.Report {
	t.Helper()
	reader, err := (&files.Reader{}).Instead("gadwall.wiring.hcl", []byte(plan))
	if err != nil {
		t.Fatal(err)
	}
	p, diags, _ := reader.Load("gadwall.wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	return check.Run(p, slices.DeleteFunc(All(), func(r *lint.Rule) bool { return r.ID != rule }), check.Options{})
}
