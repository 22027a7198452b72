package suggest

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/schema"
	"ferrule/schema/files"
)

const small = `system "tern" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

fuse "main" {
  rating = "40 A" # as fitted
  on     = source.pack
}

conductor "run" {
  from   = fuse.main.load
  to     = load.lamp
  size   = "10 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "2 A"
}
`

// made is a rule whose verdict on a fuse is what judge says: the outcome and the word.
func made(id string, judge func(*schema.Fuse) (lint.Outcome, lint.Severity), offers ...lint.Offer) *lint.Rule {
	return &lint.Rule{ID: id, Words: []lint.Severity{lint.Warning}, Remedy: true, Offers: offers, Run: func(p *lint.Pass) []lint.Verdict {
		var out []lint.Verdict
		for _, f := range p.Plan.Fuses {
			v := lint.Verdict{Subject: f, Message: "the " + id + " of " + f.Name}
			v.Outcome, v.Word = judge(f)
			if f.Rating.Set {
				v.Numbers = []derive.Number{derive.Read("rating", "In", f.Rating.Value, "A", f.Addr, "rating", f.Rating.Range)}
			}
			out = append(out, v)
		}
		return out
	}}
}

// above is violated by ratings over some amps.
func above(amps float64) func(*schema.Fuse) (lint.Outcome, lint.Severity) {
	return func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if f.Rating.Value > amps {
			return lint.Violated, lint.Warning
		}
		return lint.Holds, 0
	}
}

// below is violated, or not proven, by ratings under some amps.
func below(amps float64, how lint.Outcome) func(*schema.Fuse) (lint.Outcome, lint.Severity) {
	return func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if f.Rating.Value < amps {
			return how, lint.Notice
		}
		return lint.Holds, 0
	}
}

// sets offers changes as they are.
func sets(do string, changes ...lint.Change) lint.Offer {
	return func(*lint.Pass, lint.Verdict) []lint.Proposal { return []lint.Proposal{{Do: do, Changes: changes}} }
}

// desk is a plan in a file of its own, checked by rules.
func desk(t *testing.T, src string, rules ...*lint.Rule) *Desk {
	t.Helper()
	path := filepath.Join(t.TempDir(), "tern.wiring.hcl")
	if err := os.WriteFile(path, []byte(src), 0o644); err != nil {
		t.Fatal(err)
	}
	d, diags := New(path, &files.Reader{}, rules, check.Options{Today: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)})
	if len(diags) > 0 || d.Report.Tainted() {
		t.Fatal(diags, d.Report)
	}
	return d
}

// first gives the suggestions for the first finding.
func first(t *testing.T, d *Desk) []Suggestion {
	t.Helper()
	if len(d.Report.Findings) == 0 {
		t.Fatal("nothing to clear")
	}
	return d.For(d.Report.Findings[0]).List
}

var rating = func(v string) lint.Change { return lint.Set("fuse.main", "rating", v) }

func TestVerified(t *testing.T) {
	d := desk(t, small, made("x/big", above(20), sets("Fit 10 A.", rating(`"10 A"`))))
	all := first(t, d)
	if len(all) != 1 || all[0].Kind != Verified || all[0].Reason != "" {
		t.Fatalf("%+v", all)
	}
	x := all[0]
	if want := strings.Replace(small, "40 A", "10 A", 1); string(x.Result) != want {
		t.Errorf("the text became\n%s", x.Result)
	}
	at := strings.Index(small, "40 A")
	if len(x.Edits) != 1 || x.Edits[0].Start != at || x.Edits[0].End != at+2 || x.Edits[0].Text != "10" {
		t.Errorf("edits %+v", x.Edits)
	}
	if x.Cost != (Cost{Parts: 1, Ratings: 1}) {
		t.Errorf("cost %+v", x.Cost)
	}
	if n := x.Numbers; len(n) != 2 || n[0].When != "before" || n[0].Value != 40 || n[1].When != "after" || n[1].Value != 10 {
		t.Errorf("numbers %+v", n)
	}
	if !strings.Contains(d.Diff(x), "-  rating = \"40 A\" # as fitted\n+  rating = \"10 A\" # as fitted\n") {
		t.Error(d.Diff(x))
	}
}

