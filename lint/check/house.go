package check

import (
	"fmt"

	"ferrule/lint"
)

// HouseRules says of every house_rule that it was not judged, so that nobody takes it for kept.
var HouseRules = &lint.Rule{
	ID:      "plan/house-rule",
	Claim:   "An owner's own rule is not kept.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Caution, lint.Notice},
	Subject: "house_rule",
	When:    "Always not proven: house rules are read, and their references checked, but this version does not judge them.",
	Why:     "Who writes a rule relies on it. A rule that is silently passed over would be taken for kept; it counts one step under the word that it asks for (caution, where it asks for none).",
	Numbers: "None.",
	Not:     "Whether the plan keeps the rule.",
	Offer:   "Check the plan against the rule by hand, and waive this finding with a date.",
	Cites:   []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "a check that was not made is said to be not made"}},
	Since:   "0.1",
	Run:     unjudged,
}

func unjudged(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, h := range p.Plan.HouseRules {
		word, ok := lint.ParseSeverity(h.Severity.Value)
		if !ok {
			word = lint.Caution
		}
		out = append(out, lint.Verdict{
			Subject: h, Outcome: lint.NotProven, Word: word,
			Message: fmt.Sprintf("The house rule %s was read and not judged: this version does not judge house rules.", lint.Quote(h)),
		})
	}
	return out
}
