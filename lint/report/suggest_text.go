package report

import (
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/lint/explain"
	"ferrule/lint/suggest"
	"ferrule/lint/term"
	"ferrule/schema"
)

// Suggestions in text: the finding, then each way to clear it, as labelled lines and a diff.
//
//	do      what to change                     needs   what the parts must be proven to be
//	from    whose figures are used             sketch  why it is a sketch and no more
//	before  the deciding figures now           after   the same figures with the change
//	also    other findings that are gone       takes   how much changes
//	left    where the same stands still

// standing says what each kind of suggestion is worth.
var standing = map[suggest.Kind]string{
	suggest.SameCircuit: "only words change: the network and every number are what they were",
	suggest.Verified:    "all rules were asked again over all states: this finding is gone, and nothing that is known is worse",
	suggest.Sketch:      "not to be built as it stands",
}

// Suggestions writes what clears one finding.
func Suggestions(w io.Writer, d *suggest.Desk, f *check.Finding, ways suggest.Ways, s Style) error {
	t := newText(s)
	t.about(f)
	for i, x := range ways.List {
		t.suggestion(fmt.Sprintf("Suggestion %d of %d", i+1, len(ways.List)), x)
		t.diff(d.Diff(x))
	}
	if len(ways.List) == 0 {
		t.none(f, ways)
	} else {
		t.bounded(ways)
	}
	return t.end(w, d)
}

// Survey writes the best suggestion for each finding in a line or two.
func Survey(w io.Writer, d *suggest.Desk, best func(*check.Finding) suggest.Ways, s Style) error {
	t := newText(s)
	for _, f := range d.Report.Findings {
		if f.Waived != nil {
			continue
		}
		t.about(f)
		ways := best(f)
		if len(ways.List) == 0 || ways.Cut && !ways.Good() {
			t.none(f, ways)
			continue
		}
		t.told(ways.List[0])
		t.bounded(ways)
		t.label("more", fmt.Sprintf("ferrule suggest %s --finding %d", quoted(d.Report.File), f.Number))
		t.line("")
	}
	if len(d.Report.Findings) == 0 {
		t.line("There are no findings.\n")
	}
	return t.end(w, d)
}

// Proposal writes what clears as much of a plan as can be cleared together.
func Proposal(w io.Writer, d, after *suggest.Desk, all []suggest.Accepted, s Style) error {
	t := newText(s)
	for _, x := range all {
		t.aboutIn(d.Plan, x.Finding)
		t.told(x.Suggestion)
		t.line("")
	}
	t.diff(d.DiffTo(after))
	t.line("")
	t.labelled("Before", counts(&d.Report.Summary, false))
	t.labelled("After", counts(&after.Report.Summary, false))
	for _, f := range after.Report.Findings {
		if f.Waived == nil {
			t.labelled("Left", fmt.Sprintf("%s %s at %s", f.Severity, f.Rule.ID, f.Verdict.Subject.Header().Addr))
		}
	}
	t.line("")
	return t.end(w, d)
}

func newText(s Style) *text {
	t := &text{Style: s}
	t.Width = max(s.Width, 40)
	return t
}

// about is the head of a finding.
func (t *text) about(f *check.Finding) { t.aboutAt(f.Verdict.Subject, f) }

// aboutIn is the head of a finding on a later text of a plan, with the place that its part has in the plan as it was.
func (t *text) aboutIn(plan *schema.Plan, f *check.Finding) {
	t.aboutAt(plan.Block(f.Verdict.Subject.Header().Addr), f)
}

func (t *text) aboutAt(b schema.Block, f *check.Finding) {
	rule := f.Rule.ID
	if f.Verdict.Outcome == lint.NotProven {
		rule += ", not proven"
	}
	place := ""
	if b != nil {
		at := lint.Where(b)
		place = fmt.Sprintf("%s:%d", at.Filename, at.Start.Line)
	}
	t.head(f.Severity.String(), rule, place)
	t.hung(strings.Repeat(" ", margin), term.Clean(f.Message()))
}

// unlooked stands in place of suggestions that there was no time to look for.
const unlooked = "not finished: the time was over before every change was tried"

// unplaced stands in place of suggestions for a plan in JSON.
const unplaced = "edits are made in the plan language's own syntax, and this plan is written in JSON: nothing was tried"

// untried stands in place of a good suggestion where a bound on the work was met first.
const untried = "none of the changes that were tried clears this, and others were left untried: there are more than are tried for one finding"

func (t *text) none(f *check.Finding, ways suggest.Ways) {
	s := "none of the changes that ferrule tries clears this; what would, in words: " + f.Rule.Offer
	switch {
	case ways.Cut:
		s = unlooked
	case ways.JSON:
		s = unplaced
	case ways.Left:
		s = untried
	case len(f.Rule.Offers) == 0:
		s = "ferrule has no change to try for this rule; what clears it in words: " + f.Rule.Offer
	}
	t.label("none", s)
	t.line("")
}

