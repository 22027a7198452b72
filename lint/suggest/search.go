package suggest

import (
	"bytes"
	"cmp"
	"runtime"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
)

// search looks for what clears one finding.
type search struct {
	*Desk
	finding *check.Finding
	compare.Question
	good   []Suggestion
	desks  []*Desk // of the good ones, checked
	near   []miss
	open   []Suggestion    // proposals with a blank
	shown  map[string]bool // offers of which a good one was found
	wanted int             // how many good ones are enough
	placed int             // for one verdict
	checks int             // of all rules that run
	until  int             // how many of them there may be in this part of the search
	full   int             // of all rules
	left   bool            // a bound on the work left proposals untried
	spared bool            // what is lesser may stray now, for want of better
	harsh  []*lint.Rule    // that refused drafts, the last first
	asked  []*lint.Rule    // of those, the ones that the drafts in hand are held against first
	turn   int             // drafts looked at
}

// miss is a draft that clears the finding and makes something worse, or could not be placed.
type miss struct {
	draft
	why   string
	worse []compare.Question
	desk  *Desk // with its answers, to follow up
}

// run tries what a rule offers first, in combinations too, and then what it offers only for want of that.
func (s *search) run() {
	s.shown, s.until = map[string]bool{}, mostChecked
	var first, second []draft
	for _, x := range s.drafts(s.Desk, s.finding.Rule, s.finding.Verdict, s.group()) {
		if x.Second {
			second = append(second, x)
		} else {
			first = append(first, x)
		}
	}
	s.tryOn(first)
	missed := s.near
	s.near, s.checks, s.full = nil, 0, 0
	s.tryOn(second)
	s.near = append(missed, s.near...)
	s.spare()
}

// spare takes, where nothing better was found, the misses that make nothing worse but notices of what is not known: they are
// told with them.
func (s *search) spare() {
	if len(s.good) > 0 || s.finding.Severity < lint.Warning {
		return
	}
	slices.SortStableFunc(s.near, func(a, b miss) int { return cmp.Or(boolean(a.Second)-boolean(b.Second), a.cost.order(b.cost)) })
	missed := s.near
	s.near, s.full, s.spared = nil, 0, true
	for _, m := range missed {
		lesser := m.desk != nil && m.Report != nil && len(m.worse) > 0 && !slices.ContainsFunc(m.worse, func(q compare.Question) bool { return !s.lesser(m.desk.before, q) })
		if lesser && !s.shown[m.offer] && len(s.good) < s.wanted && s.full < mostFull && !s.Stopped() {
			s.settle(m.draft)
			continue
		}
		s.near = append(s.near, m)
	}
}

// tryOn checks drafts, and where none is good, goes on from those that make something else worse: what is
// offered for that is made too.
func (s *search) tryOn(all []draft) {
	s.try(all)
	var done []miss // followed up already
	for round := 1; round < mostFollowed && len(s.good) == 0; round++ {
		missed := s.near
		s.near = nil
		slices.SortStableFunc(missed, func(a, b miss) int { return cmp.Or(len(a.worse)-len(b.worse), a.cost.order(b.cost)) })
		s.left = s.left || len(missed) > mostBranches
		for _, m := range inTurn(missed)[:min(len(missed), mostBranches)] {
			if m.desk != nil && len(s.good) == 0 && !s.enough() {
				s.until = min(s.checks+mostOnward, mostChecked) // leave some for the other branches
				s.follow(m)
				s.until = mostChecked
			}
		}
		done = append(done, missed...)
	}
	s.near = append(s.near, done...)
}

// inTurn takes of each offer its first, then of each its second, and so on: one that makes many near misses leaves room for
// the others.
func inTurn(missed []miss) []miss {
	nth, of := make([]int, len(missed)), map[string]int{}
	order := make([]int, len(missed))
	for i, m := range missed {
		nth[i], order[i] = of[m.offer], i
		of[m.offer]++
	}
	slices.SortStableFunc(order, func(a, b int) int { return nth[a] - nth[b] })
	out := make([]miss, len(missed))
	for i, at := range order {
		out[i] = missed[at]
	}
	return out
}

// apace is after how many drafts what refused them is learnt from.
const apace = 4

