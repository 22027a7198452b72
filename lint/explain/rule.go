package explain

import (
	"slices"
	"strings"

	"ferrule/lint"
)

// RulePage is all that can be said of a rule, one of all the rules that there are.
func RulePage(r *lint.Rule, all []*lint.Rule) *Page {
	p := &Page{Title: r.ID + " (" + words(r) + ")"}
	p.add("", text(r.Claim))
	p.add("What it asks", text(r.Subject))
	p.add("Violated when", text(r.When))
	p.add("Why it hurts", text(r.Why))
	p.add("Numbers and limits", text(r.Numbers))
	p.add("What it does not decide", text(r.Not))
	p.add("What would clear it", text(r.Offer))
	p.add("What to measure", text(meter(r)))
	p.add("When it cannot be proven", text(unproven(r)))
	p.add("Findings it explains", text(strings.Join(folds(r, all), ", ")))
	p.add("Where it comes from", citations(r.Cites)...)
	p.add("Since", text("version "+r.Since))
	return p
}

// folds lists the rules whose findings this one explains, those that there are.
func folds(r *lint.Rule, all []*lint.Rule) []string {
	var out []string
	for _, f := range r.Folds {
		id, cause, one := strings.Cut(f, " ")
		if !slices.ContainsFunc(all, func(x *lint.Rule) bool { return x.ID == id }) {
			continue
		}
		if one {
			id += " (" + cause + ")"
		}
		out = append(out, id)
	}
	return out
}

// words lists the signal words a rule can carry, the highest first.
func words(r *lint.Rule) string {
	var out []string
	for w := lint.Danger; w >= lint.Notice; w-- {
		for _, have := range r.Words {
			if have == w {
				out = append(out, w.String())
			}
		}
	}
	return strings.Join(out, ", ")
}

func meter(r *lint.Rule) string {
	if r.Meter == "" {
		return "Nothing about this can be measured without risk."
	}
	return r.Meter
}

func unproven(r *lint.Rule) string {
	if r.Harm {
		return "A missing input can hide a fire or a shock here, so what is not proven counts as the word that a violation would carry, up to warning."
	}
	return "What is not proven counts one step under the word that a violation would carry, and never less than a notice."
}

func citations(cites []lint.Citation) []Line {
	var out []Line
	for _, c := range cites {
		out = append(out, text(Cite(c)))
	}
	return out
}

// Cite writes a citation with its standing: nobody must take a clause from memory for one that was read.
func Cite(c lint.Citation) string {
	s := c.Ref
	if note := Standing(c); note != "" {
		s += ": " + note
	}
	return s
}

// Standing says how a citation is known, what it says, and for which practices.
func Standing(c lint.Citation) string {
	var parts []string
	if s := c.Standing.String(); !strings.HasPrefix(s, c.Ref) {
		parts = append(parts, s)
	}
	if c.Note != "" {
		parts = append(parts, c.Note)
	}
	if len(c.For) > 0 {
		parts = append(parts, "for "+lint.And(c.For...))
	}
	return strings.Join(parts, "; ")
}
