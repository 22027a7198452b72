package check

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
)

func waiver(rule, at, more string) string {
	return fmt.Sprintf("\nwaiver \"w\" {\n  rule = %q\n  at   = %s\n%s\n}\n", rule, at, more)
}

func TestWaivers(t *testing.T) {
	const good = "  reason = \"seen\"\n  until = \"2026-11-25\""
	for _, c := range []struct {
		name, waiver string
		answer       answer
		want         string
		matched      bool
	}{
		{"last day", waiver("x/a", "fuse.main", good), violated("fuse.main", lint.Danger), "danger x/a fuse.main waived", true},
		{"expired", waiver("x/a", "fuse.main", "  reason = \"seen\"\n  until = \"2026-11-24\""), violated("fuse.main", lint.Caution), "caution x/a fuse.main", true},
		{"danger without an end", waiver("x/a", "fuse.main", "  reason = \"seen\""), violated("fuse.main", lint.Danger), "danger x/a fuse.main", true},
		{"danger without a reason", waiver("x/a", "fuse.main", "  reason = \" \"\n  until = \"2027-01-01\""), violated("fuse.main", lint.Danger), "danger x/a fuse.main", true},
		{"warning needs neither", waiver("x/a", "fuse.main", ""), violated("fuse.main", lint.Warning), "warning x/a fuse.main waived", true},
		{"not proven", waiver("x/a", "fuse.main", ""), unproven("fuse.main", lint.Danger), "warning x/a fuse.main ? waived", true},
		{"another part", waiver("x/a", "fuse.spare", good), violated("fuse.main", lint.Warning), "warning x/a fuse.main", false},
		{"another rule", waiver("x/b", "fuse.main", good), violated("fuse.main", lint.Warning), "warning x/a fuse.main", false},
		{"a terminal of the part", waiver("x/a", "fuse.main.line", good), violated("fuse.main", lint.Warning), "warning x/a fuse.main waived", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			var seen map[string]bool
			review := fake("x/review")
			review.Run, review.Review = nil, func(_ *lint.Pass, ran *lint.Ran) []lint.Verdict { seen = ran.Waived; return nil }
			r := Run(decode(t, aboard+c.waiver), []*lint.Rule{fake("x/a", c.answer), review}, Options{Today: day25})
			expect(t, r, c.want)
			if seen["waiver.w"] != c.matched {
				t.Errorf("matched: %v", seen)
			}
		})
	}
}

func TestWaivedAndUnwaivedDoNotMix(t *testing.T) {
	plan := decode(t, aboard+waiver("x/big", "fuse.main", ""))
	rules := []*lint.Rule{
		folds(fake("x/big", violated("fuse.main", lint.Warning).group("g"), violated("fuse.spare", lint.Warning).group("g")), "x/small"),
		fake("x/small", violated("fuse.main", lint.Caution)),
	}
	r := Run(plan, rules, Options{Today: day25})
	expect(t, r, "warning x/big fuse.main waived", "warning x/big fuse.spare", "caution x/small fuse.main")
	if s := r.Summary; s.Waived != 1 || s.Warning != 1 || s.Caution != 1 {
		t.Errorf("summary %+v", s)
	}
}

func TestCounting(t *testing.T) {
	harm := fake("x/harm", unproven("fuse.main", lint.Danger, "fuse.main rating"))
	harm.Harm = true
	r := Run(decode(t, aboard), []*lint.Rule{
		fake("x/a", violated("conductor.feed", lint.Danger), holds("conductor.tail"), unproven("fuse.spare", lint.Caution), unproven("load.lamp", lint.Notice)), harm,
		fake("x/h", holds("fuse.main"), holds("fuse.spare")),
	}, Options{Today: day25})
	want := Summary{Danger: 1, Warning: 1, Notice: 2, NotProven: 3, Checks: 7, Holds: 3, States: r.Summary.States}
	if r.Summary != want {
		t.Errorf("got %+v, wanted %+v", r.Summary, want)
	}
	// Two positions of the switch, and the pack there or not.
	if s := r.Summary.States; s.Total != "4" || !s.Complete {
		t.Errorf("states %+v", s)
	}
	for i, f := range r.Findings {
		if f.Number != i+1 {
			t.Errorf("finding %d has number %d", i+1, f.Number)
		}
	}
}

func TestFingerprint(t *testing.T) {
	rule := fake("x/a", violated("fuse.main", lint.Warning).cause("one"), violated("fuse.main", lint.Warning).cause("two"),
		violated("fuse.spare", lint.Warning), violated("fuse.spare", lint.Warning))
	prints := func(src string) []string {
		var out []string
		for _, f := range Run(decode(t, src), []*lint.Rule{rule}, Options{Today: day25}).Findings {
			out = append(out, f.Fingerprint)
		}
		return out
	}
	first := prints(aboard)
	if moved := prints("# a line more\n" + strings.Replace(aboard, "30 A", "40 A", 1)); !reflect.DeepEqual(first, moved) {
		t.Errorf("%v became %v", first, moved)
	}
	seen := map[string]bool{}
	for _, p := range first {
		if seen[p] || len(p) != 16 {
			t.Errorf("fingerprints %v", first)
		}
		seen[p] = true
	}
}