// TestRefused has proposals that clear the finding and are worth nothing: each stays a sketch that says why.
func TestRefused(t *testing.T) {
	fix := sets("Fit 10 A.", rating(`"10 A"`))
	for _, c := range []struct {
		name, why string
		src       string
		offer     lint.Offer
		other     func(*schema.Fuse) (lint.Outcome, lint.Severity)
	}{
		{"what held is violated", "x/other at fuse.main", small, fix, below(15, lint.Violated)},
		{"what held is not proven", "x/other at fuse.main", small, fix, below(15, lint.NotProven)},
		{"a word is higher", "x/other at fuse.main", small, fix, func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
			return lint.Violated, lint.Notice + lint.Severity(boolean(f.Rating.Value < 40))
		}},
		{"what was not proven is violated", "x/other at fuse.main", small, fix, func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
			if f.Rating.Value < 40 {
				return lint.Violated, lint.Notice
			}
			return lint.NotProven, lint.Notice
		}},
		{"a new part is wrong", "x/other at fuse.more", small, sets("Add one.", rating(`"10 A"`), lint.Change{At: "fuse.main", Block: "fuse \"more\" {\n  rating = \"5 A\"\n  on = source.pack\n}\n"}), below(6, lint.Violated)},
		{"a battery and a load are parted", "\"pack\" then feeds nothing", small, sets("Cut it.", rating(`"10 A"`), lint.Set("conductor.run", "from", "fuse.spare.load"), lint.Change{At: "fuse.main", Block: "fuse \"spare\" {\n  rating = \"10 A\"\n}\n"}), above(1000)},
		{"a blank", "how many amps", small, func(*lint.Pass, lint.Verdict) []lint.Proposal {
			return []lint.Proposal{{Do: "Ask.", Changes: []lint.Change{rating(`"10 A"`)}, Open: "how many amps"}}
		}, above(1000)},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := desk(t, c.src, made("x/big", above(20), c.offer), made("x/other", c.other))
			f := d.Report.Findings[0]
			if f.Rule.ID != "x/big" {
				f = d.Report.Findings[1]
			}
			all := d.For(f).List
			if len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(all[0].Reason, c.why) {
				t.Errorf("%+v", all)
			}
		})
	}
}

// A rule that falls silent on a part that is still there has not said that it holds.
func TestSilenceIsNoProof(t *testing.T) {
	r := made("x/big", above(20), sets("Fit 10 A.", rating(`"10 A"`)))
	run := r.Run
	r.Run = func(p *lint.Pass) []lint.Verdict {
		return slices.DeleteFunc(run(p), func(v lint.Verdict) bool { return v.Outcome == lint.Holds })
	}
	if all := first(t, desk(t, small, r)); len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(all[0].Reason, "nothing to ask") {
		t.Errorf("%+v", all)
	}
}

func TestUselessProposals(t *testing.T) {
	for name, o := range map[string]lint.Offer{
		"it does not clear it":      sets("Fit 30 A.", rating(`"30 A"`)),
		"it is no plan":             sets("Fit what?", rating(`"10 furlongs"`)),
		"it changes nothing":        sets("Leave it.", rating(`"40 A"`)),
		"it names nothing":          sets("Fit 10 A.", rating(`"10 A"`), lint.Set("fuse.main", "on", "source.none")),
		"it says two things of one": sets("Fit both.", rating(`"10 A"`), rating(`"5 A"`)),
	} {
		if all := first(t, desk(t, small, made("x/big", above(20), o))); len(all) != 0 {
			t.Errorf("%s: %+v", name, all)
		}
	}
}

// A second edit may make good what the first one makes worse: neither alone is enough.
func TestCombination(t *testing.T) {
	thin := &lint.Rule{ID: "x/thin", Words: []lint.Severity{lint.Warning}, Offers: []lint.Offer{sets("Lay 6 AWG.", lint.Set("conductor.run", "size", `"6 AWG"`))}, Run: func(p *lint.Pass) []lint.Verdict {
		v := lint.Verdict{Subject: p.Plan.Block("conductor.run"), Outcome: lint.Holds, Word: lint.Warning, Message: "thin"}
		if p.Plan.Fuses[0].Rating.Value > 40 && p.Plan.Conductors[0].Size.Area < 10 {
			v.Outcome = lint.Violated
		}
		return []lint.Verdict{v}
	}}
	d := desk(t, small, made("x/small", below(50, lint.Violated), sets("Fit 60 A.", rating(`"60 A"`))), thin)
	all := first(t, d)
	if len(all) == 0 || all[0].Kind != Verified || strings.Join(all[0].Steps, " ") != "Fit 60 A. Lay 6 AWG." || all[0].Cost != (Cost{Parts: 2, Metres: 2, Ratings: 1}) {
		t.Fatalf("%+v", all)
	}
}

