package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/hashicorp/hcl/v2"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/lint/suggest"
	"ferrule/lint/term"
	"ferrule/schema"
)

const tern = `
system "tern" {
  title = "Tern"
}

source "pack" {
  kind      = "battery"
  label     = "Pack"
  removable = true
}

fuse "main" {
  label = "Main"
}

fuse "spare" {
}

conductor "feed" {
  label = "Pack feed"
  from  = source.pack
  to    = fuse.main.line
}

waiver "spare" {
  rule   = "overcurrent/too-big"
  at     = fuse.spare
  reason = "a spare"
  by     = "the owner"
  until  = "2026-12-01"
}
`

var update = flag.Bool("update", false, "write the golden files anew")

var day = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

// rule answers for one fuse or wire after another what it is told to.
func rule(id string, answers ...lint.Verdict) *lint.Rule {
	return &lint.Rule{
		ID: id, Claim: "A fuse is bigger than its wire can take.", Words: []lint.Severity{lint.Danger}, Subject: "fuse", When: "w", Why: "w", Numbers: "n",
		Not: "n", Offer: "Fit a smaller fuse, or a thicker wire.", Since: "0.1", Remedy: true, Harm: true,
		Cites: []lint.Citation{{Ref: "33 CFR 183.455(b)", Standing: lint.FromMemory, Note: "good practice outside the boats it binds"}, {Ref: "common practice", Standing: lint.CommonPractice}},
		Run: func(p *lint.Pass) []lint.Verdict {
			for i := range answers {
				answers[i].Subject = p.Plan.Block(answers[i].Cause)
			}
			return answers
		},
	}
}

func numbers() []derive.Number {
	base := derive.LookUp("table ampacity", "It", 50, "A", "33 CFR 183.425 Table 5", derive.Assume("insulation", "Tins", 60, "C", "conductor.feed", "insulation", "the lowest column"))
	length := derive.Read("length of \"Pack feed\"", "L", 2.1, "m", "conductor.feed", "length", hcl.Range{Filename: "tern.wiring.hcl", Start: hcl.Pos{Line: 21, Column: 11}})
	iz := derive.Compute("ampacity of \"Pack feed\"", "Iz", 40, "A", "Iz = It x kT", base, derive.LookUp("heat factor", "kT", 0.8, "", "33 CFR 183.425 Table 5"))
	return []derive.Number{length, iz, derive.Compute("fault at the far end", "If", math.Inf(1), "A", "bolted")}
}

func rules() []*lint.Rule {
	big := rule("overcurrent/too-big",
		lint.Verdict{Cause: "conductor.feed", Outcome: lint.Violated, Word: lint.Danger, Message: `"Pack feed" (8 AWG, 2.1 m) meets source "Pack" with no overcurrent device in the first 178 mm; the first one on the way is "Main", 2.1 m off, behind a fault of 1 420 A.`,
			State: []lint.Position{{Addr: "source.pack", Position: "present"}, {Addr: "switch.select", Position: "pack>aux (overlap)"}}, Numbers: numbers(), Path: []string{"source.pack.pos", "fuse.main.line.pos"}, Related: []string{"source.pack"}},
		lint.Verdict{Cause: "fuse.main", Outcome: lint.NotProven, Word: lint.Danger, Message: `How big "Main" is, is not written.`, Missing: []lint.Missing{{Subject: "fuse.main", Attribute: "rating"}}},
		lint.Verdict{Cause: "fuse.spare", Outcome: lint.Violated, Word: lint.Danger, Message: `"spare" is big.`},
		lint.Verdict{Cause: "source.pack", Outcome: lint.Holds, Numbers: numbers()},
	)
	big.Folds = []string{"conductor/too-thin"}
	thin := rule("conductor/too-thin", lint.Verdict{Cause: "conductor.feed", Outcome: lint.Violated, Word: lint.Caution, Message: "It is thin."})
	thin.Remedy, thin.Harm = false, false
	late := rule("conductor/late", lint.Verdict{Cause: "fuse.main", Outcome: lint.NotProven, Word: lint.Warning, Message: "Late?", Missing: []lint.Missing{{Subject: "fuse.main", Attribute: "rating"}}})
	return []*lint.Rule{big, thin, late}
}

