package suggest

import (
	"cmp"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
)

// mostPasses bounds how often a plan is gone through: what could not be cleared may be once something
// else is.
const mostPasses = 4

// Accepted is one suggestion of a proposal for a whole plan, and the finding that it is for.
type Accepted struct {
	Finding *check.Finding
	Suggestion
}

// All clears what can be cleared together: it takes the best verified suggestion for the gravest finding,
// asks all rules again, and goes on from there until nothing more can be had. Each step leaves no finding
// worse and one fewer, so it ends, and what it ends with is verified against the plan as it was. Then what later steps make
// needless is left out. The order
// of the findings is by their words, rules and parts: where parts stand in the file decides between ways that cost the
// same, and nothing else.
func (d *Desk) All() (*Desk, []Accepted) {
	if d.pass == nil || d.Report.Tainted() {
		return d, nil
	}
	var out []Accepted
	first := d.sorted()
	at := first
	borne := map[compare.Question]bool{} // what steps brought that was put up with
	tried := map[compare.Question]int{}  // how many were accepted when it failed last
	for range mostPasses {
		before := len(out)
		failed := map[compare.Question]bool{}
		for f := at.next(failed); f != nil; f = at.next(failed) {
			q := compare.Asked(f)
			if n, ok := tried[q]; ok && n == len(out) { // nothing is otherwise than it was then
				failed[q] = true
				continue
			}
			s := at.search(f, 1+2*boolean(f.Severity >= lint.Warning))
			best := s.widest(first, borne)
			if best < 0 {
				failed[q], tried[q] = true, len(out)
				continue
			}
			out = append(out, Accepted{f, d.numbered(s, s.good[best])})
			for _, q := range slices.Concat(s.desks[best].before.Worse(at.before), s.desks[best].before.Strayed(at.before)) {
				borne[q] = true
			}
			at = s.desks[best]
		}
		if len(out) == before {
			break
		}
	}
	if len(out) == 0 {
		return d, nil
	}
	return first.needed(at, out, d.number)
}

// numbered has the findings that a suggestion clears by the numbers of the plan as it was: those that a step before
// brought, or brought to light, have none.
func (d *Desk) numbered(s *search, x Suggestion) Suggestion {
	var clears []int
	for _, f := range s.Report.Findings {
		if n := d.number(f); n > 0 && slices.Contains(x.Clears, f.Number) {
			clears = append(clears, n)
		}
	}
	x.Clears = clears
	return x
}

// widest is the one of the good suggestions that clears most dangers and warnings at once; of equal ones the
// first, which changes least. -1 where each makes something worse than it was in the plan at first: a little at every
// step adds up.
func (s *search) widest(first *Desk, borne map[compare.Question]bool) int {
	best, most := -1, -1
	for i, x := range s.good {
		if s.addsUp(first, s.desks[i].before, borne) || slices.ContainsFunc(x.changes, nearerBy) {
			continue
		}
		n := 0
		for _, f := range s.Report.Findings {
			if f.Severity >= lint.Warning && slices.Contains(x.Clears, f.Number) {
				n++
			}
		}
		if n > most {
			best, most = i, n
		}
	}
	return best
}

// nearerBy says whether a change is a shorter way between parts: whether there is one only a look at the place tells, so
// that nobody gets it unasked.
func nearerBy(c lint.Change) bool { return c.Attr == "length" && c.Block == "" }

// addsUp says whether a plan is worse, or may be, than the one of the beginning was, in something that this step makes no
// worse by itself.
func (s *search) addsUp(first *Desk, after compare.Answers, borne map[compare.Question]bool) bool {
	step := map[compare.Question]bool{} // what this step makes worse was put up with when it was found good
	for _, q := range slices.Concat(after.Worse(s.before), after.Strayed(s.before)) {
		step[q] = true
	}
	return slices.ContainsFunc(slices.Concat(after.Worse(first.before), after.Strayed(first.before)), func(q compare.Question) bool { return !step[q] && !borne[q] })
}

// next is the gravest finding that stands and has not failed yet.
func (d *Desk) next(failed map[compare.Question]bool) *check.Finding {
	if d.pass == nil || d.Report.Tainted() || d.opt.Stop != nil && d.opt.Stop() {
		return nil
	}
	var open []*check.Finding
	for _, f := range d.Report.Findings {
		if f.Waived == nil && len(f.Rule.Offers) > 0 && !failed[compare.Asked(f)] {
			open = append(open, f)
		}
	}
	if len(open) == 0 {
		return nil
	}
	return slices.MinFunc(open, func(a, b *check.Finding) int {
		x, y := compare.Asked(a), compare.Asked(b)
		return cmp.Or(cmp.Compare(b.Severity, a.Severity), cmp.Compare(a.Verdict.Outcome, b.Verdict.Outcome),
			strings.Compare(x.Rule, y.Rule), strings.Compare(x.Subject, y.Subject), strings.Compare(x.Cause, y.Cause))
	})
}
