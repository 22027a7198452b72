package check

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// ask puts the question of every rule, those that review the others last.
func (r *run) ask() {
	pass := r.known.pass
	for _, rule := range gravest(r.rules) {
		if rule.Run != nil {
			r.verdicts[rule.ID] = r.once(rule, func() []lint.Verdict { return rule.Run(pass) })
		}
	}
	ran := &lint.Ran{Rules: r.rules, Verdicts: maps.Clone(r.verdicts), Waived: r.matched(),
		Again: func(g lint.Guesses, least lint.Severity) map[string][]lint.Verdict {
			return r.askAgain(r.pass(r.space, g), least)
		},
		Without: func(least lint.Severity, b ...schema.Block) map[string][]lint.Verdict {
			return r.askAgain(r.pass(r.space.Without(b...), lint.Guesses{}), least)
		},
	}
	r.known.review(r.rules)
	for _, rule := range r.rules {
		if rule.Review != nil {
			r.verdicts[rule.ID] = r.once(rule, func() []lint.Verdict { return rule.Review(pass, ran) })
		}
	}
}

// askAgain answers for a rule that reviews the others: all of them, or that rule is not finished either.
func (r *run) askAgain(pass *lint.Pass, least lint.Severity) map[string][]lint.Verdict {
	before := len(r.failures)
	out := r.askAll(pass, least)
	if r.stopped {
		r.failures = r.failures[:before]
		panic(explore.Halted{})
	}
	return out
}

// askAll answers the rules that run on one pass and have a word as high as the least.
func (r *run) askAll(pass *lint.Pass, least lint.Severity) map[string][]lint.Verdict {
	out := map[string][]lint.Verdict{}
	for _, rule := range gravest(r.rules) {
		if rule.Run != nil && (least <= lint.Notice || slices.ContainsFunc(rule.Words, func(w lint.Severity) bool { return w >= least })) {
			out[rule.ID] = r.askOne(rule, func() []lint.Verdict { return rule.Run(pass) })
		}
	}
	return out
}

// gravest has the rules with the highest words first: where time runs out, the dangers have been asked for.
func gravest(rules []*lint.Rule) []*lint.Rule {
	top := func(r *lint.Rule) lint.Severity { return slices.Max(append([]lint.Severity{0}, r.Words...)) }
	out := slices.Clone(rules)
	slices.SortStableFunc(out, func(a, b *lint.Rule) int { return int(top(b)) - int(top(a)) })
	return out
}

func (r *run) pass(space *explore.Space, g lint.Guesses) *lint.Pass {
	p := lint.NewPass(r.net, space, g, r.opt.Today)
	p.Circuit.Memory = r.known.memory
	return p
}

// Stopped is what a failure says of what there was no time for.
const Stopped = "the run was stopped"

// askOne gives a rule's valid answers. What is not valid, a panic and a rule that was not asked in
// time are failures: silence would pass for safety.
func (r *run) askOne(rule *lint.Rule, question func() []lint.Verdict) []lint.Verdict {
	if r.stopped = r.stopped || r.opt.Stop != nil && r.opt.Stop(); r.stopped {
		r.fail("rule %s was not asked: %s before it", rule.ID, Stopped)
		return nil
	}
	var answers, valid []lint.Verdict
	r.guard("rule "+rule.ID, func() { answers = question() })
	for _, v := range answers {
		if why := invalid(v); why != "" {
			r.fail("rule %s gave an invalid verdict: %s", rule.ID, why)
			continue
		}
		valid = append(valid, v)
	}
	return valid
}

// invalid says what a verdict lacks, "" where it lacks nothing.
func invalid(v lint.Verdict) string {
	if isNil(v.Subject) {
		return "it has no subject"
	}
	addr := v.Subject.Header().Addr
	switch {
	case v.Outcome < lint.Holds || v.Outcome > lint.NotProven:
		return fmt.Sprintf("%s has no outcome", addr)
	case v.Outcome == lint.Holds:
		return ""
	case v.Word < lint.Notice || v.Word > lint.Danger:
		return fmt.Sprintf("%s has no signal word", addr)
	case strings.TrimSpace(v.Message) == "":
		return fmt.Sprintf("%s has no message", addr)
	}
	return ""
}

func isNil(b schema.Block) bool {
	return b == nil || reflect.ValueOf(b).Kind() == reflect.Pointer && reflect.ValueOf(b).IsNil()
}