func TestLeastChangeFirst(t *testing.T) {
	d := desk(t, small, made("x/big", above(20),
		sets("Change two parts.", rating(`"15 A"`), lint.Set("load.lamp", "draw", `"1 A"`)),
		func(*lint.Pass, lint.Verdict) []lint.Proposal {
			return []lint.Proposal{{Do: "Second layer.", Changes: []lint.Change{rating(`"5 A"`)}, Second: true}}
		},
		sets("Lay wire.", rating(`"15 A"`), lint.Set("conductor.run", "size", `"8 AWG"`)),
		func(*lint.Pass, lint.Verdict) []lint.Proposal {
			return []lint.Proposal{{Do: "Fit 20 A.", Changes: []lint.Change{rating(`"20 A"`)}}, {Do: "Fit 15 A.", Changes: []lint.Change{rating(`"15 A"`)}}}
		}))
	var got []string
	for _, x := range first(t, d) {
		got = append(got, x.Steps[0])
	}
	if want := "Fit 20 A.|Change two parts.|Lay wire."; strings.Join(got, "|") != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestUnknownLength has a wire of unwritten length beside one of a written one: it may be the longer.
func TestUnknownLength(t *testing.T) {
	src := small + "\nconductor \"other\" {\n  from = fuse.main.load\n  to   = load.lamp\n  size = \"10 AWG\"\n}\n"
	d := desk(t, src, made("x/big", above(20),
		sets("Lay the other.", rating(`"15 A"`), lint.Set("conductor.other", "size", `"8 AWG"`)),
		sets("Lay the run.", rating(`"15 A"`), lint.Set("conductor.run", "size", `"8 AWG"`))))
	all := first(t, d)
	if len(all) != 2 || all[0].Steps[0] != "Lay the run." || all[1].Cost != (Cost{Parts: 2, Unmeasured: 1, Ratings: 1}) {
		t.Errorf("%+v", all)
	}
}

// TestQuestionOfAPart has a verdict that misses what no part has an attribute for: it is asked, and nothing is written.
func TestQuestionOfAPart(t *testing.T) {
	rule := made("x/alarm", below(100, lint.NotProven))
	run := rule.Run
	for _, c := range []struct {
		attribute string
		edits     int
	}{{"alarm", 0}, {"voltage_rating", 1}} {
		rule.Run = func(p *lint.Pass) []lint.Verdict {
			out := run(p)
			out[0].Missing = []lint.Missing{{Subject: "fuse.main", Attribute: c.attribute}}
			return out
		}
		all := first(t, desk(t, small, rule))
		if len(all) != 1 || all[0].Kind != Sketch || len(all[0].Edits) != c.edits {
			t.Errorf("%s: %+v", c.attribute, all)
		}
	}
}

func TestSameCircuit(t *testing.T) {
	nameless := func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if !f.Label.Set {
			return lint.Violated, lint.Notice
		}
		return lint.Holds, 0
	}
	all := first(t, desk(t, small, made("x/label", nameless, sets("Name it.", lint.Set("fuse.main", "label", `"Main"`)))))
	if len(all) != 1 || all[0].Kind != SameCircuit {
		t.Errorf("%+v", all)
	}
}

func TestMissingIsAsked(t *testing.T) {
	unknown := func(f *schema.Fuse) (lint.Outcome, lint.Severity) { return lint.NotProven, lint.Warning }
	r := made("x/unknown", unknown)
	run := r.Run
	r.Run = func(p *lint.Pass) []lint.Verdict {
		vs := run(p)
		vs[0].Missing = []lint.Missing{{Subject: "fuse.main", Attribute: "interrupting"}}
		return vs
	}
	all := first(t, desk(t, small, r))
	if len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(string(all[0].Result), "interrupting = null\n") {
		t.Fatalf("%+v", all)
	}
	if plan, diags := schema.Decode("x.hcl", all[0].Result, nil); diags.HasErrors() || plan.Fuses[0].Interrupting.Set {
		t.Errorf("the question is no plan, or an answer: %v", diags)
	}
}

