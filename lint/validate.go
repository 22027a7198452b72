package lint

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// idShape is compiled on first use: commands that ask no rule do not pay for it.
var idShape = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*/[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
})

// Validate says what is wrong with a set of rules, one line per defect: a rule that a report could
// not explain, or that could never be asked.
func Validate(rules []*Rule) error {
	var errs []error
	seen := map[string]bool{}
	for _, r := range rules {
		if seen[r.ID] {
			errs = append(errs, fmt.Errorf("%s: two rules have this id", r.ID))
		}
		seen[r.ID] = true
		for _, d := range r.defects() {
			errs = append(errs, fmt.Errorf("%s: %s", r.ID, d))
		}
	}
	return errors.Join(errs...)
}

func (r *Rule) defects() []string {
	var out []string
	bad := func(is bool, what string) {
		if is {
			out = append(out, what)
		}
	}
	bad(!idShape().MatchString(r.ID), "the id is not of the form family/name")
	texts := []struct{ name, text string }{
		{"Claim", r.Claim}, {"Subject", r.Subject}, {"When", r.When}, {"Why", r.Why},
		{"Numbers", r.Numbers}, {"Not", r.Not}, {"Offer", r.Offer}, {"Since", r.Since},
	}
	for _, t := range texts {
		bad(strings.TrimSpace(t.text) == "", t.name+" is empty")
	}
	bad(len(r.Words) == 0, "it has no signal word")
	for i, w := range r.Words {
		bad(w < Notice || w > Danger, "a signal word is invalid")
		bad(slices.Contains(r.Words[:i], w), "a signal word is there twice")
	}
	bad(len(r.Cites) == 0, "it cites nothing, not even common practice")
	for _, c := range r.Cites {
		bad(strings.TrimSpace(c.Ref) == "", "a citation has no reference")
		bad(c.Standing < Read || c.Standing > CommonPractice, fmt.Sprintf("citation %q has no standing", c.Ref))
	}
	for _, f := range r.Folds {
		id, cause, one := strings.Cut(f, " ")
		bad(!idShape().MatchString(id) || id == r.ID || one && cause == "", fmt.Sprintf("it cannot fold %q", f))
	}
	bad(len(r.Offers) > 0 && !r.Remedy, "it offers edits and says that no edit can clear it")
	bad((r.Run == nil) == (r.Review == nil), "it needs exactly one of Run and Review")
	return out
}
