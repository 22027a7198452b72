package check

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
)

// item is a finding while it is being folded.
type item struct {
	*Finding
	seq    int // among the verdicts of its rule
	parent *item
}

func (x *item) subject() string { return x.Verdict.Subject.Header().Addr }

// root is the finding under which this one is printed.
func (x *item) root() *item {
	for x.parent != nil {
		x = x.parent
	}
	return x
}

// findings makes findings of all answers that do not hold.
func (r *run) findings() []*Finding {
	items := r.hide(r.items())
	slices.SortFunc(items, steady) // what folds under what does not turn on where parts stand in the file
	r.fold(items)
	group(items)
	shareMissing(items)
	slices.SortFunc(items, r.before)
	return r.roots(items)
}

// steady is an order of findings that is the same wherever their parts stand in the file.
func steady(a, b *item) int {
	return cmp.Or(
		cmp.Compare(b.Severity, a.Severity),
		strings.Compare(a.Rule.ID, b.Rule.ID),
		cmp.Compare(b.RuleSeverity, a.RuleSeverity),
		strings.Compare(a.subject(), b.subject()),
		strings.Compare(a.Verdict.Cause, b.Verdict.Cause),
		strings.Compare(a.Verdict.Message, b.Verdict.Message),
	)
}

func (r *run) items() []*item {
	var out []*item
	for _, rule := range r.rules {
		for i, v := range r.verdicts[rule.ID] {
			if v.Outcome == lint.Holds {
				continue
			}
			f := &Finding{Rule: rule, Verdict: v, Severity: rule.CountsAs(v), RuleSeverity: v.Word}
			f.Waived = r.waiver(f)
			out = append(out, &item{Finding: f, seq: i})
		}
	}
	return out
}

// before is the order of a report.
func (r *run) before(a, b *item) int {
	return cmp.Or(
		cmp.Compare(b.Severity, a.Severity),
		strings.Compare(a.Rule.ID, b.Rule.ID),
		cmp.Compare(r.place[a.subject()], r.place[b.subject()]),
		strings.Compare(a.Verdict.Cause, b.Verdict.Cause),
		cmp.Compare(a.seq, b.seq),
	)
}

// hide takes out what is not proven of a part that the same rule already finds violated, unless it
// would count higher. The violation then carries the word that is still possible.
func (r *run) hide(items []*item) []*item {
	type key struct{ rule, subject string }
	at := func(x *item) key { return key{x.Rule.ID, x.subject()} }
	violated := map[key][]*item{}
	for _, x := range items {
		if x.Verdict.Outcome == lint.Violated {
			violated[at(x)] = append(violated[at(x)], x)
		}
	}
	return slices.DeleteFunc(items, func(x *item) bool {
		by := violated[at(x)]
		if x.Verdict.Outcome != lint.NotProven || !slices.ContainsFunc(by, func(v *item) bool { return v.Severity >= x.Severity }) {
			return false
		}
		for _, v := range by {
			v.RuleSeverity = max(v.RuleSeverity, x.RuleSeverity)
		}
		return true
	})
}

// roots gathers under each finding what was folded into it, and numbers the rest.
func (r *run) roots(items []*item) []*Finding {
	out := []*Finding{}
	prints := map[string]int{}
	for _, x := range items {
		if x.parent != nil {
			h := x.Verdict.Subject.Header()
			to := x.root()
			to.Folded = append(to.Folded, Folded{x.Rule.ID, h.Addr, x.Verdict.Message, x.Verdict.Outcome, x.Severity, h.Range, x.Verdict.Missing, x.Verdict.Numbers})
			continue
		}
		x.Number = len(out) + 1
		x.Fingerprint = fingerprint(x, prints)
		out = append(out, x.Finding)
	}
	return out
}

// fingerprint tells a finding again after lines moved and figures changed. Where a rule gives two
// findings without telling them apart, their order does.
func fingerprint(x *item, taken map[string]int) string {
	text := strings.Join([]string{x.Rule.ID, x.subject(), x.Verdict.Cause, x.Verdict.Outcome.String()}, "\x00")
	taken[text]++
	if n := taken[text]; n > 1 {
		text += fmt.Sprint("\x00", n)
	}
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:8])
}
