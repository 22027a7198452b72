package report

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/explain"
	"ferrule/lint/term"
)

// coverage says what was found and how much was looked at. A run without findings says the same.
func (t *text) coverage(r *check.Report) {
	s := &r.Summary
	if r.Tainted() {
		t.labelled("Not done", undone(r))
	}
	t.labelled("Findings", counts(s, r.Tainted()))
	t.labelled("Checked", fmt.Sprintf("%s (rule by part), %s", plural(s.Checks, "check", "checks"), plural(s.Holds, "holds", "hold")))
	t.labelled("States", statesLine(&s.States))
	for _, m := range missingLines(r) {
		t.labelled("Missing", m)
	}
	for _, a := range assumptionLines(r.Assumptions) {
		t.labelled("Assumed", a)
	}
	for _, f := range r.Failures {
		t.labelled("FAILED", f+". What it would have said is not known.")
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// undone says first what a reader must not miss: that silence below is not safety.
func undone(r *check.Report) string {
	switch n := len(r.Failures); {
	case n == 0:
		return "the search ended before it had looked at everything: what was left may hide a hazard"
	case r.Summary.States.Complete:
		return plural(n, "question", "questions") + " FAILED, see below: what was left may hide a hazard"
	default:
		return "the run ended before it had looked at everything (" + plural(n, "question", "questions") + " FAILED, see below): what was left may hide a hazard"
	}
}

func counts(s *check.Summary, cut bool) string {
	var parts []string
	for w := lint.Danger; w >= lint.Notice; w-- {
		if n := *s.Count(w); n > 0 {
			parts = append(parts, plural(n, w.String(), w.String()+"s"))
		}
	}
	out := "none"
	if len(parts) > 0 {
		out = strings.Join(parts, ", ")
	}
	if cut {
		out += " in what was looked at"
	}
	if s.NotProven > 0 {
		out += fmt.Sprintf("; %d of them not proven", s.NotProven)
	}
	if s.Waived > 0 {
		out += fmt.Sprintf("; %d waived", s.Waived)
	}
	return out
}

func statesLine(s *check.States) string {
	out := "more than could be counted"
	if s.Total != "" {
		out = roughly(s.Total) + " allowed"
	}
	if s.Distinct != "" {
		word := " different networks, switches in transit among them"
		if s.Distinct == "1" {
			word = " network"
		}
		out += ", " + roughly(s.Distinct) + word
	}
	out += fmt.Sprintf(", %d looked at", s.Examined)
	if !s.Complete {
		return out + "; not every question was followed to its end, so what holds holds only for what was looked at"
	}
	return out + "; every question was followed to its end"
}

// mostDigits is the longest number of states that is written out.
const mostDigits = 9

// roughly writes a whole number, a long one as about 1.2e34.
func roughly(digits string) string {
	n, ok := new(big.Float).SetString(digits)
	if len(digits) <= mostDigits || !ok {
		return digits
	}
	return "about " + strings.Replace(n.Text('e', 1), "e+", "e", 1)
}

// missingLines lists what to go and read off, with the findings that wait on it.
func missingLines(r *check.Report) []string {
	var names []string
	numbers := map[string][]string{}
	for _, f := range r.Findings {
		if f.Waived != nil {
			continue
		}
		wanted := f.Verdict.Missing
		for _, x := range f.Folded {
			wanted = append(wanted[:len(wanted):len(wanted)], x.Missing...)
		}
		for _, m := range wanted {
			name := explain.Missing(m)
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
			numbers[name] = append(numbers[name], fmt.Sprint(f.Number))
		}
	}
	var out []string
	for _, n := range names {
		waits := slices.Compact(numbers[n])
		word := "finding "
		if len(waits) > 1 {
			word = "findings "
		}
		out = append(out, n+" ("+word+lint.And(waits...)+")")
	}
	return out
}

// assumptionLines joins what was assumed alike of several parts.
func assumptionLines(as []check.Assumption) []string {
	type like struct{ attribute, value, source string }
	var order []like
	subjects := map[like][]string{}
	for _, a := range as {
		k := like{a.Attribute, a.Value, a.Source}
		if subjects[k] == nil {
			order = append(order, k)
		}
		subjects[k] = append(subjects[k], a.Subject)
	}
	var out []string
	for _, k := range order {
		what := k.attribute
		if of := subjects[k]; len(of) != 1 || of[0] != "plan" {
			what += " of " + lint.And(of...)
		}
		out = append(out, fmt.Sprintf("%s: %s (%s)", what, k.value, k.source))
	}
	return out
}

// Rules writes the list of rules: words, id and claim.
func Rules(rules []*lint.Rule, s Style) string {
	t := &text{Style: s}
	wide := 0
	for _, r := range rules {
		wide = max(wide, term.Width(r.ID))
	}
	for _, r := range rules {
		left := term.Pad(strings.ToUpper(r.Top().String()), margin) + term.Pad(r.ID, wide) + "  "
		if t.Width-term.Width(left) < 45 {
			t.line("%s", strings.TrimRight(left, " "))
			left = strings.Repeat(" ", margin)
		}
		t.hung(left, r.Claim)
	}
	return t.String()
}