func TestGroupIsClearedTogether(t *testing.T) {
	src := strings.Replace(small, "conductor \"run\"", "fuse \"spare\" {\n  rating = \"40 A\"\n  on     = source.pack\n}\n\nconductor \"run\"", 1)
	r := made("x/big", above(20), func(_ *lint.Pass, v lint.Verdict) []lint.Proposal {
		return []lint.Proposal{{Do: "Fit 10 A.", Changes: []lint.Change{lint.Set(v.Subject.Header().Addr, "rating", `"10 A"`)}}}
	})
	run := r.Run
	r.Run = func(p *lint.Pass) []lint.Verdict {
		vs := run(p)
		for i := range vs {
			vs[i].Group = "all"
		}
		return vs
	}
	d := desk(t, src, r)
	all := first(t, d)
	if len(all) != 2 || all[0].Kind != Verified || strings.Contains(string(all[0].Result), "40 A") || !strings.Contains(string(all[1].Result), "40 A") {
		t.Errorf("%+v", all)
	}
}

func TestNothingWithoutAWholeCheck(t *testing.T) {
	crash := made("x/crash", above(1000))
	crash.Run = func(*lint.Pass) []lint.Verdict { panic("made") }
	path := filepath.Join(t.TempDir(), "tern.wiring.hcl")
	if err := os.WriteFile(path, []byte(small), 0o644); err != nil {
		t.Fatal(err)
	}
	d, _ := New(path, &files.Reader{}, []*lint.Rule{crash, made("x/big", above(20), sets("Fit 10 A.", rating(`"10 A"`)))}, check.Options{})
	if all := d.For(d.Report.Findings[0]).List; len(all) != 0 {
		t.Errorf("a rule crashed, and still: %+v", all)
	}
	// A rule that crashes on the new plan only proves nothing of it.
	late := made("x/late", func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if f.Rating.Value < 40 {
			panic("made")
		}
		return lint.Holds, 0
	})
	all := first(t, desk(t, small, made("x/big", above(20), sets("Fit 10 A.", rating(`"10 A"`))), late))
	if len(all) != 1 || all[0].Kind != Sketch {
		t.Errorf("%+v", all)
	}
}

// TestRemarksOnGuesses has a change that clears a finding and brings a notice that its proof leans on a guess, which was
// not there before: for a warning that is told with it, where nothing else is to be had; of a caution it makes a sketch. What
// needs no guess goes first.
func TestRemarksOnGuesses(t *testing.T) {
	guess := &lint.Rule{ID: "x/guess", Words: []lint.Severity{lint.Notice}, Review: func(p *lint.Pass, _ *lint.Ran) []lint.Verdict {
		v := lint.Verdict{Subject: p.Plan.System, Outcome: lint.Holds, Word: lint.Notice, Message: "a guess decides"}
		if p.Plan.Fuses[0].Rating.Value < 15 {
			v.Outcome = lint.Violated
		}
		return []lint.Verdict{v}
	}}
	fix := sets("Fit 10 A.", rating(`"10 A"`))
	all := first(t, desk(t, small, made("x/big", above(20), fix), guess))
	if len(all) != 1 || all[0].Kind != Verified || len(all[0].Needs) != 1 || !strings.Contains(all[0].Needs[0], "a guess decides") {
		t.Errorf("%+v", all)
	}
	lesser := made("x/big", func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if how, _ := above(20)(f); how == lint.Violated {
			return how, lint.Caution
		}
		return lint.Holds, lint.Caution
	}, fix)
	if all := first(t, desk(t, small, lesser, guess)); len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(all[0].Reason, "x/guess at system.tern") {
		t.Errorf("%+v", all)
	}
	more := sets("Fit 15 A and less draw.", rating(`"15 A"`), lint.Set("load.lamp", "draw", `"1 A"`))
	if all = first(t, desk(t, small, made("x/big", above(20), fix, more), guess)); len(all) != 2 || all[0].Kind != Verified || all[0].Steps[0] != "Fit 15 A and less draw." || len(all[0].Needs) > 0 || all[1].Kind != Sketch {
		t.Errorf("the one without a guess is not first: %+v", all)
	}
}

func TestOfferThatCrashes(t *testing.T) {
	crash := func(*lint.Pass, lint.Verdict) []lint.Proposal { panic("made") }
	all := first(t, desk(t, small, made("x/big", above(20), crash, sets("Fit 10 A.", rating(`"10 A"`)))))
	if len(all) != 2 || all[0].Kind != Verified || all[1].Kind != Sketch || !strings.Contains(all[1].Reason, "the tool failed at what x/big offers: made") {
		t.Errorf("%+v", all)
	}
}

