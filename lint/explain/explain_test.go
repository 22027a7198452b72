package explain

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/lint/term"
	"ferrule/schema"
)

func pageOf(t *testing.T, p *Page, width int) string {
	t.Helper()
	var b strings.Builder
	if err := p.Write(&b, width); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func contains(t *testing.T, page string, wants ...string) {
	t.Helper()
	for _, w := range wants {
		if !strings.Contains(page, w) {
			t.Errorf("no %q in\n%s", w, page)
		}
	}
}

func rule(verdict func(*lint.Pass) lint.Verdict) *lint.Rule {
	return &lint.Rule{
		ID: "conductor/thin", Claim: "A wire is thin.", Words: []lint.Severity{lint.Warning, lint.Danger}, Subject: "conductor", When: "It carries more than it can.", Why: "It burns.",
		Numbers: "Limits.", Not: "Nothing else.", Offer: "A thicker wire.", Meter: "The voltage along it.", Since: "0.1", Harm: true, Folds: []string{"conductor/drop feed"},
		Cites: []lint.Citation{
			{Ref: "33 CFR 183.425", Standing: lint.Read, Note: "table 5"},
			{Ref: "NFPA 70 310.16", Standing: lint.FromMemory, For: []string{"cabin"}},
			{Ref: "common practice", Standing: lint.CommonPractice},
		},
		Run: func(p *lint.Pass) []lint.Verdict { return []lint.Verdict{verdict(p)} },
	}
}

func TestRulePage(t *testing.T) {
	drop := &lint.Rule{ID: "conductor/drop"}
	loud := rule(nil)
	loud.Folds = append(loud.Folds, "conductor/not-there")
	contains(t, pageOf(t, RulePage(loud, []*lint.Rule{drop}), 100),
		"conductor/thin (danger, warning)\n", "\n  A wire is thin.\n", "\nViolated when\n  It carries more than it can.\n", "\nWhy it hurts\n  It burns.\n",
		"\nWhat to measure\n  The voltage along it.\n", "violation would carry, up to warning", "\nFindings it explains\n  conductor/drop (feed)\n",
		"  33 CFR 183.425: read; table 5\n", "  NFPA 70 310.16: from memory, not opened; for cabin\n", "  common practice\n")
	quiet := rule(nil)
	quiet.Meter, quiet.Folds, quiet.Harm = "", nil, false
	page := pageOf(t, RulePage(quiet, nil), 100)
	contains(t, page, "Nothing about this can be measured without risk.", "one step under")
	if strings.Contains(page, "Findings it explains") {
		t.Errorf("a heading with nothing under it:\n%s", page)
	}
}

// ampacity is a number with an assumption, a table, the plan and a formula behind it.
func ampacity() derive.Number {
	at := hcl.Range{Filename: "tern.wiring.hcl", Start: hcl.Pos{Line: 7, Column: 3}}
	ins := derive.Assume("insulation", "Tins", 60, "C", "conductor.feed", "insulation", "the lowest column")
	base := derive.LookUp("table ampacity", "It", 50, "A", "33 CFR 183.425 Table 5 (from memory)", ins)
	heat := derive.LookUp("heat factor", "kT", 0.8, "", "the same", derive.Read("ambient", "Ta", 45, "C", "system.tern", "ambient", at))
	return derive.Compute("ampacity of \"Feed\"", "Iz", 40, "A", "Iz = It x kT", base, heat)
}

func TestFindingPage(t *testing.T) {
	plan, diags := schema.Decode("tern.wiring.hcl", []byte("system \"tern\" {\n}\nfuse \"a\" {\n}\nconductor \"feed\" {\n  from = fuse.a.line\n  to = fuse.a.load\n}\n"+
		"waiver \"w\" {\n  rule = \"conductor/thin\"\n  at = conductor.feed\n  reason = \"short\"\n  by = \"the owner\"\n  until = \"2027-01-01\"\n}\n"), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	thin := rule(func(p *lint.Pass) lint.Verdict {
		return lint.Verdict{Subject: p.Plan.Conductors[0], Outcome: lint.NotProven, Word: lint.Danger, Message: "It may burn.", Numbers: []derive.Number{ampacity()},
			State: []lint.Position{{Addr: "switch.s", Position: "a>b (gap)"}}, Path: []string{"fuse.a.line.pos", "fuse.a.load.pos"}, Related: []string{"fuse.a"},
			Missing: []lint.Missing{{Subject: "conductor.feed", Attribute: "size"}, {Subject: "plan", Attribute: "states"}}}
	})
	drop := rule(func(p *lint.Pass) lint.Verdict {
		return lint.Verdict{Subject: p.Plan.Conductors[0], Outcome: lint.NotProven, Word: lint.Notice, Message: "It may drop."}
	})
	drop.ID, drop.Folds = "conductor/drop", nil
	drop.Harm = false
	r := check.Run(plan, []*lint.Rule{thin, drop}, check.Options{Today: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)})
	page := pageOf(t, FindingPage(r, r.Findings[0]), 100)
	contains(t, page,
		"WARNING conductor/thin (finding 1, tern.wiring.hcl:5)\n", "  It may burn.\n  Not proven; a violation could be a danger, so this counts as a warning.\n",
		"\nThe state\n  switch.s = a>b (gap)\n", "\nThe path\n  fuse.a.line.pos, fuse.a.load.pos\n", "\nOther parts concerned\n  fuse.a\n",
		"\nWhat is missing\n  size of conductor.feed\n  a search of all states; it met its bound\n", "\nWhat an expert would measure\n  The voltage along it.\n",
		"\nWaived\n  short; by the owner; until 2027-01-01\n", "\nCautions\n  This is a check of the plan", "licensed electrician or a certified marine or RV technician")
	if strings.Contains(page, "310.16") {
		t.Error("a citation that speaks for cabins only is shown for a plan that is none")
	}
}

func TestDerivation(t *testing.T) {
	var got []string
	for _, l := range Derivation([]derive.Number{ampacity(), ampacity()}) {
		got = append(got, l.Mark+" "+l.Text)
	}
	want := []string{
		"1. Insulation: Tins = 60 C. Assumed, insulation of conductor.feed is left out: the lowest column.",
		"2. Table ampacity: It = 50 A. Table: 33 CFR 183.425 Table 5 (from memory); from step 1.",
		"3. Ambient: Ta = 45 C. Plan: system.tern ambient, tern.wiring.hcl:7.",
		"4. Heat factor: kT = 0.8. Table: the same; from step 3.",
		"5. Ampacity of \"Feed\": Iz = 40 A. Computed: Iz = It x kT; with the numbers, 50 A x 0.8 = 40 A; from steps 2 and 4.",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s", strings.Join(got, "\n"))
	}
}

func TestPutIn(t *testing.T) {
	number := func(symbol string, v float64, unit string) derive.Number {
		return derive.Assume("n", symbol, v, unit, "a", "b", "c")
	}
	for _, c := range []struct{ formula, want string }{
		{"tw = k2S2 / I^2", "9000 A2s / (30 A)^2 = 10 s"},
		{"k2S2 over I; a note on I", "9000 A2s over 30 A = 10 s"},
		{"largest of all", ""},
		{"I1 x 2", ""},
		{"D + I", "D + 30 A = 10 s"},
	} {
		n := derive.Compute("time", "t", 10, "s", c.formula, number("k2S2", 9000, "A2s"), number("I", 30, "A"), number("D", 1, "A"), number("D", 2, "A"))
		want := strings.Replace(c.want, "9000 A2s", derive.Text(9000, "A2s"), 1)
		if got := putIn(n); got != want {
			t.Errorf("%q: %q, wanted %q", c.formula, got, want)
		}
	}
}

// TestSharedNumbers: a number that two others rest on, which two others rest on, and so on, is
// 2^40 numbers to one who follows every way and 80 to one who does not.
func TestSharedNumbers(t *testing.T) {
	from := []derive.Number{derive.Assume("n", "n", 1, "A", "a", "b", "c")}
	for i := range 40 {
		from = []derive.Number{
			derive.Compute(fmt.Sprint("left", i), "l", float64(i), "A", "sum", from...),
			derive.Compute(fmt.Sprint("right", i), "r", float64(i), "A", "sum", from...),
		}
	}
	if n := len(Derivation(from)); n != 81 {
		t.Errorf("%d steps", n)
	}
}

func TestPagesAreEscapedAndFit(t *testing.T) {
	evil := "\x1b[31m\u202e\n" + strings.Repeat("x", 90)
	p := &Page{Title: evil}
	p.add(evil, Line{evil, evil}, text(" "))
	for line := range strings.Lines(pageOf(t, p, 60)) {
		line = strings.TrimSuffix(line, "\n")
		if strings.ContainsFunc(line, func(r rune) bool { return !term.Shown(r) }) {
			t.Errorf("%q", line)
		}
	}
	if len(p.Sections[0].Lines) != 1 {
		t.Error("a line with nothing on it is kept")
	}
}

func TestCautions(t *testing.T) {
	for _, c := range []struct {
		about About
		n     int
		part  string
	}{
		{About{}, 5, "no value was assumed"},
		{About{Assumed: 1}, 5, "1 value was assumed"},
		{About{AC: true, Assumed: 7}, 6, "7 values were assumed"},
		{About{AC: true, PracticeLeft: true}, 7, "us-boat"},
	} {
		got := Cautions(c.about)
		all := ""
		for _, x := range got {
			all += x.Short + "\n"
		}
		if len(got) != c.n || !strings.Contains(all, c.part) || !strings.Contains(got[0].Short, "licensed electrician") {
			t.Errorf("%+v: %s", c.about, all)
		}
	}
}

// A phrase is no attribute and is not written as one.
func TestMissing(t *testing.T) {
	for m, want := range map[lint.Missing][2]string{
		{Subject: "fuse.main", Attribute: "rating"}:                                        {"rating of fuse.main", "`rating` of fuse.main"},
		{Subject: "conductor.a", Attribute: "a size and insulation that the table covers"}: {"a size and insulation that the table covers for conductor.a", "a size and insulation that the table covers for conductor.a"},
		{Subject: "plan", Attribute: "a simpler ring of returns"}:                          {"a simpler ring of returns", "a simpler ring of returns"},
	} {
		if got := [2]string{Missing(m), lint.Lacking(m, true)}; got != want {
			t.Errorf("%v: %q, want %q", m, got, want)
		}
	}
}
