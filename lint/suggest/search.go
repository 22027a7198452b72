package suggest

import (
	"bytes"
	"cmp"
	"runtime"
	"slices"
	"strings"
	"sync"

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

// lesser says whether what is worse is no more than a notice, of what is not proven or of a guess that decides: beside a
// finding that is graver it is told, and no more.
func (s *search) lesser(after compare.Answers, q compare.Question) bool {
	i := slices.IndexFunc(s.rules, func(r *lint.Rule) bool { return r.ID == q.Rule })
	if i < 0 || s.rules[i].CountsAs(after[q].Verdict) > lint.Notice {
		return false
	}
	return s.rules[i].Run == nil || after[q].Outcome == lint.NotProven && (s.Plan.Block(q.Subject) == nil || !slices.Contains(after.Worse(s.before), q))
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

// What a draft does to the finding.
type effect uint8

const (
	stands effect = iota // nothing, or the draft is no sound plan
	moves                // it stands on other parts, less far beyond its limit: something more is to be done
	opens                // it is no longer violated, and cannot be proven
	clears
)

// look asks the finding's own rule about drafts, and all rules that run where that finds nothing any more:
// most drafts fail early.
func (s *search) look(batch []draft) []effect {
	out := make([]effect, len(batch))
	var all sync.WaitGroup
	for i := range batch {
		all.Go(func() {
			x := batch[i]
			if s.finding.Rule.Run != nil {
				own := check.Run(x.Plan, []*lint.Rule{s.finding.Rule}, s.opt)
				answers := compare.Of(own)
				switch {
				case own.Tainted():
					return
				case answers.Stands(s.Question):
					x.Report = own
					if out[i] = s.effect(answers); out[i] != stands {
						x.Desk.open()
					}
					return
				}
			}
			if x.Report = s.refused(x); x.Report == nil {
				x.Report = check.Run(x.Plan, runs(s.rules), s.opt)
			}
			if len(x.Report.Diagnostics) == 0 { // what is no network is asked nothing
				out[i] = clears
			}
		})
	}
	all.Wait()
	return out
}

// effect is what a change does to a finding that stands.
func (s *search) effect(after compare.Answers) effect {
	was, is := s.finding.Verdict, after[s.Question].Verdict
	switch {
	case was.Outcome != lint.Violated:
	case is.Outcome == lint.NotProven && len(is.Missing) > 0:
		return opens
	case is.Outcome == lint.Violated && len(is.Related) > 0 && !slices.Equal(was.Related, is.Related) && compare.Nearer(is, was):
		return moves
	}
	return stands
}

// mostHarsh bounds the rules that drafts are held against first.
const mostHarsh = 3

// refused asks the rules that refused drafts before: what one of them finds worse is not worth asking the others.
func (s *search) refused(x draft) *check.Report {
	for _, r := range s.asked {
		if out := check.Run(x.Plan, []*lint.Rule{r}, s.opt); len(out.Diagnostics) > 0 || !out.Tainted() && len(s.worsened(compare.Of(out))) > 0 {
			return out
		}
	}
	return nil
}

// learn notes the rule that refused a draft.
func (s *search) learn(q compare.Question) {
	i := slices.IndexFunc(s.rules, func(r *lint.Rule) bool { return r.ID == q.Rule && r.Run != nil })
	if i < 0 {
		return
	}
	s.harsh = slices.DeleteFunc(s.harsh, func(r *lint.Rule) bool { return r == s.rules[i] })
	s.harsh = append([]*lint.Rule{s.rules[i]}, s.harsh[:min(len(s.harsh), mostHarsh-1)]...)
}

// weigh decides about a draft that clears its finding: where no rule that runs finds anything worse, those
// that review the others are asked too.
func (s *search) weigh(x draft) {
	s.checks++
	m := miss{draft: x, desk: x.Desk, worse: s.worsened(compare.Of(x.Report))}
	switch {
	case x.Report.Tainted():
		m.why, m.desk = unfinished, nil
	case len(m.worse) > 0:
		s.learn(m.worse[0])
		x.Desk.open()
		if lost := s.lost(x.Desk); lost != "" {
			m.why, m.desk = lost, nil
		}
	default:
		s.settle(x)
		return
	}
	s.missed(x, m)
}

// settle decides about a draft of which all rules that run find nothing worse, by those that review the others.
func (s *search) settle(x draft) {
	s.full++
	x.Report = check.Run(x.Plan, s.rules, s.opt)
	x.Desk.open()
	m := miss{draft: x, desk: x.Desk}
	if !s.accept(x, &m) {
		s.missed(x, m)
	}
}

// missed keeps a draft that did not pass, with the reason.
func (s *search) missed(x draft, m miss) {
	if m.why == "" && len(m.worse) > 0 {
		m.why = "it clears this, but then " + told(x.Desk.before, m.worse[0])
		if s.before.Stands(m.worse[0]) {
			m.why = "it clears this, but what is found already gets worse, or may: " + told(x.Desk.before, m.worse[0])
		}
		if v := x.Desk.before[m.worse[0]]; v.Outcome == lint.NotProven && len(v.Missing) > 0 {
			m.why = strings.TrimSuffix(m.why, ".") + ". Write " + lint.Lacking(v.Missing[0], true) + " first: then it may pass."
		}
	}
	s.near = append(s.near, m)
}

const unfinished = "it could not be checked whole: a rule failed, or the search of all states met its bound"

// accept takes a draft of which all rules were asked, if it clears the finding and makes nothing worse: a notice
// that the proof leans on a guess, which was not there before, is worse too.
func (s *search) accept(x draft, m *miss) bool {
	m.worse = s.worsened(x.before)
	switch lost := s.lost(x.Desk); {
	case x.Report.Tainted():
		m.why, m.desk = unfinished, nil
	case lost != "":
		m.why, m.desk = lost, nil
	case x.before.Stands(s.Question):
		m.why, m.desk = "the finding is not gone", nil
	case !s.held(x):
		m.why, m.desk = "the rule has nothing to ask of the part any more, and does not say that it holds", nil
	case len(m.worse) == 0:
		s.shown[x.offer] = true
		s.good, s.desks = append(s.good, s.suggestion(x, kind(s.Plan, x.changes), "", x.Desk)), append(s.desks, x.Desk)
		return true
	}
	return false
}

// worsened lists what a change makes worse, or may: all but notices of what is not proven anyway, where something
// graver is to be mended. Those are told with the change.
func (s *search) worsened(after compare.Answers) []compare.Question {
	out := after.Worse(s.before)
	for _, q := range after.Strayed(s.before) {
		if !s.minor(after[q]) {
			out = append(out, q)
		}
	}
	if s.spared {
		out = slices.DeleteFunc(out, func(q compare.Question) bool { return s.lesser(after, q) })
	}
	return out
}

func (s *search) minor(x compare.Answer) bool {
	return x.Outcome == lint.NotProven && x.Word <= lint.Notice && s.finding.Severity >= lint.Warning
}

// held says whether the finding's rule still speaks of its part, where the part is still there: silence is no proof.
func (s *search) held(x draft) bool {
	if kind(s.Plan, x.changes) != Verified || x.Plan.Block(s.Subject) == nil {
		return true
	}
	return slices.ContainsFunc(x.Report.Verdicts[s.Rule], func(v lint.Verdict) bool { return v.Subject.Header().Addr == s.Subject })
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