// A finding for which very much is proposed takes no more work than another.
func TestWorkIsBounded(t *testing.T) {
	var runs atomic.Int32
	r := made("x/big", above(20), func(*lint.Pass, lint.Verdict) []lint.Proposal {
		var out []lint.Proposal
		for i := range 5000 {
			out = append(out, lint.Proposal{Do: "Try.", Changes: []lint.Change{rating(fmt.Sprintf(`"%d A"`, 21+i))}})
		}
		return out
	})
	run := r.Run
	r.Run = func(p *lint.Pass) []lint.Verdict { runs.Add(1); return run(p) }
	d := desk(t, small, r)
	if ways := d.For(d.Report.Findings[0]); len(ways.List) != 0 || !ways.Left || runs.Load() > mostPlaced+2 {
		t.Errorf("%d runs for %+v", runs.Load(), ways)
	}
}

func TestPlansThatCannotBeEdited(t *testing.T) {
	r := made("x/big", above(20), sets("Fit 10 A.", rating(`"10 A"`)))
	path := filepath.Join(t.TempDir(), "tern.wiring.json")
	json := `{"system": {"tern": {}}, "fuse": {"main": {"rating": "40 A"}}}`
	if err := os.WriteFile(path, []byte(json), 0o644); err != nil {
		t.Fatal(err)
	}
	d, diags := New(path, &files.Reader{}, []*lint.Rule{r}, check.Options{})
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	if all := first(t, d); len(all) != 0 {
		t.Errorf("JSON was edited: %+v", all)
	}
	kit := filepath.Join(filepath.Dir(path), "kit.wiring.hcl")
	if err := os.WriteFile(kit, []byte("kit \"k\" {}\n\nfuse \"main\" {\n  rating = \"40 A\"\n}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	plan := filepath.Join(filepath.Dir(path), "uses.wiring.hcl")
	if err := os.WriteFile(plan, []byte("system \"tern\" {}\n\nuse \"one\" {\n  kit = \"./kit.wiring.hcl\"\n}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	r = made("x/big", above(20), sets("Fit 10 A.", lint.Set("use.one.fuse.main", "rating", `"10 A"`)))
	if d, diags = New(plan, &files.Reader{}, []*lint.Rule{r}, check.Options{}); len(diags) > 0 {
		t.Fatal(diags)
	}
	if all := first(t, d); len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(all[0].Reason, "which other plans may use too") || len(all[0].Edits) != 0 {
		t.Errorf("%+v", all)
	}
}

func TestAllGoesOnUntilNothingIsLeft(t *testing.T) {
	step := func(from, to string) lint.Offer {
		return func(p *lint.Pass, v lint.Verdict) []lint.Proposal {
			if p.Plan.Fuses[0].Rating.String() != from {
				return nil
			}
			return []lint.Proposal{{Do: "Fit " + to + ".", Changes: []lint.Change{rating(`"` + to + `"`)}}}
		}
	}
	// What x/a offers helps only once x/b is cleared, and then does for both.
	d := desk(t, small, made("x/a", above(10), step("20 A", "10 A")), made("x/b", above(30), step("40 A", "20 A")), made("x/c", above(5)))
	after, all := d.All()
	if len(all) != 1 || all[0].Finding.Rule.ID != "x/a" || len(all[0].Clears) != 1 || after.Plan.Fuses[0].Rating.Value != 10 {
		t.Fatalf("%+v", all)
	}
	if again, more := after.All(); len(more) != 0 || string(again.Src) != string(after.Src) {
		t.Errorf("it does not end: %+v", more)
	}
}

// TestStopped ends the search while offers are asked for: what it then has is not all that there is, and
// says so; a search that was through before the end does not.
func TestStopped(t *testing.T) {
	for _, c := range []struct {
		name string
		when bool
	}{{"stopped", true}, {"not stopped", false}} {
		t.Run(c.name, func(t *testing.T) {
			var over atomic.Bool
			rule := made("x/big", above(20), func(*lint.Pass, lint.Verdict) []lint.Proposal {
				over.Store(c.when)
				return []lint.Proposal{{Do: "Fit 10 A.", Changes: []lint.Change{rating(`"10 A"`)}}}
			})
			path := filepath.Join(t.TempDir(), "tern.wiring.hcl")
			if err := os.WriteFile(path, []byte(small), 0o644); err != nil {
				t.Fatal(err)
			}
			d, diags := New(path, &files.Reader{}, []*lint.Rule{rule}, check.Options{Stop: over.Load})
			if len(diags) > 0 || d.Report.Tainted() {
				t.Fatal(diags, d.Report)
			}
			ways := d.For(d.Report.Findings[0])
			if ways.Cut != c.when || d.Stopped() != c.when || ways.Good() == c.when {
				t.Errorf("cut %v, stopped %v: %+v", ways.Cut, d.Stopped(), ways.List)
			}
			if _, all := d.All(); (len(all) == 0) != c.when {
				t.Errorf("accepted %+v", all)
			}
		})
	}
}

// A fact that a verdict misses is read from the part: the answer that suits it is no suggestion.
func TestFactsAreNotPresumed(t *testing.T) {
	set := func(attr, value string) lint.Proposal {
		return lint.Proposal{Changes: []lint.Change{lint.Set("switch.x", attr, value)}}
	}
	miss := func(attr string) lint.Verdict {
		return lint.Verdict{Missing: []lint.Missing{{Subject: "switch.x", Attribute: attr}}}
	}
	for _, c := range []struct {
		name string
		p    lint.Proposal
		v    lint.Verdict
		so   bool
	}{
		{"a flag", set("load_break", "true"), miss("load_break"), true},
		{"a word", set("transition", `"break-before-make"`), miss("transition"), true},
		{"a rating is chosen", set("rating", `"40 A"`), miss("rating"), false},
		{"another attribute is missing", set("load_break", "true"), miss("rating"), false},
		{"what is written is another part", set("load_break", "true"), lint.Verdict{}, false},
	} {
		if presumes(c.p, c.v) != c.so {
			t.Errorf("%s: %v", c.name, !c.so)
		}
	}
}

// TestNewPartsAreNotProven has a change that brings a part of which something is not proven: where that counts as a notice,
// it is told with a change for something graver; else it makes a sketch, which says what to write.
func TestNewPartsAreNotProven(t *testing.T) {
	add := sets("Add it.", lint.Change{At: "conductor.run", Block: "conductor \"piece\" {\n  from   = fuse.main.load\n  to     = load.lamp\n  size   = \"10 AWG\"\n  length = \"1 m\"\n}\n"}, rating(`"10 A"`))
	for word, kind := range map[lint.Severity]Kind{lint.Notice: Verified, lint.Caution: Verified, lint.Warning: Sketch, lint.Danger: Sketch} {
		wires := &lint.Rule{ID: "x/wire", Words: []lint.Severity{word}, Run: func(p *lint.Pass) []lint.Verdict {
			var out []lint.Verdict
			for _, c := range p.Plan.Conductors {
				v := lint.Verdict{Subject: c, Outcome: lint.Holds, Word: word}
				if c.Name == "piece" {
					v.Outcome, v.Message, v.Missing = lint.NotProven, "what piece carries is not known.", []lint.Missing{{Subject: "load.lamp", Attribute: "surge"}}
				}
				out = append(out, v)
			}
			return out
		}}
		all := first(t, desk(t, small, made("x/big", above(20), add), wires))
		if len(all) != 1 || all[0].Kind != kind {
			t.Fatalf("%s: %+v", word, all)
		}
		if kind == Verified && !strings.Contains(strings.Join(all[0].Needs, " "), "what piece carries") || kind == Sketch && !strings.HasSuffix(all[0].Reason, "Write `surge` of load.lamp first: then it may pass.") {
			t.Errorf("%s: %+v", word, all)
		}
	}
}

// TestMoreThanOneWire has a device that is too big for two wires: what suits the one moves the finding to the other, and is
// gone on from.
func TestMoreThanOneWire(t *testing.T) {
	two := small + "\nconductor \"other\" {\n  from   = fuse.main.load\n  to     = load.lamp\n  size   = \"12 AWG\"\n  length = \"1 m\"\n}\n"
	offer := func(p *lint.Pass, v lint.Verdict) []lint.Proposal {
		return []lint.Proposal{{Do: "Thicken " + v.Related[0] + ".", Changes: []lint.Change{lint.Set(v.Related[0], "size", `"6 AWG"`)}}}
	}
	rule := &lint.Rule{ID: "x/thin", Words: []lint.Severity{lint.Warning}, Remedy: true, Offers: []lint.Offer{offer}, Run: func(p *lint.Pass) []lint.Verdict {
		v := lint.Verdict{Subject: p.Plan.Fuses[0], Outcome: lint.Holds, Word: lint.Warning, Message: "all is thick"}
		thin := slices.MinFunc(p.Plan.Conductors, func(a, b *schema.Conductor) int { return cmp.Compare(a.Size.Area, b.Size.Area) })
		if thin.Size.Area < 6 {
			v.Outcome, v.Related, v.Message = lint.Violated, []string{thin.Addr}, thin.Name+" is thin"
			v.Numbers = []derive.Number{derive.Read("limit", "a", 6, "mm2", thin.Addr, "size", thin.Size.Range), derive.Read("found", "b", thin.Size.Area, "mm2", thin.Addr, "size", thin.Size.Range)}
		}
		return []lint.Verdict{v}
	}}
	all := first(t, desk(t, two, rule))
	if len(all) == 0 || all[0].Kind != Verified || strings.Join(all[0].Steps, " ") != "Thicken conductor.other. Thicken conductor.run." {
		t.Errorf("%+v", all)
	}
}

// TestKnownIsWanted has a change after which the finding is gone for want of a figure: a sketch that says so.
func TestKnownIsWanted(t *testing.T) {
	rule := made("x/big", func(f *schema.Fuse) (lint.Outcome, lint.Severity) { return lint.Holds, 0 }, sets("Fit 10 A.", rating(`"10 A"`)))
	run := rule.Run
	rule.Run = func(p *lint.Pass) []lint.Verdict {
		out := run(p)
		if out[0].Outcome, out[0].Word = lint.Violated, lint.Warning; p.Plan.Fuses[0].Rating.Value < 20 {
			out[0].Outcome, out[0].Missing, out[0].Message = lint.NotProven, []lint.Missing{{Subject: "load.lamp", Attribute: "surge"}}, "surge is missing"
		}
		return out
	}
	all := first(t, desk(t, small, rule))
	if len(all) != 1 || all[0].Kind != Sketch || !strings.Contains(all[0].Reason, "surge is missing") {
		t.Errorf("%+v", all)
	}
}

// TestNeedlessStepsAreLeftOut has a graver finding that what is done for a lesser one clears too: one step is left, which
// says so, and the text is what it alone makes of the plan.
func TestNeedlessStepsAreLeftOut(t *testing.T) {
	graver := made("x/big", func(f *schema.Fuse) (lint.Outcome, lint.Severity) {
		if f.Rating.Value > 20 {
			return lint.Violated, lint.Danger
		}
		return lint.Holds, 0
	}, sets("Fit 20 A.", rating(`"20 A"`)))
	graver.Words = []lint.Severity{lint.Danger}
	d := desk(t, small, graver, made("x/bigger", above(10), sets("Fit 10 A.", rating(`"10 A"`))))
	after, all := d.All()
	if len(all) != 1 || all[0].Steps[0] != "Fit 10 A." || !slices.Equal(all[0].Clears, []int{1}) {
		t.Fatalf("%+v", all)
	}
	text, err := Apply(d.Src, all[0].Edits)
	if err != nil || string(text) != string(after.Src) || len(after.Report.Findings) > 0 {
		t.Errorf("%v\n%s\n%v", err, text, after.Report.Findings)
	}
}

// TestVapour brings a part into a space that fuel vapour can come to, a new one and one that is moved there.
func TestVapour(t *testing.T) {
	for _, c := range []struct {
		vapour string
		change lint.Change
		warned bool
	}{
		{"true", lint.Set("fuse.main", "compartment", "compartment.locker"), true},
		{"true", lint.Change{At: "fuse.main", Block: "fuse \"new\" {\n  rating      = \"5 A\"\n  on          = source.pack\n  compartment = compartment.locker\n}\n"}, true},
		{"false", lint.Set("fuse.main", "compartment", "compartment.locker"), false},
		{"true", lint.Set("load.lamp", "draw", `"1 A"`), false},
	} {
		src := small + "\ncompartment \"locker\" { fuel_vapor = " + c.vapour + " }\n"
		all := first(t, desk(t, src, made("x/big", above(20), sets("Fit it.", rating(`"10 A"`), c.change))))
		if len(all) != 1 || strings.Contains(strings.Join(all[0].Needs, " "), "ignition protected") != c.warned {
			t.Errorf("%+v: %+v", c, all)
		}
	}
}
