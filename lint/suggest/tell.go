package suggest

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/compare"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// told says what is worse.
func told(after compare.Answers, q compare.Question) string {
	return fmt.Sprintf("%s at %s: %s", q.Rule, q.Subject, after[q].Message)
}

// words are the attributes that no circuit depends on.
var words = []string{"label", "notes", "color", "title", "revision"}

// kind is that of changes which passed: waivers and words are of no circuit.
func kind(plan *schema.Plan, changes []lint.Change) Kind {
	for _, c := range changes {
		if _, waiver := schema.Lookup[*schema.Waiver](plan, c.At); !slices.Contains(words, c.Attr) && !(waiver && c.Block == "") {
			return Verified
		}
	}
	return SameCircuit
}

// suggestion tells a draft, with the numbers on either side where it was checked.
func (s *search) suggestion(x draft, k Kind, why string, after *Desk) Suggestion {
	out := Suggestion{
		Kind: k, Steps: x.steps, Reason: why, Needs: compact(x.needs), Sources: compact(x.sources), Cost: x.cost, Result: x.Src, changes: x.changes,
		Edits: Between(s.Path, s.Src, x.Src), Before: s.finding.Verdict.Message, Numbers: figures("before", s.finding.Verdict.Numbers),
	}
	if after == nil {
		return out
	}
	out.Numbers = append(out.Numbers, figures("after", s.deciding(after))...)
	for _, v := range s.group() {
		if after.before.Stands(compare.Question{Rule: s.Rule, Subject: v.Subject.Header().Addr, Cause: v.Cause}) {
			out.Stays = append(out.Stays, v.Subject.Header().Addr)
		}
	}
	for _, x := range s.finding.Folded {
		if x.Rule != s.Rule && after.stands(x) {
			out.Surfaces = append(out.Surfaces, x.Rule+" at "+x.Subject)
		}
	}
	for _, f := range s.Report.Findings {
		if f != s.finding && f.Severity >= lint.Warning && s.touched(x, f) && after.before.Stands(compare.Asked(f)) {
			out.Surfaces = append(out.Surfaces, fmt.Sprintf("finding %d", f.Number))
		}
	}
	for _, q := range after.before.Worse(s.before) { // what was put up with
		out.Needs = append(out.Needs, "Look at this too, which comes with it: "+after.before[q].Message)
	}
	for q, old := range s.before { // it is no cure of that
		if x := after.before[q]; q != s.Question && old.Outcome == lint.Violated && x.Outcome == lint.NotProven {
			out.Surfaces = append(out.Surfaces, fmt.Sprintf("%s at %s, found till now and not to be told then,", q.Rule, q.Subject))
		}
	}
	for _, q := range after.before.Strayed(s.before) {
		out.Needs = append(out.Needs, "Look at this too, which is not proven now and may get worse: "+after.before[q].Message)
	}
	slices.Sort(out.Surfaces)
	for _, f := range s.Report.Findings {
		if f != s.finding && !after.before.Stands(compare.Asked(f)) && !after.folded(f) {
			out.Clears = append(out.Clears, f.Number)
		}
	}
	return out
}

// touched says whether a finding is of a part that a draft changes.
func (s *search) touched(x draft, f *check.Finding) bool {
	return slices.ContainsFunc(x.changes, func(c lint.Change) bool { return c.Block == "" && c.At == f.Verdict.Subject.Header().Addr })
}

// folded says whether anything that was folded under a finding stands: with it gone, that is a finding of its own.
func (d *Desk) folded(f *check.Finding) bool { return slices.ContainsFunc(f.Folded, d.stands) }

func (d *Desk) stands(x check.Folded) bool {
	for q := range d.before {
		if x.Rule == q.Rule && x.Subject == q.Subject && d.before.Stands(q) {
			return true
		}
	}
	return false
}

// deciding are the figures that the finding's question rests on once it is changed: of the verdicts on its part,
// that which has most of the figures that decided before. None where the rule has nothing to ask there any more.
func (s *search) deciding(after *Desk) []derive.Number {
	var out []derive.Number
	most := -1
	for _, v := range after.Report.Verdicts[s.Rule] {
		if v.Subject.Header().Addr != s.Subject {
			continue
		}
		n := boolean(v.Cause == s.Cause) * len(s.finding.Verdict.Numbers)
		for _, x := range v.Numbers {
			if slices.ContainsFunc(s.finding.Verdict.Numbers, func(o derive.Number) bool { return o.Name == x.Name }) {
				n++
			}
		}
		alike := slices.ContainsFunc(v.Numbers, func(x derive.Number) bool {
			return slices.ContainsFunc(s.finding.Verdict.Numbers, func(o derive.Number) bool { return o.Symbol == x.Symbol && o.Unit == x.Unit })
		})
		if alike && n > most {
			out, most = v.Numbers, n
		}
	}
	return out
}

func compact(list []string) []string {
	var out []string
	for _, x := range list {
		if !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}

func figures(when string, numbers []derive.Number) []Figure {
	var out []Figure
	for _, n := range numbers {
		out = append(out, Figure{when, n.Step()})
	}
	return out
}

// sketches are what a person has to finish: proposals with a blank, questions for what is missing, and
// the nearest of those that did not pass, with the reason.
func (s *search) sketches() []Suggestion {
	out := append(s.questions(), s.open...)
	slices.SortStableFunc(s.near, func(a, b miss) int {
		return cmp.Or(boolean(a.desk == nil)-boolean(b.desk == nil), len(a.worse)-len(b.worse), a.cost.order(b.cost))
	})
	seen := map[string]bool{}
	var told []miss
	for _, m := range s.near {
		if !seen[m.offer] && !s.shown[m.offer] && !slices.ContainsFunc(told, m.adds) {
			seen[m.offer] = true
			told = append(told, m)
			out = append(out, s.suggestion(m.draft, Sketch, m.why, nil))
		}
	}
	return out
}

// adds says whether a miss comes to the same text as another, or does all that the other does, and more, and
// fails at the same thing.
func (m miss) adds(o miss) bool {
	if m.desk != nil && o.desk != nil && bytes.Equal(m.Src, o.Src) {
		return true
	}
	return m.why == o.why && len(o.changes) > 0 && !slices.ContainsFunc(o.changes, func(c lint.Change) bool { return !slices.Contains(m.changes, c) })
}

// questions ask for the attributes that a verdict misses.
func (s *search) questions() []Suggestion {
	var out []Suggestion
	for _, m := range s.finding.Verdict.Missing {
		b := s.Plan.Block(m.Subject)
		if b == nil || s.page == nil || strings.Contains(m.Attribute, " ") {
			continue
		}
		src, err := s.page.with(s.Plan, []lint.Change{lint.Set(m.Subject, m.Attribute, "null")})
		if err != nil {
			continue
		}
		if _, err := s.read(src); err != nil { // it is no attribute of the part, but something that the plan has nowhere
			src = s.Src
		}
		x := draft{Desk: s.after(src, nil), steps: []string{fmt.Sprintf("Write %s.", lint.Lacking(m, true))}, cost: Cost{Parts: 1}}
		out = append(out, s.suggestion(x, Sketch, "only the part or its sheet says the value", nil))
	}
	return out
}
