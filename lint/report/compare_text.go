package report

import (
	"fmt"
	"io"
	"strings"

	"ferrule/lint"
	"ferrule/lint/compare"
	"ferrule/lint/explain"
	"ferrule/lint/term"
)

// A difference in text: what is worse first, then what was violated or held and cannot be proven any more, what is
// better, and what stands in both with numbers that moved.
//
//	before  what the old plan says of it     after  what the new one says
//	moved   a number, and what it became

// Difference writes what one plan has over another; all lists the numbers that moved in what holds too.
func Difference(w io.Writer, d *compare.Difference, old, new string, all bool, s Style) error {
	t := newText(s)
	t.hung("", term.Clean(fmt.Sprintf("%s, then %s: practice %s, checked on %s", old, new, lint.And(d.New.Practices...), d.New.Today)))
	t.line("")
	t.parts("Added", d.Added)
	t.parts("Removed", d.Removed)
	t.changes("Worse", d.Worse)
	t.changes("Was violated, cannot be proven now: nothing shows that it was cured", d.Lost)
	t.changes("Not proven any more", d.Unproven)
	t.changes("Better", d.Better)
	same := d.Same
	if !all {
		same = nil
		for _, c := range d.Same {
			if len(c.Numbers) > 0 || said(c.Before) != said(c.After) {
				same = append(same, c)
			}
		}
	}
	t.changes("As before, with other numbers or words", same)
	t.changes("Not compared: one of the runs was not finished", d.Left)
	if all {
		t.changes("Holds, with other numbers", d.Moved)
	}
	tally := fmt.Sprintf("%d; was violated, not proven now %d; not proven any more %d; better %d; as before %d; holds with other numbers %d",
		len(d.Worse), len(d.Lost), len(d.Unproven), len(d.Better), len(d.Same), len(d.Moved))
	if n := len(d.Left); n > 0 {
		tally += fmt.Sprintf("; not compared %d", n)
	}
	t.labelled("Worse", tally)
	t.labelled("Before", counts(&d.Old.Summary, d.Old.Tainted()))
	t.labelled("After", counts(&d.New.Summary, d.New.Tainted()))
	t.line("")
	t.line("Cautions")
	for _, c := range explain.Cautions(explain.AboutOf(d.New)) {
		t.hung("  - ", term.Clean(c.Short))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

func (t *text) parts(head string, addrs []string) {
	if len(addrs) > 0 {
		t.labelled(head, strings.Join(addrs, ", "))
		t.line("")
	}
}

func (t *text) changes(head string, list []compare.Change) {
	if len(list) == 0 {
		return
	}
	t.line("%s", head)
	for _, c := range list {
		word := "holds"
		if c.Counts > 0 {
			word = c.Counts.String()
		}
		t.head(word, c.Rule, c.Subject)
		before, after := said(c.Before), said(c.After)
		if c.Before.Outcome == 0 && c.Added {
			before = "the part is not in this plan"
		}
		if len(c.Gone) > 0 {
			after = left(c)
		}
		if before == after {
			t.label("both", after)
		} else {
			t.label("before", before)
			t.label("after", after)
		}
		for _, n := range c.Numbers {
			t.label("moved", fmt.Sprintf("%s: %s, then %s", n.Name, n.Before.Text(), n.After.Text()))
		}
		t.line("")
	}
}

// left says of a finding that is gone with parts what is left of the question: taking out what is wrong with a plan is one
// way to cure it, and one to lose what it was for.
func left(c compare.Change) string {
	switch {
	case c.Gone[0] == c.Subject:
		return "gone with the part: " + c.Subject + " is not in this plan"
	case c.After.Outcome == lint.Holds:
		return "holds, without " + lint.And(c.Gone...)
	}
	return "gone with " + lint.And(c.Gone...)
}

// said is an answer in words.
func said(a compare.Answer) string {
	switch a.Outcome {
	case lint.Holds:
		return "holds"
	case lint.Violated:
		return a.Message
	case lint.NotProven:
		return "not proven: " + a.Message
	}
	return "not asked of this plan"
}
