package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/fatih/color"
	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/lint/explain"
	"ferrule/lint/suggest"
	"ferrule/lint/term"
)

// The text report: the signal word first, then rule and place, a sentence, and short labelled lines.
//
//	state  the positions that break it          shown  the figures that decide
//	code   where the rule comes from            also   findings that this one explains
//	mend   what would clear it                  try    a change that was checked, or the command that looks
//	more   the command that shows the rest             for one
//
// Colours are those of ANSI Z535 signal words: red, orange, yellow, blue. No meaning rests on them.

// Style is how a terminal wants its text.
type Style struct {
	Width    int // columns
	Colour   bool
	Terminal bool // control bytes would reach it
}

const (
	margin     = 9 // columns before the text of a finding
	mostFolded = 6 // folded findings written out
)

// Text writes the report of a run.
func Text(w io.Writer, run *Run, s Style) error {
	t := newText(s)
	t.asked, t.ways, t.json = run.Suggestions != nil, run.Suggestions, run.InJSON
	for _, p := range run.Plans {
		t.plan(p)
		if run.Cut(p) {
			t.labelled("Not done", "suggestions: the time was over before every change was tried")
			t.line("")
		}
	}
	for _, k := range run.Kits {
		t.line("%s: a kit; it was read and its references were checked. Verdicts come with the plans that use it.\n", term.Clean(k))
	}
	t.errors(run.Errors)
	if len(run.Plans) > 0 {
		t.line("Cautions")
		for _, c := range explain.Cautions(run.about()) {
			t.hung("  - ", term.Clean(c.Short))
		}
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// text is a report being written.
type text struct {
	Style
	strings.Builder
	asked bool // for suggestions
	ways  map[*check.Finding]suggest.Ways
	json  map[*check.Report]bool
}

func (t *text) line(format string, args ...any) { fmt.Fprintf(t, format+"\n", args...) }

// hung writes clean text after a head, further lines under the text.
func (t *text) hung(head, s string) {
	hang := strings.Repeat(" ", term.Width(head))
	for i, l := range term.Wrap(s, t.Width-len(hang)) {
		if i > 0 {
			head = hang
		}
		t.line("%s", strings.TrimRight(head+l, " "))
	}
}

// labelled is a line of the summary, label is a line of a finding.
func (t *text) labelled(label, s string) { t.hung(term.Pad(label, margin), term.Clean(s)) }

func (t *text) label(label, s string) {
	if s != "" {
		t.hung("  "+term.Pad(label, margin-2), term.Clean(s))
	}
}

func (t *text) plan(r *check.Report) {
	t.hung("", term.Clean(fmt.Sprintf("%s: %s, practice %s, checked on %s", r.File, r.System, lint.And(r.Practices...), r.Today)))
	t.line("")
	var waived []*check.Finding
	for _, f := range r.Findings {
		if f.Waived != nil {
			waived = append(waived, f)
			continue
		}
		t.finding(r, f)
	}
	for _, f := range waived {
		t.finding(r, f)
	}
	t.coverage(r)
	t.line("")
}

func (t *text) finding(r *check.Report, f *check.Finding) {
	rule := f.Rule.ID
	if f.Verdict.Outcome == lint.NotProven {
		rule += ", not proven"
	}
	if f.Waived != nil {
		rule += ", waived"
	}
	at := lint.Where(f.Verdict.Subject)
	t.head(f.Severity.String(), rule, fmt.Sprintf("%s:%d", at.Filename, at.Start.Line))
	t.hung(strings.Repeat(" ", margin), term.Clean(f.Message()))
	t.label("state", state(f.Verdict.State))
	t.label("shown", shown(f.Verdict.Numbers))
	for _, c := range r.Citations(f.Rule) {
		t.label("code", code(c))
	}
	for i, x := range f.Folded {
		if i == mostFolded {
			t.label("also", fmt.Sprintf("%d more", len(f.Folded)-i))
			break
		}
		t.label("also", x.Rule+" at "+x.Subject+": "+x.Message)
	}
	if f.Rule.Remedy {
		t.label("mend", f.Rule.Offer)
	}
	t.mended(r, f)
	t.label("waived", explain.Waiver(f))
	t.label("more", fmt.Sprintf("ferrule explain %s --finding %d", quoted(r.File), f.Number))
	t.line("")
}

// mended says which change was found to clear a finding, or that one can be asked for.
func (t *text) mended(r *check.Report, f *check.Finding) {
	ask := fmt.Sprintf("ferrule suggest %s --finding %d", quoted(r.File), f.Number)
	switch ways := t.ways[f]; {
	case f.Waived != nil:
	case ways.Cut && !ways.Good():
		t.label("try", unlooked)
		t.label("", ask)
	case ways.JSON:
		t.label("try", unplaced)
	case ways.Left && len(ways.List) == 0:
		t.label("try", untried)
	case len(ways.List) > 0:
		t.label("try", ways.List[0].Kind.String()+": "+strings.Join(ways.List[0].Steps, " "))
		t.label("", ask)
	case t.asked && len(f.Rule.Offers) > 0:
		t.label("try", "nothing that ferrule knows to try clears it")
	case len(f.Rule.Offers) > 0 && !t.json[r]:
		t.label("try", ask)
	}
}

// head is the first line of a finding; a place that does not fit goes on a line of its own.
func (t *text) head(word, rule, place string) {
	place = term.Clean(place)
	left := term.Pad(strings.ToUpper(word), margin) + rule
	gap := t.Width - term.Width(left) - term.Width(place)
	painted := t.paint(word, strings.ToUpper(word)) + left[len(word):]
	if gap < 2 {
		t.line("%s", painted)
		t.hung(strings.Repeat(" ", margin), place)
		return
	}
	t.line("%s%s%s", painted, strings.Repeat(" ", gap), place)
}

// paints are the signal colours, as numbers of the 256-colour palette after "38;5".
var paints = map[string]color.Attribute{"danger": 196, "warning": 208, "caution": 226, "notice": 33}

func (t *text) paint(word, s string) string {
	number, ok := paints[word]
	if !t.Colour || !ok {
		return s
	}
	c := color.New(38, 5, number)
	c.EnableColor()
	return c.Sprint(s)
}

// state writes positions without the type of part, where that leaves no doubt.
func state(ps []lint.Position) string {
	short := func(addr string) string {
		if kind, name, ok := strings.Cut(addr, "."); ok && slices.Contains([]string{"switch", "connector", "source"}, kind) {
			return name
		}
		return addr
	}
	times := map[string]int{}
	for _, p := range ps {
		times[short(p.Addr)]++
	}
	var out []string
	for _, p := range ps {
		name := short(p.Addr)
		if times[name] > 1 {
			name = p.Addr
		}
		out = append(out, name+" = "+p.Position)
	}
	return strings.Join(out, ", ")
}

// shown names the last two figures, those that decide.
func shown(ns []derive.Number) string {
	var out []string
	for _, n := range ns[max(0, len(ns)-2):] {
		out = append(out, n.Name+" "+n.Text())
	}
	return strings.Join(out, "; ")
}

// code is a citation; one from memory must not pass for one that was read.
func code(c lint.Citation) string {
	s := c.Ref
	if c.Standing == lint.FromMemory {
		s += " (" + c.Standing.String() + ")"
	}
	if c.Note != "" {
		s += ": " + c.Note
	}
	return s
}

// quoted writes a file name as one word of a command line.
func quoted(name string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("._-/+,:@%", r)
	}
	if name != "" && !strings.ContainsFunc(name, func(r rune) bool { return !plain(r) }) {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

func (t *text) errors(ds []*hcl.Diagnostic) {
	files := map[string]bool{}
	for _, d := range ds {
		files[d.Subject.Filename] = true
		t.unread(d)
	}
	if len(ds) > 0 {
		t.labelled("Errors", fmt.Sprintf("%d in %s; a plan with errors gets no verdicts", len(ds), plural(len(files), "file", "files")))
		t.line("")
	}
}

func (t *text) unread(d *hcl.Diagnostic) {
	at := d.Subject
	t.head("error", term.Clean(d.Summary), fmt.Sprintf("%s:%d:%d", at.Filename, at.Start.Line, at.Start.Column))
	t.hung(strings.Repeat(" ", margin), term.Clean(d.Detail))
	t.line("")
}
