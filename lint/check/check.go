// Package check makes one run: a plan and rules in, a Report out.
//
// It builds the network, asks every rule, and makes findings of the answers: waived, hidden where a
// violation already speaks for the same rule and part, folded where another finding explains them,
// ordered, numbered and counted. It knows no rule by name, and reads no file and no clock.
package check

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/hashicorp/hcl/v2"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Options are the settings of a run.
type Options struct {
	Practice []string    // grades the plan by these instead of its own; empty means its own
	Today    time.Time   // the day that dates in the plan are compared with
	Bound    int         // assignments looked at in one zone; 0 means explore.DefaultBound
	Stop     func() bool // asked now and then; true ends the run early
	Plain    bool        // lists selectors behind which only loads hang in every combination too: the twin that a run is checked against
	Kept     *Kept       // remembers the plans that were asked last; nil for a run alone
}

// run is one Run under way.
type run struct {
	plan     *schema.Plan
	opt      Options
	rules    []*lint.Rule // by id
	net      *network.Network
	space    *explore.Space
	place    map[string]int // by address, in the order written
	verdicts map[string][]lint.Verdict
	failures []string
	stopped  bool
	known    *answers
}

// Run asks every rule of a plan. The rules' order does not matter; the same plan, rules, day and
// bound give the same report. A plan whose wiring is in
// error gets no verdicts, only the Diagnostics that say so.
func Run(p *schema.Plan, rules []*lint.Rule, opt Options) *Report {
	known := opt.Kept.take(p)
	r := newRun(graded(p, opt.Practice), rules, opt)
	r.known = known
	out := r.header()
	r.guard("the network", func() { r.build() })
	out.Diagnostics = known.diags
	if r.space == nil || out.Diagnostics.HasErrors() {
		out.Findings, out.Failures = []*Finding{}, r.failures
		return out
	}
	r.ask()
	out.Verdicts = r.verdicts
	out.Findings = r.findings()
	out.Summary = r.summary(out.Findings)
	r.addFacts(out)
	if out.Failures = r.failures; !out.Tainted() {
		opt.Kept.put(known)
	}
	return out
}

// stateless is the error of a plan whose interlocks leave no state: every rule would hold of it.
func stateless(p *schema.Plan, space *explore.Space) hcl.Diagnostics {
	total, ok := space.Total()
	if !ok || total.Sign() != 0 || len(p.Interlocks) == 0 {
		return nil
	}
	at := p.Interlocks[0].Header().Range
	return hcl.Diagnostics{{Severity: hcl.DiagError, Summary: "No state is left", Subject: &at,
		Detail: "The interlocks together rule out every combination of positions, so there is nothing to check. Each object of `never` is one combination that cannot occur."}}
}

// Asked lists the rules that a run with these rules asks, by id: the one on house rules is always asked.
func Asked(rules []*lint.Rule) []*lint.Rule {
	out := slices.Clone(rules)
	if !slices.ContainsFunc(rules, func(x *lint.Rule) bool { return x.ID == HouseRules.ID }) {
		out = append(out, HouseRules)
	}
	slices.SortStableFunc(out, func(a, b *lint.Rule) int { return strings.Compare(a.ID, b.ID) })
	return out
}

// graded is the plan under other practices; the plan itself stays as it is.
func graded(p *schema.Plan, practices []string) *schema.Plan {
	if len(practices) == 0 {
		return p
	}
	system := *p.System
	system.Practice = schema.Texts{Attr: schema.Attr{Set: true, Range: system.Range}}
	for _, name := range practices {
		system.Practice.List = append(system.Practice.List, schema.Text{Attr: system.Practice.Attr, Value: name})
	}
	out := *p
	out.System = &system
	return &out
}

func newRun(p *schema.Plan, rules []*lint.Rule, opt Options) *run {
	r := &run{plan: p, opt: opt, rules: Asked(rules), place: map[string]int{}, verdicts: map[string][]lint.Verdict{}}
	for i, b := range p.Blocks() {
		r.place[b.Header().Addr] = i + 1
	}
	return r
}

func (r *run) header() *Report {
	title := r.plan.System.Name
	if t := r.plan.System.Title; t.Set && t.Value != "" {
		title = t.Value
	}
	return &Report{
		File: r.plan.File, System: title, Practices: r.plan.Practices(), PracticeLeft: len(r.plan.System.Practice.List) == 0,
		Today: r.opt.Today.Format(time.DateOnly), Verdicts: r.verdicts,
	}
}

// guard runs f; a panic in it is a failure of the run and of nothing else.
func (r *run) guard(what string, f func()) {
	defer func() {
		x := recover()
		if _, halted := x.(explore.Halted); halted {
			r.stopped = true
			r.fail("%s was not finished: %s in it", what, Stopped)
		} else if x != nil {
			r.fail("%s failed: %v", what, x)
		}
	}()
	f()
}

func (r *run) fail(format string, args ...any) {
	if s := fmt.Sprintf(format, args...); !slices.Contains(r.failures, s) {
		r.failures = append(r.failures, s)
	}
}
