package compare

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// judged is a rule that reads its verdicts on fuses from their notes: "violated danger", "holds", "", and what part they
// are about too.
func judged(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		how, word, _ := strings.Cut(f.Notes.Value, " ")
		v := lint.Verdict{Subject: f, Message: f.Name + " is " + how}
		switch how {
		case "holds":
			v.Outcome = lint.Holds
		case "violated":
			v.Outcome = lint.Violated
		case "unproven":
			v.Outcome = lint.NotProven
		default:
			continue
		}
		word, about, _ := strings.Cut(word, " ")
		v.Word, _ = lint.ParseSeverity(word)
		v.Related = strings.Fields(about)
		v.Numbers = []derive.Number{derive.Read("rating", "In", f.Rating.Value, "A", f.Addr, "rating", f.Rating.Range)}
		out = append(out, v)
	}
	return out
}

var rule = &lint.Rule{ID: "x/judged", Words: []lint.Severity{lint.Danger}, Run: judged}

func difference(t *testing.T, old, new string) *Difference {
	t.Helper()
	var plans [2]*schema.Plan
	var reports [2]*check.Report
	for i, fuses := range []string{old, new} {
		src := "system \"tern\" {}\n"
		for line := range strings.Lines(fuses) {
			name, rest, _ := strings.Cut(strings.TrimSpace(line), ": ")
			if until, ok := strings.CutPrefix(rest, "waived "); ok {
				src += "waiver \"" + name + "\" {\n  rule = \"x/judged\"\n  at = fuse." + name + "\n  reason = \"seen\"\n  until = \"" + until + "\"\n}\n"
				continue
			}
			rating, notes, _ := strings.Cut(rest, " A ")
			src += "fuse \"" + name + "\" {\n  rating = \"" + rating + " A\"\n  notes = \"" + notes + "\"\n}\n"
		}
		plan, diags := schema.Decode("tern.wiring.hcl", []byte(src), nil)
		if diags.HasErrors() {
			t.Fatal(diags, src)
		}
		plans[i] = plan
		reports[i] = check.Run(plan, []*lint.Rule{rule}, check.Options{Today: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)})
	}
	return Between(plans[0], plans[1], reports[0], reports[1], []*lint.Rule{rule})
}