func (t *text) bounded(ways suggest.Ways) {
	if ways.Left {
		t.label("left", untried)
	}
}

func (t *text) suggestion(head string, x suggest.Suggestion) {
	t.line("")
	t.hung("", head+": "+x.Kind.String()+". "+capital(standing[x.Kind])+".")
	t.told(x)
	t.label("from", strings.Join(x.Sources, "; "))
	if x.Kind != suggest.Sketch {
		before, after := sides(x)
		t.label("before", before)
		t.label("after", after)
	}
	wire := derive.Text(x.Cost.Metres, "m") + " of wire"
	if n := x.Cost.Unmeasured; n > 0 {
		wire += " and " + plural(n, "wire", "wires") + " of unwritten length"
	}
	t.label("takes", fmt.Sprintf("%s, %s, %s", plural(x.Cost.Parts, "part", "parts"), wire, plural(x.Cost.Ratings, "other figure", "other figures")))
}

// told is what to do and on what it depends.
func (t *text) told(x suggest.Suggestion) {
	t.label("do", strings.Join(x.Steps, " "))
	t.label("sketch", x.Reason)
	t.label("needs", strings.Join(x.Needs, " "))
	if len(x.Clears) > 0 {
		var ns []string
		for _, n := range x.Clears {
			ns = append(ns, fmt.Sprint(n))
		}
		word := "findings "
		if len(ns) == 1 {
			word = "finding "
		}
		t.label("also", word+lint.And(ns...)+" gone with it")
	}
	if n := len(x.Stays); n > 0 {
		t.label("left", fmt.Sprintf("the same at %s, folded under this finding until now", lint.And(x.Stays...)))
	}
	if len(x.Surfaces) > 0 {
		t.label("left", fmt.Sprintf("%s, which this does not clear", lint.And(x.Surfaces...)))
	}
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// sides are the figures that decide, before and after: those that have the same name on either side, and the
// last that decide where there are none.
func sides(x suggest.Suggestion) (before, after string) {
	var was, is []derive.Number
	for _, n := range x.Numbers {
		v := derive.Number{Name: n.Quantity, Value: n.Value, Unit: n.Unit}
		if n.When == "before" {
			was = append(was, v)
		} else {
			is = append(is, v)
		}
	}
	if len(is) == 0 && len(was) > 0 {
		return shown(was), "nothing of the kind is left to measure"
	}
	if both := both(was, is); len(both) > 0 {
		was, is = both, along(is, both)
	}
	return shown(was), shown(is)
}

// both are the figures whose names another list has too.
func both(list, other []derive.Number) []derive.Number {
	var out []derive.Number
	for _, n := range list {
		if slices.ContainsFunc(other, func(o derive.Number) bool { return unnamed(o) == unnamed(n) }) {
			out = append(out, n)
		}
	}
	return out
}

// label is a part's own name in that of a figure: a suggestion may change it.
var label = regexp.MustCompile(`"[^"]*"`)

func unnamed(n derive.Number) string { return label.ReplaceAllString(n.Name, `""`) }

// along are the figures of a list in the order of the names of another.
func along(list, names []derive.Number) []derive.Number {
	var out []derive.Number
	for _, n := range names {
		i := slices.IndexFunc(list, func(o derive.Number) bool { return unnamed(o) == unnamed(n) })
		out = append(out, list[i])
	}
	return out
}

// diff writes a diff as it is, so that it can be applied; control bytes of a plan never reach a terminal.
func (t *text) diff(s string) {
	if s == "" {
		return
	}
	t.line("")
	t.WriteString(Shown(s, t.Style))
}

// Shown is a diff for an output: its lines escaped for a terminal, as they are for a program.
func Shown(diff string, s Style) string {
	if !s.Terminal {
		return diff
	}
	var b strings.Builder
	for l := range strings.Lines(diff) {
		b.WriteString(term.Clean(strings.TrimRight(l, "\r\n")) + "\n")
	}
	return b.String()
}

// end closes with what every report closes with.
func (t *text) end(w io.Writer, d *suggest.Desk) error {
	if !strings.HasSuffix(t.String(), "\n\n") {
		t.line("")
	}
	if d.Stopped() {
		t.labelled("Not done", "the time was over before every change was tried: there may be more suggestions, and better ones.")
		t.line("")
	}
	t.line("Cautions")
	for _, c := range explain.Cautions(explain.AboutOf(d.Report)) {
		t.hung("  - ", term.Clean(c.Short))
	}
	_, err := io.WriteString(w, t.String())
	return err
}
