package plan

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/schema"
)

// trust asks what appears when the plan is not relied on.
type trust struct {
	p      *lint.Pass
	ran    *lint.Ran
	before map[asked][]lint.Verdict
}

// before is what does not hold of each part, by rule.
func before(ran *lint.Ran) map[asked][]lint.Verdict {
	out := map[asked][]lint.Verdict{}
	for _, r := range ran.Rules {
		gather(out, r.ID, ran.Verdicts[r.ID])
	}
	return out
}

func gather(out map[asked][]lint.Verdict, rule string, list []lint.Verdict) {
	for _, v := range list {
		if k := (asked{rule, v.Subject.Header().Addr}); v.Outcome != lint.Holds {
			out[k] = append(out[k], v)
		}
	}
}

// appeared is a verdict that was not there before.
type appeared struct {
	rule string
	lint.Verdict
}

type appearing struct {
	new        []appeared // violated, the gravest first
	doubts     []appeared // not proven, the gravest first
	unfinished bool
}

func (a appearing) nothing() bool { return len(a.new) == 0 && len(a.doubts) == 0 && !a.unfinished }

func (t *trust) without(blocks ...schema.Block) appearing {
	var out appearing
	after := t.ran.Without(lint.Warning, blocks...)
	for _, r := range t.ran.Rules {
		now := map[asked][]lint.Verdict{}
		gather(now, r.ID, after[r.ID])
		for _, v := range after[r.ID] {
			k := asked{r.ID, v.Subject.Header().Addr}
			switch {
			case v.Outcome == lint.Holds:
			case v.Outcome == lint.NotProven && slices.Contains(v.Missing, lint.Missing{Subject: "plan", Attribute: "states"}):
				out.unfinished = true
			case v.Word < lint.Warning || !fresh(v, now[k], t.before[k]):
			case v.Outcome == lint.Violated:
				out.new = append(out.new, appeared{r.ID, v})
			default:
				out.doubts = append(out.doubts, appeared{r.ID, v})
			}
		}
	}
	for _, list := range [][]appeared{out.new, out.doubts} {
		slices.SortStableFunc(list, func(a, b appeared) int { return int(b.Word) - int(a.Word) })
	}
	return out
}

// fresh says whether a verdict tells something that was not told before of the same part: none for the same
// cause was as bad, and more are as bad as it than were. A rule that tells one thing of a part may tell it of another
// cause once there are more states; that alone is nothing new.
func fresh(v lint.Verdict, now, was []lint.Verdict) bool {
	count := func(list []lint.Verdict) (n int) {
		for _, x := range list {
			if bad(x, v) {
				n++
			}
		}
		return n
	}
	return !slices.ContainsFunc(was, func(x lint.Verdict) bool { return x.Cause == v.Cause && bad(x, v) }) && count(now) > count(was)
}

// bad says whether one verdict is no milder than another; of what may be, what is counts too.
func bad(a, b lint.Verdict) bool {
	return a.Word >= b.Word && (a.Outcome == lint.Violated || a.Outcome == b.Outcome)
}

func (t *trust) verdict(b schema.Block, a appearing, beside string) lint.Verdict {
	v := lint.Verdict{Subject: b, Outcome: lint.Holds, Word: lint.Warning}
	list := a.new
	switch {
	case len(list) > 0:
	case a.unfinished:
		return lint.Unfinished(b, lint.Warning)
	case len(a.doubts) == 0:
		return v
	default:
		list = a.doubts
	}
	worst := list[0]
	v.Outcome, v.Word, v.State = worst.Outcome, max(worst.Word-1, lint.Caution), worst.State
	for _, x := range list {
		if addr := x.Subject.Header().Addr; !slices.Contains(v.Related, addr) {
			v.Related = append(v.Related, addr)
		}
	}
	more := ""
	if n := len(list) - 1; n > 0 {
		more = fmt.Sprintf(", and %d more", n)
	}
	what := fmt.Sprintf("%s of %s%s", worst.rule, lint.Quote(worst.Subject), more)
	switch {
	case worst.Outcome == lint.NotProven:
		v.Missing = slices.Clone(worst.Missing)
		if !by(b).Set {
			v.Missing = append(v.Missing, lint.Missing{Subject: b.Header().Addr, Attribute: "by"})
		}
		v.Message = fmt.Sprintf("Without %s%s there may be a %s: %s. %s", lint.Quote(b), beside, worst.Word, what, worst.Message)
	case !by(b).Set:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.Header().Addr, Attribute: "by"}}
		v.Message = fmt.Sprintf("Without %s%s there is a %s: %s. Whether hardware or somebody's habit does it is not written.", lint.Quote(b), beside, worst.Word, what)
	default:
		v.Message = fmt.Sprintf("Only trust in %s%s keeps away a %s: %s. %s", lint.Quote(b), beside, worst.Word, what, worst.Message)
	}
	return v
}
