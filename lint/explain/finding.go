package explain

import (
	"fmt"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
)

// FindingPage is one finding of a report with everything that it rests on.
func FindingPage(r *check.Report, f *check.Finding) *Page {
	v, at := f.Verdict, lint.Where(f.Verdict.Subject)
	p := &Page{Title: fmt.Sprintf("%s %s (finding %d, %s:%d)", strings.ToUpper(f.Severity.String()), f.Rule.ID, f.Number, at.Filename, at.Start.Line)}
	p.add("", text(f.Message()), text(proof(f)))
	p.add("Why it hurts", text(f.Rule.Why))
	p.add("Violated when", text(f.Rule.When))
	p.add("The state", states(v.State)...)
	p.add("The path", text(strings.Join(v.Path, ", ")))
	p.add("Other parts concerned", text(strings.Join(v.Related, ", ")))
	p.add("How the numbers come about", Derivation(v.Numbers)...)
	p.add("What is missing", missing(v)...)
	p.add("Numbers and limits of the rule", text(f.Rule.Numbers))
	p.add("What an expert would measure", text(meter(f.Rule)))
	p.add("What would clear it", text(f.Rule.Offer))
	p.add("What the rule does not decide", text(f.Rule.Not))
	p.add("Where it comes from", citations(r.Citations(f.Rule))...)
	p.add("Also explained by this", folded(f)...)
	p.add("How the numbers of those come about", Derivation(foldedNumbers(f))...)
	p.add("Waived", text(Waiver(f)))
	p.add("Cautions", cautions(r)...)
	return p
}

// proof says how sure the finding is and why it carries its word.
func proof(f *check.Finding) string {
	switch {
	case f.Verdict.Outcome == lint.NotProven && f.Severity != f.RuleSeverity:
		return fmt.Sprintf("Not proven; a violation could be a %s, so this counts as a %s.", f.RuleSeverity, f.Severity)
	case f.Verdict.Outcome == lint.NotProven:
		return fmt.Sprintf("Not proven; a violation would be a %s.", f.RuleSeverity)
	case f.Severity != f.RuleSeverity:
		return fmt.Sprintf("With what is not written it could still be a %s.", f.RuleSeverity)
	}
	return ""
}

func states(state []lint.Position) []Line {
	var out []Line
	for _, s := range state {
		out = append(out, text(s.Addr+" = "+s.Position))
	}
	return out
}

func missing(v lint.Verdict) []Line {
	var out []Line
	for _, m := range v.Missing {
		out = append(out, text(Missing(m)))
	}
	return out
}

// Missing says what to go and read.
func Missing(m lint.Missing) string { return lint.Lacking(m, false) }

func folded(f *check.Finding) []Line {
	var out []Line
	for _, x := range f.Folded {
		out = append(out, text(x.Rule+" at "+x.Subject+": "+x.Message))
	}
	return out
}

func foldedNumbers(f *check.Finding) []derive.Number {
	var out []derive.Number
	for _, x := range f.Folded {
		out = append(out, x.Numbers...)
	}
	return out
}

// Waiver says who accepted a finding, why and until when; "" where nobody did.
func Waiver(f *check.Finding) string {
	w := f.Waived
	if w == nil {
		return ""
	}
	s := w.Reason.Value
	if s == "" {
		s = "no reason given"
	}
	if w.By.Value != "" {
		s += "; by " + w.By.Value
	}
	if w.Until.Set {
		s += "; until " + w.Until.Value.Format("2006-01-02")
	}
	return s
}

func cautions(r *check.Report) []Line {
	var out []Line
	for _, c := range Cautions(AboutOf(r)) {
		out = append(out, text(c.Long))
	}
	return out
}

// AboutOf takes from a report what decides on its cautions.
func AboutOf(r *check.Report) About {
	return About{AC: r.HasAC, PracticeLeft: r.PracticeLeft, Assumed: r.Assumed}
}