func TestDefectsOfRulesAreFailures(t *testing.T) {
	panics := fake("x/panics")
	panics.Run = func(*lint.Pass) []lint.Verdict { panic("out of range") }
	review := fake("x/reviews")
	review.Run, review.Review = nil, func(*lint.Pass, *lint.Ran) []lint.Verdict { panic("nil map") }
	silent := violated("fuse.main", lint.Warning)
	silent.Message = " "
	r := Run(decode(t, aboard), []*lint.Rule{panics, review,
		fake("x/none", answer{at: "fuse.main"}),
		fake("x/nobody", violated("fuse.nowhere", lint.Danger)),
		fake("x/wordless", violated("fuse.main", 0)),
		fake("x/silent", silent),
		fake("x/sound", violated("fuse.main", lint.Danger)),
	}, Options{Today: day25})
	expect(t, r, "danger x/sound fuse.main")
	want := []string{
		"rule x/nobody gave an invalid verdict: it has no subject",
		"rule x/none gave an invalid verdict: fuse.main has no outcome",
		"rule x/panics failed: out of range",
		"rule x/silent gave an invalid verdict: fuse.main has no message",
		"rule x/wordless gave an invalid verdict: fuse.main has no signal word",
		"rule x/reviews failed: nil map",
	}
	if !reflect.DeepEqual(r.Failures, want) {
		t.Errorf("failures:\n%s", strings.Join(r.Failures, "\n"))
	}
	if r.Summary.Checks != 1 {
		t.Errorf("%d checks", r.Summary.Checks)
	}
}

// looker looks at every network of every zone.
func looker() *lint.Rule {
	r := fake("x/looks")
	r.Run = func(p *lint.Pass) []lint.Verdict {
		for _, z := range p.Net.Zones {
			p.Space.Views(z, explore.All())
		}
		return nil
	}
	return r
}

func TestIncompleteSearch(t *testing.T) {
	wide := aboard
	for i := range 8 {
		wide += fmt.Sprintf("\nswitch \"s%d\" {\n  terminals = [\"a\", \"b\"]\n  on = source.pack\n}\n", i)
	}
	if s := Run(decode(t, wide), []*lint.Rule{looker()}, Options{Today: day25}).Summary.States; !s.Complete || s.Examined == 0 {
		t.Errorf("without a bound: %+v", s)
	}
	if s := Run(decode(t, wide), []*lint.Rule{looker()}, Options{Today: day25, Bound: 8}).Summary.States; s.Complete {
		t.Errorf("eight of 2^10 states, and complete: %+v", s)
	}
}

func TestStop(t *testing.T) {
	asked := 0
	stop := func() bool { asked++; return asked > 1 }
	r := Run(decode(t, aboard), []*lint.Rule{fake("x/a", violated("fuse.main", lint.Danger)), fake("x/b", violated("fuse.main", lint.Danger))},
		Options{Today: day25, Stop: stop})
	if r.Summary.States.Complete || !strings.Contains(strings.Join(r.Failures, "\n"), "rule x/b was not asked") {
		t.Errorf("complete %v, failures %q", r.Summary.States.Complete, r.Failures)
	}
}

func TestAgain(t *testing.T) {
	hot := 60.0
	asks := fake("x/asks")
	asks.Run = func(p *lint.Pass) []lint.Verdict {
		v := lint.Verdict{Subject: p.Plan.Block("fuse.main"), Outcome: lint.Holds}
		if a := p.Circuit.Guesses.Ambient; a != nil && *a == hot {
			v.Outcome, v.Word, v.Message = lint.Violated, lint.Warning, "hot"
		}
		return []lint.Verdict{v}
	}
	review := fake("x/review")
	review.Run, review.Review = nil, func(_ *lint.Pass, ran *lint.Ran) []lint.Verdict {
		again := ran.Again(lint.Guesses{Ambient: &hot}, lint.Notice)["x/asks"]
		if len(again) != 1 || again[0].Outcome != lint.Violated {
			t.Errorf("again: %+v", again)
		}
		return ran.Verdicts["x/asks"]
	}
	r := Run(decode(t, aboard), []*lint.Rule{asks, review}, Options{Today: day25})
	if r.Summary.Checks != 2 || r.Summary.Holds != 2 {
		t.Errorf("what was asked again is counted: %+v", r.Summary)
	}
}

func TestAssumptions(t *testing.T) {
	low := derive.Assume("resistance", "Ri", 0.002, "ohm", "source.pack", "resistance", "low default")
	high := derive.Assume("resistance", "Ri", 0.01, "ohm", "source.pack", "resistance", "high default")
	a := holds("fuse.main")
	a.Numbers = []derive.Number{derive.Compute("fault", "I", 1, "A", "V / R", high), derive.Compute("fault", "I", 1, "A", "V / R", low, high)}
	r := Run(decode(t, aboard), []*lint.Rule{fake("x/a", a)}, Options{Today: day25})
	want := []Assumption{
		{"plan", "always, any_order, cranking, momentary, receptacle, spark", "false", "circumstances that parts do not mention are taken not to be so"},
		{"plan", "mode", "none", "without modes people may be aboard in every state"},
		{"source.pack", "resistance", "2 mohm; 10 mohm", "low default; high default"},
		{"switch.select", "transition", "overlap and gap", "left out: both are examined"},
	}
	if !reflect.DeepEqual(r.Assumptions, want) || r.Assumed != 1 {
		t.Errorf("%d assumed, got %+v", r.Assumed, r.Assumptions)
	}
}

