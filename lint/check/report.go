package check

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// Report is what one run says of one plan. Every view is made of it; none of them decides anything.
type Report struct {
	File         string
	System       string   // the plan's title, or its name where it has none
	Practices    []string // "general" where the plan names none
	PracticeLeft bool     // the plan names none
	HasAC        bool
	Today        string // the day that waivers were compared with, "2026-11-25"

	Findings    []*Finding      // by severity, rule, place and cause
	Diagnostics hcl.Diagnostics // what the wiring itself does not allow
	Summary     Summary
	Assumptions []Assumption // by subject and attribute
	Assumed     int          // how many values of the plan's parts were assumed
	Failures    []string     // defects of the tool, or rules it was stopped before asking; any of them taints the run

	Verdicts map[string][]lint.Verdict // all valid answers by rule id, those that hold too
}

// Tainted says that the report does not cover what it should: a rule failed, or the search was ended
// before it had looked at everything.
func (r *Report) Tainted() bool { return len(r.Failures) > 0 || !r.Summary.States.Complete }

// Reaches says whether a finding that stands counts as the word or a higher one.
func (r *Report) Reaches(w lint.Severity) bool {
	for ; w <= lint.Danger; w++ {
		if *r.Summary.Count(w) > 0 {
			return true
		}
	}
	return false
}

// Finding is a verdict that does not hold, and what goes with it.
type Finding struct {
	Rule    *lint.Rule
	Verdict lint.Verdict
	// Severity is the word it counts as, RuleSeverity the highest word that is not excluded.
	Severity, RuleSeverity lint.Severity
	Number                 int    // from 1
	Wait                   string // how many rules wait on the first input that is missing, as a sentence; "" for one
	Fingerprint            string // the same as long as rule, subject, cause and outcome are
	Folded                 []Folded
	Waived                 *schema.Waiver // nil where it stands
}

// Message is the finding in the owner's words: the verdict's, and how many rules wait on one reading.
func (f *Finding) Message() string { return strings.TrimSpace(f.Verdict.Message + " " + f.Wait) }

// Citations lists what the rule cites that speaks for one of the plan's practices; all of it where
// nothing does.
func (r *Report) Citations(rule *lint.Rule) []lint.Citation {
	var out []lint.Citation
	for _, c := range rule.Cites {
		if len(c.For) == 0 || slices.ContainsFunc(c.For, func(p string) bool { return slices.Contains(r.Practices, p) }) {
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		return rule.Cites
	}
	return out
}

// Folded is a finding that another one explains.
type Folded struct {
	Rule, Subject, Message string
	Outcome                lint.Outcome
	Severity               lint.Severity
	At                     hcl.Range // of the subject
	Missing                []lint.Missing
	Numbers                []derive.Number
}

// Summary counts findings. A waived one counts in Waived alone.
type Summary struct {
	Danger, Warning, Caution, Notice int
	NotProven                        int // of those four
	Waived                           int
	Checks, Holds                    int // verdicts
	States                           States
}

// Count is the number of findings that count as a word.
func (s *Summary) Count(w lint.Severity) *int {
	return [...]*int{nil, &s.Notice, &s.Caution, &s.Warning, &s.Danger}[w]
}

// States says how much of the state space was looked at.
type States struct {
	Total    string // resting states that the plan allows; "" where they could not all be counted
	Distinct string // different joined networks; "" where not counted
	Examined int
	Complete bool
}

// Assumption is a figure or fact that stands in for what the plan leaves out.
type Assumption struct{ Subject, Attribute, Value, Source string }
