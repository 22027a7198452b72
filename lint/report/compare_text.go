package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
	"ferrule/lint/explain"
	"ferrule/lint/term"
)

// A difference in text: what is worse first, then what was violated or held and cannot be proven any more, what is
// better, and what stands in both with numbers that moved.
//
//	before  what the old plan says of it     after  what the new one says
//	word    how grave it was, and is        moved   a number, and what it became
//	waived  what accepts it, then and now

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
	t.changes("Waived now, not cured", d.Waived)
	t.changes("Better", d.Better)
	t.changes("Waived no more", d.Unwaived)
	t.changes("As before, with other numbers or words", told(d.Same, all))
	t.changes("Not compared: one of the runs was not finished", d.Left)
	if all {
		t.changes("Holds, with other numbers", d.Moved)
	}
	t.labelled("Worse", tally(d))
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

// told are the changes of what is as grave as before that say something; all of them, where all are asked for.
func told(same []compare.Change, all bool) []compare.Change {
	return slices.DeleteFunc(slices.Clone(same), func(c compare.Change) bool {
		return !all && len(c.Numbers) == 0 && said(c.Before) == said(c.After) && waiver(c.Before) == waiver(c.After)
	})
}

// tally counts the changes; those that are rare only where there are some.
func tally(d *compare.Difference) string {
	out := fmt.Sprintf("%d; was violated, not proven now %d; not proven any more %d; better %d; as before %d; holds with other numbers %d",
		len(d.Worse), len(d.Lost), len(d.Unproven), len(d.Better), len(d.Same), len(d.Moved))
	for _, x := range []struct {
		what string
		list []compare.Change
	}{{"waived now", d.Waived}, {"waived no more", d.Unwaived}, {"not compared", d.Left}} {
		if n := len(x.list); n > 0 {
			out += fmt.Sprintf("; %s %d", x.what, n)
		}
	}
	return out
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
		if len(c.Unwritten) > 0 {
			after += ": " + lint.Lacking(c.Unwritten[0], true) + ", which it was measured by, is not written any more"
		}
		if before == after {
			t.label("both", after)
		} else {
			t.label("before", before)
			t.label("after", after)
		}
		t.label("word", words(c))
		for _, n := range c.Numbers {
			t.label("moved", fmt.Sprintf("%s: %s, then %s", n.Name, n.Before.Text(), n.After.Text()))
		}
		t.waived(c)
		t.line("")
	}
}

// words says how what stands in both plans became graver or less so: by what it counts as, by what it may be at most where
// it is not proven, by how often it is found, or by what is not proven beside it. It is "" where it stays as it was.
func words(c compare.Change) string {
	a, b := c.Before, c.After
	switch {
	case a.Counts == 0 || b.Counts == 0:
		return ""
	case a.Counts != b.Counts:
		return fmt.Sprintf("%s, then %s", a.Counts, b.Counts)
	case a.Outcome == lint.NotProven && b.Outcome == lint.NotProven && a.Word != b.Word:
		return fmt.Sprintf("%s in both; if it is so, at most %s, then at most %s", a.Counts, a.Word, b.Word)
	case a.Outcome == b.Outcome && a.Word != b.Word:
		return fmt.Sprintf("%s, then %s", a.Word, b.Word)
	case a.Outcome == b.Outcome && a.Times != b.Times:
		return fmt.Sprintf("%s in both; %d of the kind, then %d", a.Counts, a.Times, b.Times)
	case b.Outcome == lint.Violated && a.Unproven != b.Unproven:
		return fmt.Sprintf("%s in both; not proven beside it: %s, then %s", a.Counts, beside(a), beside(b))
	}
	return ""
}

// beside is what is not proven beside an answer, at most.
func beside(a compare.Answer) string {
	if a.Unproven == 0 {
		return "nothing"
	}
	return "at most " + a.Unproven.String()
}

// waived says what accepts a finding, in either plan.
func (t *text) waived(c compare.Change) {
	before, after := waiver(c.Before), waiver(c.After)
	if before == after && after != "" {
		t.label("waived", "before and now: "+after)
		return
	}
	if before != "" {
		t.label("waived", "before: "+before)
	}
	if after != "" {
		t.label("waived", "now: "+after)
	}
}

// waiver is what accepts an answer, "" where nothing does.
func waiver(a compare.Answer) string { return explain.Waiver(&check.Finding{Waived: a.Waived}) }

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
