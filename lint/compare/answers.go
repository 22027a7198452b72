// Package compare tells two reports apart: what got better, what got worse, what can no longer be proven,
// question by question and number by number.
package compare

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// Question is what a rule is asked: a part, and where the rule tells several findings on it apart, which.
type Question struct{ Rule, Subject, Cause string }

// Asked is the question that a finding answers.
func Asked(f *check.Finding) Question {
	return Question{f.Rule.ID, f.Verdict.Subject.Header().Addr, f.Verdict.Cause}
}

// Answer is the worst verdict on a question, and how many are as bad.
type Answer struct {
	lint.Verdict
	Times    int
	Violated int // of any word
	// Unproven is the highest word of what is not proven on the question, which a violation may stand before.
	Unproven lint.Severity
	// What a Difference has besides: what the answer counts as, 0 where it holds, and what waives it.
	Counts lint.Severity
	Waived *schema.Waiver
}

// Answers are all answers of a report, those that hold too.
type Answers map[Question]Answer

// Of gathers the answers of a report.
func Of(r *check.Report) Answers {
	out := Answers{}
	for id, vs := range r.Verdicts {
		for _, v := range vs {
			out.add(id, v)
		}
	}
	return out
}

func (a Answers) add(rule string, v lint.Verdict) {
	q := Question{rule, v.Subject.Header().Addr, v.Cause}
	old, ok := a[q]
	open, violated := old.Unproven, old.Violated
	switch v.Outcome {
	case lint.NotProven:
		open = max(open, v.Word)
	case lint.Violated:
		violated++
	}
	switch c := grade(v) - grade(old.Verdict); {
	case !ok || c > 0:
		old = Answer{Verdict: v, Times: 1}
	case c == 0:
		if old.Times++; further(v, old.Verdict) {
			old.Verdict = v
		}
	}
	old.Unproven, old.Violated = open, violated
	a[q] = old
}

// grade orders verdicts: what holds or was not asked, what is not proven, what is violated, each by its
// word.
func grade(v lint.Verdict) int {
	switch v.Outcome {
	case lint.NotProven:
		return 10 + int(v.Word)
	case lint.Violated:
		return 20 + int(v.Word)
	}
	return 0
}

// Stands says whether a question is answered by a finding.
func (a Answers) Stands(q Question) bool { return grade(a[q].Verdict) > 0 }

// worse says whether an answer is worse than another: what held does not, what was not proven is violated,
// a word is higher, there is more of it, or what is violated is further beyond its limit.
func worse(x, old Answer) bool {
	g, was := grade(x.Verdict), grade(old.Verdict)
	if x.Outcome == lint.Violated && g >= was && (old.Outcome == lint.Violated && x.Violated > old.Violated || x.Unproven > old.Unproven) {
		return true
	}
	return g > was || g > 0 && was > 0 && x.Word > old.Word || g > 0 && g == was && (x.Times > old.Times || further(x.Verdict, old.Verdict))
}

// further says whether a violated verdict is further beyond its limit than another.
func further(x, old lint.Verdict) bool {
	a, ok := beyond(x)
	b, was := beyond(old)
	return x.Outcome == lint.Violated && ok && was && a > b*(1+much)
}

// Nearer says whether a violated verdict is less far beyond its limit than another.
func Nearer(x, old lint.Verdict) bool { return further(old, x) }

// much is how much further is worse: less is how things lie in another order.
const much = 0.02

// beyond is how far the last two figures of a verdict, the limit and what meets it, are apart: the logarithm
// of their ratio, which does not ask which of them is to be the larger. Not ok where they are of two kinds.
func beyond(v lint.Verdict) (float64, bool) {
	n := len(v.Numbers)
	if n < 2 {
		return 0, false
	}
	a, b := v.Numbers[n-2], v.Numbers[n-1]
	if a.Unit != b.Unit || a.Value <= 0 || b.Value <= 0 || math.IsInf(a.Value, 0) || math.IsInf(b.Value, 0) {
		return 0, false
	}
	return math.Abs(math.Log(b.Value / a.Value)), true
}

// Worse lists the questions that are answered worse than before, the gravest first. What was not asked
// before counts as held.
func (a Answers) Worse(before Answers) []Question {
	return a.those(func(q Question, x Answer) bool { return worse(x, before[q]) })
}

// Strayed lists the questions that are answered as ill as before by figures that are worse, or may be.
func (a Answers) Strayed(before Answers) []Question {
	return a.those(func(q Question, x Answer) bool { return !worse(x, before[q]) && strayed(x, before[q], true) })
}

func (a Answers) those(so func(Question, Answer) bool) []Question {
	var out []Question
	for q, x := range a {
		if so(q, x) {
			out = append(out, q)
		}
	}
	a.order(out)
	return out
}

// order sorts questions: the gravest answers first.
func (a Answers) order(list []Question) {
	slices.SortFunc(list, func(x, y Question) int {
		return cmp.Or(grade(a[y].Verdict)-grade(a[x].Verdict), strings.Compare(x.Rule, y.Rule), strings.Compare(x.Subject, y.Subject), strings.Compare(x.Cause, y.Cause))
	})
}
