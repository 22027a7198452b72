package compare

import (
	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// accepted is a waiver, and the word of the gravest finding on a question, which it accepts or, where it is nil, none does.
type accepted struct {
	by   *schema.Waiver
	word lint.Severity
}

// waivers gathers which questions are answered by findings that are waived, those folded under another too.
func waivers(r *check.Report) map[Question]accepted {
	out := map[Question]accepted{}
	note := func(q Question, by *schema.Waiver, word lint.Severity) {
		if word > out[q].word {
			out[q] = accepted{by, word}
		}
	}
	for _, f := range r.Findings {
		note(Asked(f), f.Waived, f.Severity)
		for _, x := range f.Folded {
			for _, v := range r.Verdicts[x.Rule] {
				if v.Subject.Header().Addr == x.Subject && v.Outcome == x.Outcome && v.Message == x.Message {
					note(Question{x.Rule, x.Subject, v.Cause}, f.Waived, x.Severity)
				}
			}
		}
	}
	return out
}