// try checks drafts in order until as many different ones are good as are wanted. Some are looked at side by
// side; what is made of them does not depend on how many.
func (s *search) try(all []draft) {
	s.turn = 0 // where the last list was left depends on how many were looked at
	for len(all) > 0 {
		if s.turn%apace == 0 {
			s.asked = slices.Clone(s.harsh)
		}
		n := min(len(all), runtime.GOMAXPROCS(0), apace-s.turn%apace)
		s.turn += n
		batch := slices.DeleteFunc(slices.Clone(all[:n]), func(x draft) bool {
			return s.shown[x.offer] || slices.ContainsFunc(s.good, func(g Suggestion) bool { return bytes.Equal(g.Result, x.Src) })
		})
		all = all[n:]
		if s.enough() {
			s.left = s.left || len(s.good) < s.wanted
			return
		}
		for i, found := range s.look(batch) {
			switch {
			case found == stands || s.shown[batch[i].offer]:
			case s.enough(): // with one at a time it had not been looked at
				s.left = s.left || len(s.good) < s.wanted
			case found == moves:
				s.near = append(s.near, miss{draft: batch[i], desk: batch[i].Desk, worse: []compare.Question{s.Question}, why: "it is not enough: then " + told(batch[i].before, s.Question)})
			case found == opens:
				s.near = append(s.near, miss{draft: batch[i], why: "what is found is gone, and then it is not proven: " + told(batch[i].before, s.Question)})
			default:
				s.weigh(batch[i])
			}
		}
	}
}

func (s *search) enough() bool {
	return s.opt.Stop != nil && s.opt.Stop() || len(s.good) >= s.wanted || s.checks >= s.until || s.full >= mostFull
}

// follow goes on from a draft that makes something worse: with what is offered for that.
func (s *search) follow(m miss) {
	if m.desk == nil || m.desk.pass == nil || len(m.worse) == 0 {
		return
	}
	q := m.worse[0]
	i := slices.IndexFunc(s.rules, func(r *lint.Rule) bool { return r.ID == q.Rule })
	v, ok := m.desk.before[q]
	if i < 0 || !ok {
		return
	}
	var next []draft
	open, near := len(s.open), len(s.near)
	more := s.drafts(m.desk, s.rules[i], v.Verdict, nil)
	s.open, s.near = s.open[:open], s.near[:near] // what is no step on the way is no answer to this finding
	for _, x := range more {
		if again(m.changes, x.changes) || s.added(x.changes) {
			continue
		}
		x.changes = slices.Concat(m.changes, x.changes)
		x.steps = reworded(m, x)
		x.needs = slices.Concat(m.needs, x.needs)
		x.sources = slices.Concat(m.sources, x.sources)
		x.offer = m.offer + "+" + x.offer
		x.cost = cost(s.Plan, x.Plan, x.changes)
		next = append(next, x)
	}
	slices.SortStableFunc(next, func(a, b draft) int { return cmp.Or(boolean(a.Second)-boolean(b.Second), a.cost.order(b.cost)) })
	s.try(next)
}

// reworded are the steps of a miss and then those of a draft: a device that is of another rating in the end is not said to be
// of the same.
func reworded(m miss, x draft) []string {
	out := slices.Clone(m.steps)
	for _, c := range x.changes {
		if c.Attr != "rating" {
			continue
		}
		for i, step := range out {
			if b := m.Plan.Block(c.At); b != nil && strings.Contains(step, lint.Quote(b)) {
				out[i] = strings.Replace(step, " of the same rating", "", 1)
			}
		}
	}
	return append(out, x.steps...)
}

// added says whether a change is of a part that the plan did not have: another first step would have given
// it as it is to be.
func (s *search) added(changes []lint.Change) bool {
	return slices.ContainsFunc(changes, func(c lint.Change) bool { return s.Plan.Block(c.At) == nil })
}

// again says whether one attribute is changed twice.
func again(a, b []lint.Change) bool {
	return slices.ContainsFunc(a, func(x lint.Change) bool {
		return slices.ContainsFunc(b, func(y lint.Change) bool { return x.At == y.At && x.In == y.In && x.Attr == y.Attr && x.Attr != "label" })
	})
}