func told(list []Change) string {
	var out []string
	for _, c := range list {
		s := strings.TrimPrefix(c.Subject, "fuse.") + " " + c.Counts.String()
		for _, n := range c.Numbers {
			s += " " + n.Before.Text() + ">" + n.After.Text()
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

func TestBetween(t *testing.T) {
	d := difference(t,
		"a: 10 A holds\nb: 10 A holds\nc: 10 A violated danger\nd: 10 A violated warning\ne: 10 A unproven caution\nf: 10 A violated notice\ng: 10 A holds\nh: 10 A violated danger\ni: 10 A holds\nj: 1 A violated danger\nm: 10 A violated notice",
		"a: 20 A violated danger\nb: 10 A unproven danger\nc: 5 A holds\nd: 10 A violated danger\ne: 10 A violated caution\nf: 12 A violated notice\ng: 11 A holds\nh: 10 A unproven warning\ni: 10 A holds\nk: 1 A violated warning\nl: 1 A unproven notice\nm: 10.1 A violated notice")
	for _, c := range []struct{ what, got, want string }{
		{"worse", told(d.Worse), "a danger 10 A>20 A, d danger, k warning, e caution, f notice 10 A>12 A"},
		{"unproven", told(d.Unproven), "b warning, l notice"},
		{"lost", told(d.Lost), "h danger"},
		{"better", told(d.Better), "c danger 10 A>5 A, j danger"},
		{"same", told(d.Same), "m notice 10 A>10.1 A"},
		{"moved", told(d.Moved), "g  10 A>11 A"},
		{"added", strings.Join(d.Added, " "), "fuse.k fuse.l"},
		{"removed", strings.Join(d.Removed, " "), "fuse.j"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
	if !d.Reaches(lint.Danger) || difference(t, "a: 1 A violated danger", "a: 1 A violated danger").Reaches(lint.Notice) {
		t.Error("what is worse reaches danger; what is the same reaches nothing")
	}
	if d := difference(t, "a: 1 A violated danger", "a: 1 A unproven danger"); !d.Reaches(lint.Danger) {
		t.Error("what was violated and cannot be proven counts as it did")
	}
	if d := difference(t, "a: 1 A holds", "a: 1 A unproven danger"); d.Reaches(lint.Danger) || !d.Reaches(lint.Warning) {
		t.Error("not proven counts a step under its word")
	}
}

// What went with a part is better, and says so; what went while its part is there does not.
func TestGone(t *testing.T) {
	d := difference(t,
		"a: 10 A violated danger\nb: 10 A violated danger\nc: 10 A violated danger\nd: 10 A holds\ne: 10 A violated notice fuse.d\nf: 10 A violated notice fuse.d",
		"b: 10 A holds\nc: 10 A nothing\nf: 10 A holds\ng: 10 A violated danger\ne: 10 A violated notice fuse.d")
	for _, c := range []struct{ what, got, want string }{
		{"better", told(d.Better), "a danger, b danger, c danger, f notice"},
		{"worse", told(d.Worse), "g danger"},
		{"with the part", strings.Join(d.Better[0].Gone, " "), "fuse.a"},
		{"cured", strings.Join(d.Better[1].Gone, " "), ""},
		{"not asked", strings.Join(d.Better[2].Gone, " "), ""},
		{"with another part", strings.Join(d.Better[3].Gone, " "), "fuse.d"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.what, c.got, c.want)
		}
	}
	if !d.Worse[0].Added || d.Better[0].Added || len(d.Same) != 1 || len(d.Same[0].Gone) > 0 {
		t.Errorf("%+v", d)
	}
}

// TestWaived has findings that a waiver accepts in one of the plans: that is no cure, and reaches its word when it is new.
func TestWaived(t *testing.T) {
	const bad, good, lapsed = "a: 10 A violated danger", "\na: waived 2026-12-01", "\na: waived 2026-11-24"
	for _, c := range []struct {
		name, old, new, list string
		reaches              bool
	}{
		{"waived now", bad, bad + good, "waived", true},
		{"by a waiver that is over", bad, bad + lapsed, "same", false},
		{"waived no more", bad + good, bad, "unwaived", false},
		{"waived in both", bad + good, bad + good, "same", false},
		{"new and waived at once", "a: 10 A holds", bad + good, "worse", true},
		{"further, and waived in both", "a: 10 A violated notice" + good, bad + good, "worse", true},
		{"not proven any more, and waived", bad, "a: 10 A unproven danger" + good, "lost", true},
		{"less grave, and waived", bad, "a: 10 A violated notice" + good, "waived", false},
		{"waived, then less grave and waived no more", bad + good, "a: 10 A violated notice", "better", false},
		{"waived, then cured", bad + good, "a: 10 A holds", "better", false},
	} {
		d := difference(t, c.old, c.new)
		lists := map[string][]Change{"waived": d.Waived, "same": d.Same, "unwaived": d.Unwaived, "worse": d.Worse, "lost": d.Lost, "better": d.Better}
		if len(lists[c.list]) != 1 || d.Reaches(lint.Danger) != c.reaches {
			t.Errorf("%s: reaches danger %v, %+v", c.name, d.Reaches(lint.Danger), lists)
		}
	}
	if d := difference(t, bad, "a: 10 A violated notice"+good); !d.Reaches(lint.Notice) {
		t.Error("what is waived now counts as what is waived")
	}
}

// TestFoldedIsWaived has a finding folded under one that is waived, and one of which the graver part is not.
func TestFoldedIsWaived(t *testing.T) {
	at := &schema.Fuse{Head: schema.Head{Addr: "fuse.main"}}
	by := &schema.Waiver{}
	found := func(cause string, w lint.Severity, by *schema.Waiver, folded ...check.Folded) *check.Finding {
		return &check.Finding{Rule: rule, Verdict: lint.Verdict{Subject: at, Cause: cause}, Severity: w, Waived: by, Folded: folded}
	}
	small := lint.Verdict{Subject: at, Outcome: lint.Violated, Cause: "small", Message: "small"}
	got := waivers(&check.Report{
		Findings: []*check.Finding{found("both", lint.Danger, nil), found("both", lint.Warning, by), found("big", lint.Warning, by,
			check.Folded{Rule: "y/folded", Subject: "fuse.main", Message: "small", Outcome: lint.Violated, Severity: lint.Notice})},
		Verdicts: map[string][]lint.Verdict{"y/folded": {{Subject: at, Outcome: lint.Holds, Cause: "other"}, small}},
	})
	for q, want := range map[Question]*schema.Waiver{
		{"x/judged", "fuse.main", "both"}: nil, {"x/judged", "fuse.main", "big"}: by, {"y/folded", "fuse.main", "small"}: by, {"y/folded", "fuse.main", "other"}: nil,
	} {
		if got[q].by != want {
			t.Errorf("%v: %v", q, got[q])
		}
	}
}

// What is violated before and after is worse where it is further beyond its limit, whichever side that is.
func TestFurtherBeyond(t *testing.T) {
	answer := func(limit, value float64, unit string) Answer {
		read := func(x float64, unit string) derive.Number {
			return derive.Read("x", "x", x, unit, "fuse.a", "rating", hcl.Range{})
		}
		return Answer{Verdict: lint.Verdict{Outcome: lint.Violated, Word: lint.Warning, Numbers: []derive.Number{read(1, "V"), read(limit, "A"), read(value, unit)}}, Times: 1}
	}
	for _, c := range []struct {
		name    string
		new     Answer
		further bool
	}{
		{"more over it", answer(20, 40, "A"), true}, {"less over it", answer(20, 25, "A"), false}, {"the same", answer(20, 30, "A"), false},
		{"the limit fell", answer(15, 30, "A"), true}, {"a hair", answer(20, 30.1, "A"), false}, {"another kind", answer(20, 400, "V"), false},
		{"unlimited", answer(20, math.Inf(1), "A"), false},
	} {
		if got := worse(c.new, answer(20, 30, "A")); got != c.further {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	if !worse(answer(20, 5, "A"), answer(20, 10, "A")) {
		t.Error("further under it is worse too")
	}
}

// The way back has what is worse and what is better the other way round.
func TestBetweenIsItsOwnOpposite(t *testing.T) {
	a, b := "a: 10 A holds\nb: 10 A violated danger\nc: 3 A unproven notice", "a: 20 A violated danger\nb: 10 A holds\nc: 3 A holds"
	there, back := difference(t, a, b), difference(t, b, a)
	if len(there.Worse) != 1 || len(back.Better) != 1 || len(there.Better) != len(back.Worse)+len(back.Unproven) {
		t.Errorf("%+v\n%+v", there, back)
	}
}

// TestWorstOfSeveral has two verdicts of one word on a part: it is worse when the second goes further beyond its
// limit, and when something graver is not proven beside it.
func TestWorstOfSeveral(t *testing.T) {
	at := &schema.Fuse{Head: schema.Head{Addr: "fuse.main"}}
	over := func(a float64) lint.Verdict {
		return lint.Verdict{Subject: at, Outcome: lint.Violated, Word: lint.Notice, Numbers: []derive.Number{{Value: 10, Unit: "A"}, {Value: a, Unit: "A"}}}
	}
	open := lint.Verdict{Subject: at, Outcome: lint.NotProven, Word: lint.Danger}
	of := func(vs ...lint.Verdict) Answers {
		return Of(&check.Report{Verdicts: map[string][]lint.Verdict{"x/y": vs}})
	}
	for _, c := range []struct {
		name    string
		was, is Answers
		worse   int
	}{
		{"the second further", of(over(15), over(12)), of(over(15), over(90)), 1},
		{"in another order", of(over(15), over(12)), of(over(12), over(15)), 0},
		{"a graver question beside it", of(over(15)), of(over(15), open), 1},
		{"that was there", of(over(15), open), of(open, over(15)), 0},
	} {
		if got := len(c.is.Worse(c.was)); got != c.worse {
			t.Errorf("%s: %d worse, want %d", c.name, got, c.worse)
		}
	}
	two := []derive.Number{{Name: "rating", Value: 10, Unit: "A"}, {Name: "rating", Value: 20, Unit: "A"}}
	if p := moved(two, two); len(p) != 0 {
		t.Errorf("the same figures moved: %v", p)
	}
}

// TestLost has what was violated: it is lost where it is not proven, and where what is left has something graver beside
// it that is not.
func TestLost(t *testing.T) {
	of := func(o lint.Outcome, word, beside lint.Severity) Answer {
		return Answer{Verdict: lint.Verdict{Outcome: o, Word: word}, Unproven: beside}
	}
	bad, open := lint.Violated, lint.NotProven
	for _, c := range []struct {
		name    string
		was, is Answer
		lost    bool
	}{
		{"not proven", of(bad, lint.Danger, 0), of(open, lint.Notice, lint.Notice), true},
		{"held", of(lint.Holds, 0, 0), of(open, lint.Danger, lint.Danger), false},
		{"holds", of(bad, lint.Danger, 0), of(lint.Holds, 0, 0), false},
		{"less grave, and a danger beside it not proven", of(bad, lint.Danger, 0), of(bad, lint.Notice, lint.Danger), true},
		{"that was beside it before", of(bad, lint.Danger, lint.Danger), of(bad, lint.Notice, lint.Danger), false},
		{"less grave", of(bad, lint.Danger, 0), of(bad, lint.Notice, 0), false},
	} {
		if got := lost(c.was, c.is); got != c.lost {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestLostWithItsCause has a rule that tells a violation of its own apart, and with a figure taken out says of the part as a
// whole that it is not proven: that is no cure. What was not proven before, for the same want, has no part in it.
func TestLostWithItsCause(t *testing.T) {
	at := &schema.Fuse{Head: schema.Head{Addr: "fuse.main"}}
	v := func(o lint.Outcome, cause, message string) lint.Verdict {
		return lint.Verdict{Subject: at, Outcome: o, Word: lint.Warning, Cause: cause, Message: message}
	}
	of := func(vs ...lint.Verdict) *check.Report {
		r := &check.Report{Verdicts: map[string][]lint.Verdict{"x/judged": vs}}
		r.Summary.States.Complete = true
		return r
	}
	bad, open, unsized := v(lint.Violated, "return", "thin"), v(lint.NotProven, "", "no current"), v(lint.NotProven, "", "no size")
	for _, c := range []struct {
		name         string
		was, is      *check.Report
		lost, better int
	}{
		{"held as a whole", of(bad, v(lint.Holds, "", "")), of(unsized), 1, 0},
		{"not proven as a whole for another want", of(bad, open), of(unsized), 1, 0},
		{"for the same want", of(bad, open), of(open), 0, 1},
		{"cured", of(bad, v(lint.Holds, "", "")), of(v(lint.Holds, "", "")), 0, 1},
		{"on another part", of(bad), of(lint.Verdict{Subject: &schema.Fuse{Head: schema.Head{Addr: "fuse.spare"}}, Outcome: lint.NotProven, Word: lint.Warning}), 0, 1},
	} {
		d := Between(&schema.Plan{}, &schema.Plan{}, c.was, c.is, []*lint.Rule{rule})
		if len(d.Lost) != c.lost || len(d.Better) != c.better || c.lost > 0 && (d.Lost[0].Before.Message != "thin" || d.Lost[0].After.Message != "no size") {
			t.Errorf("%s: %+v", c.name, d)
		}
	}
}

// TestStrayed has answers as ill as before that rest on other figures: more of what is drawn or of volts is worse, less
// of what withstands it; of what has another unit any move may be, and counts where an edit is weighed.
func TestStrayed(t *testing.T) {
	n := func(symbol, unit string, v float64) derive.Number {
		return derive.Read("x", symbol, v, unit, "fuse.a", "rating", hcl.Range{})
	}
	of := func(o lint.Outcome, list ...derive.Number) Answer {
		return Answer{Verdict: lint.Verdict{Outcome: o, Word: lint.Warning, Numbers: list}}
	}
	open, bad := lint.NotProven, lint.Violated
	for _, c := range []struct {
		name      string
		was, is   Answer
		sure, any bool
	}{
		{"more volts over a load whose most is not known", of(open, n("Vout", "V", 12.5)), of(open, n("Vrest", "V", 54)), true, true},
		{"fewer", of(open, n("Vout", "V", 54)), of(open, n("Vrest", "V", 12.5)), false, false},
		{"a larger fuse before a wire of no size", of(open, n("In", "A", 5)), of(open, n("In", "A", 15)), true, true},
		{"a thicker wire", of(open, n("Iz", "A", 20)), of(open, n("Iz", "A", 40)), false, false},
		{"a thinner one", of(open, n("Iz", "A", 40)), of(open, n("Iz", "A", 20)), true, true},
		{"a larger fault that a wire bears for less time", of(bad, n("Ipf", "A", 764), n("t", "s", 0.36)), of(bad, n("Ipf", "A", 852), n("t", "s", 0.29)), true, true},
		{"less time alone", of(bad, n("Ipf", "A", 764), n("t", "s", 0.36)), of(bad, n("Ipf", "A", 764), n("t", "s", 0.29)), false, true},
		{"a thicker wire, on which more flows and that bears it longer", of(bad, n("Ipf", "A", 764), n("tw", "s", 0.36)), of(bad, n("Ipf", "A", 1200), n("tw", "s", 0.9)), false, false},
		{"a longer run, which less flows at the end of", of(bad, n("L", "m", 0.8), n("Ipf", "A", 1200), n("tw", "s", 0.3)), of(bad, n("L", "m", 8), n("Ipf", "A", 300), n("tw", "s", 5)), true, true},
		{"a better feed, on which it bears it less long", of(bad, n("Ipf", "A", 764), n("tw", "s", 0.36)), of(bad, n("Ipf", "A", 852), n("tw", "s", 0.29)), true, true},
		{"a device that never opens", of(bad, n("t", "s", 1), n("t", "s", 12)), of(bad, n("t", "s", 1), n("t", "s", math.Inf(1))), true, true},
		{"a smaller battery without a switch", of(bad, n("C", "Ah", 280)), of(bad, n("C", "Ah", 200)), false, false},
		{"a larger one", of(bad, n("C", "Ah", 200)), of(bad, n("C", "Ah", 280)), true, true},
		{"a hair", of(open, n("Vout", "V", 12.5)), of(open, n("Vout", "V", 12.6)), false, false},
		{"what holds", of(lint.Holds, n("Vout", "V", 12.5)), of(lint.Holds, n("Vout", "V", 54)), false, false},
		{"what has a limit of its own kind", of(bad, n("Iz", "A", 20), n("I", "A", 30)), of(bad, n("Iz", "A", 20), n("I", "A", 40)), false, false},
	} {
		if got := strayed(c.is, c.was, false); got != c.sure {
			t.Errorf("%s, for sure: %v", c.name, got)
		}
		if got := strayed(c.is, c.was, true); got != c.any {
			t.Errorf("%s, any: %v", c.name, got)
		}
	}
}

// TestUnfinishedIsNotCompared has a run that was stopped: what it did not ask is neither better nor worse.
func TestUnfinishedIsNotCompared(t *testing.T) {
	for _, side := range []string{"old", "new"} {
		d := difference(t, "a: 10 A violated danger", "a: 10 A violated danger")
		old, is := d.Old, d.New
		if side == "old" {
			old.Failures, old.Verdicts = []string{"stopped"}, nil
		} else {
			is.Failures, is.Verdicts = []string{"stopped"}, nil
		}
		got := Between(&schema.Plan{}, &schema.Plan{}, old, is, nil)
		if len(got.Left) != 1 || len(got.Better)+len(got.Worse)+len(got.Unproven)+len(got.Same) > 0 {
			t.Errorf("%s: %+v", side, got)
		}
	}
}

// TestFiguresTakenOut takes out the figure that a finding is measured by: the rule holds without it, and nothing is cured.
func TestFiguresTakenOut(t *testing.T) {
	plan := func(figure string) (*schema.Plan, *check.Report) {
		p, diags := schema.Decode("tern.wiring.hcl", []byte("system \"tern\" {}\nload \"fan\" {\n  draw = \"1 A\"\n  "+figure+"\n}\n"), nil)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		return p, check.Run(p, []*lint.Rule{small}, check.Options{})
	}
	for _, c := range []struct {
		figure string
		lost   int
	}{{"", 1}, {`max_fuse = "20 A"`, 0}} {
		oldPlan, old := plan(`max_fuse = "5 A"`)
		newPlan, is := plan(c.figure)
		d := Between(oldPlan, newPlan, old, is, []*lint.Rule{small})
		if len(d.Lost) != c.lost || len(d.Lost)+len(d.Better) != 1 || d.Reaches(lint.Warning) != (c.lost > 0) {
			t.Errorf("%q: lost %+v, better %+v", c.figure, d.Lost, d.Better)
		}
	}
}

// small is violated by loads whose maker allows less than 10 A.
var small = &lint.Rule{ID: "x/small", Words: []lint.Severity{lint.Warning}, Run: func(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, l := range p.Plan.Loads {
		v := lint.Verdict{Subject: l, Outcome: lint.Holds, Word: lint.Warning, Message: "small"}
		if l.MaxFuse.Set && l.MaxFuse.Value < 10 {
			v.Outcome, v.Numbers = lint.Violated, []derive.Number{derive.Read("most", "Imax", l.MaxFuse.Value, "A", l.Addr, "max_fuse", l.MaxFuse.Range)}
		}
		out = append(out, v)
	}
	return out
}}

func TestSays(t *testing.T) {
	plan, diags := schema.Decode("tern.wiring.hcl", []byte("system \"tern\" {}\nload \"fan\" { power = \"12 W\" }\n"), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	for attr, want := range map[string]bool{"power": true, "draw": true, "surge": false} {
		if says(plan.Block("load.fan"), attr) != want {
			t.Errorf("%s: %v", attr, !want)
		}
	}
}