func run(t *testing.T, file, src string, rules ...*lint.Rule) *Run {
	t.Helper()
	plan, diags := schema.Decode(file, []byte(src), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return &Run{Version: "test", Plans: []*check.Report{check.Run(plan, rules, check.Options{Today: day})}}
}

func errorsOf(t *testing.T, file, src string) []*hcl.Diagnostic {
	t.Helper()
	_, diags := schema.Decode(file, []byte(src), nil)
	if len(diags) == 0 {
		t.Fatal("it should have errors")
	}
	return diags
}

func textOf(t *testing.T, r *Run, s Style) string {
	t.Helper()
	var b strings.Builder
	if err := Text(&b, r, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextGolden(t *testing.T) {
	got := textOf(t, run(t, "tern.wiring.hcl", tern, rules()...), Style{Width: 80})
	const file = "testdata/tern.txt"
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), got); d != "" {
		t.Error(d)
	}
}

func TestTextFits(t *testing.T) {
	for _, width := range []int{0, 40, 57, 80, 100} {
		for line := range strings.Lines(textOf(t, run(t, "tern.wiring.hcl", tern, rules()...), Style{Width: width})) {
			if line = strings.TrimSuffix(line, "\n"); term.Width(line) > max(width, 40) || strings.TrimRight(line, " ") != line {
				t.Errorf("at %d columns: %q", width, line)
			}
		}
	}
}

func TestColourIsOnlyAdded(t *testing.T) {
	t.Setenv("NO_COLOR", "1") // who asks decides; the environment is read elsewhere
	r := run(t, "tern.wiring.hcl", tern, rules()...)
	plain, coloured := textOf(t, r, Style{Width: 80}), textOf(t, r, Style{Width: 80, Colour: true})
	if strings.Contains(plain, "\x1b") || !strings.Contains(coloured, "\x1b[38;5;196mDANGER\x1b[") {
		t.Errorf("plain: %v, coloured:\n%s", strings.Contains(plain, "\x1b"), coloured)
	}
	for i := strings.Index(coloured, "\x1b"); i >= 0; i = strings.Index(coloured, "\x1b") {
		coloured = coloured[:i] + coloured[i+strings.IndexByte(coloured[i:], 'm')+1:]
	}
	if coloured != plain {
		t.Errorf("without its colours the text differs:\n%s", cmp.Diff(plain, coloured))
	}
}

// hostile is a plan, and a file name, that try to steer a terminal wherever text of theirs is shown.
func hostile(t *testing.T) *Run {
	const evil = "\\u001b[2J\\u202e\\u0007\\u200b\\u009b31m\\u2066\\n"
	src := strings.NewReplacer(`"Pack feed"`, `"`+evil+`"`, `"a spare"`, `"`+evil+`"`, `"Tern"`, `"`+evil+`"`).Replace(tern)
	feed := rule("overcurrent/too-big", lint.Verdict{Cause: "conductor.feed", Outcome: lint.Violated, Word: lint.Danger},
		lint.Verdict{Cause: "fuse.spare", Outcome: lint.Violated, Word: lint.Danger, Message: "m"})
	ask := feed.Run
	feed.Run = func(p *lint.Pass) []lint.Verdict {
		out := ask(p)
		name := p.Plan.Block("conductor.feed").Header().Named()
		out[0].Message = lint.Quote(p.Plan.Block("conductor.feed"))
		out[0].State = []lint.Position{{Addr: "switch.x", Position: name}}
		out[0].Related, out[0].Path = []string{name}, []string{name}
		out[0].Numbers = []derive.Number{derive.Assume(name, name, 1, "A", name, name, name)}
		return out
	}
	r := run(t, "a\x1b[31m\n\u202e'.wiring.hcl", src, feed)
	r.Kits = []string{"kit\x1b]0;x\a"}
	r.Errors = errorsOf(t, "b\x1b[31m.wiring.hcl", "fuse \"\x1b[1m\" {\n  \u202erating = 1\n")
	return r
}

func TestEscaping(t *testing.T) {
	r := hostile(t)
	text := textOf(t, r, Style{Width: 80})
	var b bytes.Buffer
	if err := JSON(&b, r); err != nil {
		t.Fatal(err)
	}
	for what, s := range map[string]string{"text": text, "json": b.String()} {
		for _, c := range s {
			if c != '\n' && !term.Shown(c) {
				t.Errorf("the %s shows %U", what, c)
			}
		}
	}
	if !strings.Contains(text, `\x1b[2J\u202e\x07\u200b\x9b31m\u2066\n`) {
		t.Errorf("what was escaped cannot be seen:\n%s", text)
	}
	var back jsonReport
	if err := json.Unmarshal(b.Bytes(), &back); err != nil {
		t.Fatal(err)
	}
	if got := back.Plans[0].File; got != r.Plans[0].File {
		t.Errorf("a reader of the JSON gets %q", got)
	}
}

// validate holds a real output against the schema that goes with it.
func validate(t *testing.T, r *Run) {
	t.Helper()
	var b bytes.Buffer
	if err := JSON(&b, r); err != nil {
		t.Fatal(err)
	}
	meets(t, Schema, &b)
}

// meets validates a document against a schema.
func meets(t *testing.T, schema []byte, document *bytes.Buffer) {
	t.Helper()
	form, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	if err := c.AddResource("mem:///report.schema.json", form); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("mem:///report.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(document)
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.Validate(value); err != nil {
		t.Error(err)
	}
}

func TestJSONMeetsItsSchema(t *testing.T) {
	validate(t, &Run{Version: "test"})
	validate(t, run(t, "tern.wiring.hcl", tern, rules()...))
	validate(t, run(t, "empty.wiring.hcl", "system \"s\" {\n}\n"))
	validate(t, hostile(t))
	failed := run(t, "tern.wiring.hcl", tern, rule("x/fails", lint.Verdict{Cause: "nowhere"}))
	if len(failed.Plans[0].Failures) == 0 {
		t.Error("the run should have failed")
	}
	validate(t, failed)
}

// TestJSONOfSuggestions has one of each kind, and findings for which there is none.
func TestJSONOfSuggestions(t *testing.T) {
	r := run(t, "tern.wiring.hcl", tern, rules()...)
	before := derive.Read("rating", "In", 40, "A", "fuse.main", "rating", hcl.Range{}).Step()
	r.Suggestions = map[*check.Finding]suggest.Ways{r.Plans[0].Findings[0]: {List: []suggest.Suggestion{
		{Kind: suggest.Verified, Steps: []string{"Fit it.", "Lay it."}, Needs: []string{"Read it."}, Edits: []suggest.Edit{{File: "x", Start: 1, End: 2, Text: "z\x1b"}},
			Numbers: []suggest.Figure{{When: "before", Step: before}, {When: "after", Step: before}}},
		{Kind: suggest.Sketch, Steps: []string{"Ask."}, Reason: "who knows"}, {Kind: suggest.SameCircuit, Steps: []string{"Name it."}},
	}}}
	validate(t, r)
	var b bytes.Buffer
	if err := JSON(&b, r); err != nil {
		t.Fatal(err)
	}
	var got jsonReport
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	all := got.Plans[0].Findings
	want := []jsonSuggestion{
		{"verified", "Fit it. Lay it. Read it.", "", []jsonEdit{{1, 2, "z\x1b"}}, []string{"rating 40 A"}, []string{"rating 40 A"}},
		{"sketch", "Ask.", "who knows", []jsonEdit{}, []string{}, []string{}}, {"same-circuit", "Name it.", "", []jsonEdit{}, []string{}, []string{}},
	}
	if d := cmp.Diff(want, all[0].Suggestions); d != "" || all[0].Suggestion != "verified" {
		t.Errorf("%s: %s", all[0].Suggestion, d)
	}
	for _, f := range all[1:] {
		if f.Suggestion != "none" || len(f.Suggestions) != 0 {
			t.Errorf("%s was asked for and is not there: %s", f.Subject, f.Suggestion)
		}
	}
}

// TestSuggestionsCut has a search that was ended early: that nothing was found must not read as if there
// were nothing.
func TestSuggestionsCut(t *testing.T) {
	r := run(t, "tern.wiring.hcl", tern, rules()...)
	f := r.Plans[0].Findings[0]
	sketch := suggest.Suggestion{Kind: suggest.Sketch, Steps: []string{"Ask."}, Reason: "who knows"}
	r.Suggestions = map[*check.Finding]suggest.Ways{f: {List: []suggest.Suggestion{sketch}, Cut: true}}
	for _, x := range r.Plans[0].Findings[1:] {
		r.Suggestions[x] = suggest.Ways{Cut: true}
	}
	validate(t, r)
	var b, text bytes.Buffer
	if err := JSON(&b, r); err != nil {
		t.Fatal(err)
	}
	var got jsonReport
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	for _, x := range got.Plans[0].Findings {
		if x.Suggestion == "sketch" || x.Suggestion == "none" && x.Number == f.Number {
			t.Errorf("finding %d: %s, before everything was tried", x.Number, x.Suggestion)
		}
	}
	if !slices.ContainsFunc(got.Errors, func(e jsonError) bool { return e.Summary == "Suggestions not finished" }) {
		t.Errorf("errors do not say so: %v", got.Errors)
	}
	if err := Text(&text, r, Style{Width: 100}); err != nil {
		t.Fatal(err)
	}
	if s := text.String(); !strings.Contains(s, unlooked) || !strings.Contains(s, "Not done") || strings.Contains(s, "nothing that ferrule knows") {
		t.Errorf("the text does not say so:\n%s", s)
	}
}

// TestSuggestionsBounded has a search that met its bound with nothing good: it may not read as if there were nothing.
func TestSuggestionsBounded(t *testing.T) {
	r := run(t, "tern.wiring.hcl", tern, rules()...)
	r.Suggestions = map[*check.Finding]suggest.Ways{}
	for _, x := range r.Plans[0].Findings {
		r.Suggestions[x] = suggest.Ways{Left: true}
	}
	validate(t, r)
	asked := 0
	for _, f := range planOf(r.Plans[0], r.Suggestions).Findings {
		if !r.Plans[0].Findings[f.Number-1].Rule.Remedy {
			continue
		}
		if asked++; f.Suggestion == "none" {
			t.Errorf("finding %d: none, before everything was tried", f.Number)
		}
	}
	if asked == 0 {
		t.Error("no finding has a remedy")
	}
	var text bytes.Buffer
	if err := Text(&text, r, Style{Width: 400}); err != nil || !strings.Contains(text.String(), untried) {
		t.Errorf("the text does not say so: %v\n%s", err, text.String())
	}
}

func TestJSONSaysWhatTheReportDoes(t *testing.T) {
	var b bytes.Buffer
	if err := JSON(&b, run(t, "tern.wiring.hcl", tern, rules()...)); err != nil {
		t.Fatal(err)
	}
	var got jsonReport
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	plan := got.Plans[0]
	want := jsonSummary{Danger: 1, Warning: 1, NotProven: 1, Waived: 1, Checks: 6, Holds: 1, States: jsonStates{"2", plan.Summary.States.Distinct, plan.Summary.States.Examined, true}}
	if plan.Summary != want {
		t.Errorf("summary %+v", plan.Summary)
	}
	first := plan.Findings[0]
	if first.Waived != nil {
		first = plan.Findings[1]
	}
	if d := cmp.Diff(map[string]string{"source.pack": "present", "switch.select": "pack>aux (overlap)"}, first.State); d != "" {
		t.Error(d)
	}
	if len(first.Steps) != 6 || *first.Steps[0].Value != 2.1 || first.Steps[0].Source != "plan: conductor.feed length, tern.wiring.hcl:21" || first.Steps[5].Value != nil {
		t.Errorf("steps %+v", first.Steps)
	}
	if d := cmp.Diff([]jsonFolded{{"conductor/too-thin", "conductor.feed", "It is thin."}}, first.Folded); d != "" {
		t.Error(d)
	}
	if c := first.Citations[0]; c.Ref != "33 CFR 183.455(b)" || !strings.HasPrefix(c.Note, "from memory, not opened") {
		t.Errorf("citation %+v", c)
	}
	last := plan.Findings[len(plan.Findings)-1]
	if last.Verdict != "not-proven" || last.Severity != "warning" || last.RuleSeverity != "danger" || !strings.Contains(last.Message, "2 rules wait on `rating` of fuse.main.") {
		t.Errorf("%+v", last)
	}
	for _, f := range plan.Findings {
		if (f.Waived != nil) != (f.Subject == "fuse.spare") {
			t.Errorf("%s: waived %+v", f.Subject, f.Waived)
		}
	}
}

func TestFailuresAreSaid(t *testing.T) {
	r := run(t, "tern.wiring.hcl", tern, rule("x/fails", lint.Verdict{Cause: "nowhere"}))
	if s := textOf(t, r, Style{Width: 80}); !strings.Contains(s, "FAILED   rule x/fails") {
		t.Errorf("%s", s)
	}
	var b bytes.Buffer
	if err := JSON(&b, r); err != nil || !strings.Contains(b.String(), "rule x/fails") {
		t.Errorf("%v: %s", err, &b)
	}
}

func TestCautions(t *testing.T) {
	left := textOf(t, run(t, "tern.wiring.hcl", tern), Style{Width: 100})
	named := textOf(t, run(t, "a.wiring.hcl", "system \"s\" {\n  practice = [\"cabin\"]\n}\nsource \"shore\" {\n  kind = \"shore\"\n  voltage = \"120 V ac\"\n}\n"), Style{Width: 100})
	for _, c := range []struct {
		text string
		want bool
		part string
	}{
		{left, true, "licensed electrician"}, {left, false, "shore cords"}, {left, true, "general practice, since"},
		{named, true, "licensed electrician"}, {named, true, "shore cords"}, {named, false, "general practice, since"},
	} {
		if strings.Contains(c.text, c.part) != c.want {
			t.Errorf("%q: wanted %v in\n%s", c.part, c.want, c.text)
		}
	}
}

func TestState(t *testing.T) {
	got := state([]lint.Position{{Addr: "source.pack", Position: "absent"}, {Addr: "switch.pack", Position: "on"}, {Addr: "switch.sel", Position: "a"}, {Addr: "use.rear.switch.sel", Position: "b"}})
	if want := "source.pack = absent, switch.pack = on, sel = a, use.rear.switch.sel = b"; got != want {
		t.Errorf("%s", got)
	}
}

func TestQuoted(t *testing.T) {
	for in, want := range map[string]string{"a/b-1.hcl": "a/b-1.hcl", "my van.hcl": "'my van.hcl'", "it's": `'it'\''s'`, "$(x)": "'$(x)'", "": "''"} {
		if got := quoted(in); got != want {
			t.Errorf("%q: %s", in, got)
		}
	}
}

func TestRoughly(t *testing.T) {
	for digits, want := range map[string]string{
		"": "", "1": "1", "262144": "262144", "999999999": "999999999", "1000000000": "about 1.0e09", "12345" + strings.Repeat("0", 30): "about 1.2e34",
		"9" + strings.Repeat("9", 400): "about 1.0e401",
	} {
		if got := roughly(digits); got != want {
			t.Errorf("roughly(%q) = %q, want %q", digits, got, want)
		}
	}
}

// A run that was cut leads with that, and its silence claims no more than it looked at.
func TestCutRunSaysSo(t *testing.T) {
	r := run(t, "tern.wiring.hcl", "system \"tern\" {\n}\n")
	if s := textOf(t, r, Style{Width: 100}); strings.Contains(s, "Not done") || !strings.Contains(s, "Findings none\n") {
		t.Errorf("a whole run:\n%s", s)
	}
	r.Plans[0].Summary.States.Complete = false
	s := textOf(t, r, Style{Width: 100})
	lead, finds := strings.Index(s, "\nNot done the search ended before"), strings.Index(s, "\nFindings none in what was looked at\n")
	if lead < 0 || finds < lead || strings.Contains(s, "every question was followed to its end;") {
		t.Errorf("a run that was cut:\n%s", s)
	}
}
