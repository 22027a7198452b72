package suggest

import (
	"slices"
	"strings"
	"sync"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
)

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

// lesser says whether what is worse is no more than a notice, of what is not proven or of a guess that decides: beside a
// finding that is graver it is told, and no more.
func (s *search) lesser(after compare.Answers, q compare.Question) bool {
	i := slices.IndexFunc(s.rules, func(r *lint.Rule) bool { return r.ID == q.Rule })
	if i < 0 || s.rules[i].CountsAs(after[q].Verdict) > lint.Notice {
		return false
	}
	return s.rules[i].Run == nil || after[q].Outcome == lint.NotProven && (s.Plan.Block(q.Subject) == nil || !slices.Contains(after.Worse(s.before), q))
}