func TestHeaderAndHouseRules(t *testing.T) {
	r := Run(decode(t, aboard+"\nhouse_rule \"thick\" {\n  for = conductor\n  require = true\n}\n"), nil, Options{Today: day25})
	expect(t, r, "notice plan/house-rule house_rule.thick ?")
	if r.System != "Tern" || !r.PracticeLeft || r.Practices[0] != "general" || r.HasAC || r.File != "tern.wiring.hcl" || r.Today != day25.Format(time.DateOnly) {
		t.Errorf("%+v", r)
	}
	if err := lint.Validate([]*lint.Rule{HouseRules}); err != nil {
		t.Error(err)
	}
}

func TestPracticeOverride(t *testing.T) {
	plan := decode(t, aboard)
	var graded []string
	reads := fake("x/reads")
	reads.Run = func(p *lint.Pass) []lint.Verdict { graded = p.Plan.Practices(); return nil }
	r := Run(plan, []*lint.Rule{reads}, Options{Today: day25, Practice: []string{"us-boat", "cabin"}})
	want := []string{"us-boat", "cabin"}
	if !reflect.DeepEqual(graded, want) || !reflect.DeepEqual(r.Practices, want) || r.PracticeLeft {
		t.Errorf("rules see %v, the report says %v", graded, r.Practices)
	}
	if own := plan.Practices(); !reflect.DeepEqual(own, []string{"general"}) {
		t.Errorf("the plan itself became %v", own)
	}
}

func TestWiringErrorsStopTheRun(t *testing.T) {
	relay := "\nswitch \"x\" {\n  terminals = [\"a\", \"b\"]\n  follows = source.pack\n  position \"on\" {\n    joins = [[\"a\", \"b\"]]\n  }\n}\n"
	r := Run(decode(t, aboard+relay), []*lint.Rule{fake("x/a", violated("fuse.main", lint.Danger))}, Options{Today: day25})
	if !r.Diagnostics.HasErrors() || len(r.Findings) != 0 || r.Summary.Checks != 0 {
		t.Errorf("diagnostics %v, %d findings", r.Diagnostics, len(r.Findings))
	}
}

func TestReachesAndTainted(t *testing.T) {
	one := Run(decode(t, aboard), []*lint.Rule{fake("x/a", violated("fuse.main", lint.Caution), unproven("fuse.spare", lint.Notice))}, Options{Today: day25})
	for w, want := range map[lint.Severity]bool{lint.Notice: true, lint.Caution: true, lint.Warning: false, lint.Danger: false} {
		if one.Reaches(w) != want {
			t.Errorf("reaches %s: %v", w, !want)
		}
	}
	if one.Tainted() {
		t.Error("a whole run is tainted")
	}
	waived := Run(decode(t, aboard+waiver("x/a", "fuse.main", "")), []*lint.Rule{fake("x/a", violated("fuse.main", lint.Warning))}, Options{Today: day25})
	if waived.Reaches(lint.Notice) {
		t.Error("what is waived does not count")
	}
	if r := Run(decode(t, aboard), []*lint.Rule{fake("x/none", answer{at: "fuse.main"})}, Options{Today: day25}); !r.Tainted() {
		t.Error("a verdict without an outcome taints the run")
	}
}

func TestWaitCountsRules(t *testing.T) {
	r := Run(decode(t, aboard), []*lint.Rule{
		fake("x/a", unproven("fuse.main", lint.Danger, "fuse.main rating"), unproven("load.lamp", lint.Danger, "fuse.main rating")),
		fake("x/b", unproven("conductor.feed", lint.Caution, "fuse.main rating"), unproven("fuse.spare", lint.Caution, "fuse.spare rating")),
	}, Options{Today: day25})
	if got := r.Findings[0].Wait; got != "2 rules wait on `rating` of fuse.main." {
		t.Errorf("%q", got)
	}
	if got := r.Findings[1].Wait; got != "" {
		t.Errorf("one rule alone waits: %q", got)
	}
}

// Interlocks that rule out every state leave nothing to check: that must not read as fine.
func TestNoStateIsAnError(t *testing.T) {
	p := decode(t, `
system "t" {
  practice = ["us-rv"]
}
source "pack" {
  kind = "battery"
}
switch "main" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}
conductor "feed" {
  from = source.pack
  to   = switch.main.a
}
interlock "both" {
  never = [{ switch.main = "on" }, { switch.main = "off" }]
}
`)
	r := Run(p, nil, Options{})
	if !r.Diagnostics.HasErrors() || r.Diagnostics[0].Summary != "No state is left" || r.Diagnostics[0].Subject.Start.Line != 17 {
		t.Errorf("%v", r.Diagnostics)
	}
}
