package check

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/schema"
)

// fold puts each finding under the first one, in their steady order, that explains it. The items are
// in that order already, so the order in which rules were given cannot matter.
func (r *run) fold(items []*item) {
	index := map[string][]int{}
	for i, x := range items {
		if len(x.Rule.Folds) > 0 {
			for _, k := range r.offers(x) {
				index[k] = append(index[k], i)
			}
		}
		absent := "absent " + x.Rule.ID + " " + x.subject()
		index[absent] = append(index[absent], i)
	}
	for _, f := range items {
		var candidates []int
		for _, k := range r.asks(f) {
			for _, i := range index[k] {
				if may(items[i], f) && explains(items[i], f) {
					candidates = append(candidates, i)
				}
			}
		}
		for _, i := range index[awaited(f)] {
			if may(items[i], f) && items[i].Verdict.Outcome == lint.Violated {
				candidates = append(candidates, i)
			}
		}
		slices.Sort(candidates)
		for _, i := range candidates {
			if items[i].root() != f { // rules may fold each other; findings never in a ring
				f.parent = items[i]
				break
			}
		}
	}
}

// may says whether f can stand under g at all: nothing graver goes under, nor a fact under what is not proven.
func may(g, f *item) bool {
	sure := g.Verdict.Outcome == lint.Violated || f.Verdict.Outcome == lint.NotProven
	return g != f && sure && g.Severity >= f.Severity && g.Waived == f.Waived
}

// explains says whether g, about the same part, has the cause of f.
func explains(g, f *item) bool {
	return g.Rule.Explains(f.Rule.ID, f.Verdict.Cause) && (!turns(f.Verdict.State) || within(f.Verdict.State, g.Verdict.State))
}

// awaited is the key of the finding for want of which f is not proven: the first thing that f misses may
// name a rule, in parentheses, that says why there is no such thing of a part.
func awaited(f *item) string {
	if f.Verdict.Outcome != lint.NotProven || len(f.Verdict.Missing) == 0 {
		return ""
	}
	m := f.Verdict.Missing[0]
	_, rule, _ := strings.Cut(m.Attribute, "(")
	return "absent " + strings.TrimSuffix(rule, ")") + " " + m.Subject
}

// turns says whether a state names a position: what has opened before is none.
func turns(state []lint.Position) bool {
	return slices.ContainsFunc(state, func(p lint.Position) bool { return p.Addr != "after" })
}

// within says whether the states with the positions a are among those with the positions b: a has all
// of b's. What names no position does not turn on the state and may go under any.
func within(a, b []lint.Position) bool {
	return !slices.ContainsFunc(b, func(p lint.Position) bool { return !slices.Contains(a, p) })
}

// Two findings are about the same part if one's subject is the other's, is named as related or lies
// on the other's path, if they relate to the same wire or device, or if they walk the same path. A
// source, bus or place in common is not enough: half the plan shares those.
//
// offers and asks spell that out as keys: the two findings have a key in common.

func (r *run) offers(x *item) []string {
	out := []string{"subject " + x.subject()}
	for _, p := range r.parts(x) {
		out = append(out, "part "+p)
	}
	return append(out, r.shared(x)...)
}

func (r *run) asks(x *item) []string {
	out := []string{"part " + x.subject(), "subject " + x.subject()}
	for _, p := range r.parts(x) {
		out = append(out, "subject "+p)
	}
	return append(out, r.shared(x)...)
}

func (r *run) shared(x *item) []string {
	var out []string
	for _, p := range x.Verdict.Related {
		if r.specific(p) {
			out = append(out, "related "+p)
		}
	}
	if len(x.Verdict.Path) > 1 {
		out = append(out, "path "+strings.Join(x.Verdict.Path, "\x00"))
	}
	return out
}

// parts lists the other parts that a finding is about.
func (r *run) parts(x *item) []string {
	out := slices.Clone(x.Verdict.Related)
	for _, terminal := range x.Verdict.Path {
		if p := r.blockOf(terminal); r.specific(p) && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// blockOf is the address of the block that a terminal belongs to, "" where there is none.
func (r *run) blockOf(terminal string) string {
	for terminal != "" && r.plan.Block(terminal) == nil {
		terminal = terminal[:max(strings.LastIndexByte(terminal, '.'), 0)]
	}
	return terminal
}

// specific says whether a part belongs to one run or circuit.
func (r *run) specific(addr string) bool {
	b := r.plan.Block(addr)
	if b == nil {
		return false
	}
	switch b.Header().Type {
	case "fuse", "conductor", "switch", "connector", "converter", "load":
		return true
	}
	return false
}

// gather folds the findings that are not folded yet and share a key under the one that leads.
func gather[K comparable](items []*item, key func(*item) (K, bool), leads func(a, b *item) bool) {
	lead := map[K]*item{}
	var members []*item
	for _, x := range items {
		k, ok := key(x)
		if !ok || x.parent != nil {
			continue
		}
		members = append(members, x)
		if old := lead[k]; old == nil || leads(x, old) {
			lead[k] = x
		}
	}
	for _, x := range members {
		k, _ := key(x)
		if lead[k] != x {
			x.parent = lead[k]
		}
	}
}

// group folds the findings of one rule that one cause makes: of those that count highest the first leads.
func group(items []*item) {
	type cause struct {
		rule, group string
		outcome     lint.Outcome
		waiver      *schema.Waiver
	}
	gather(items, func(x *item) (cause, bool) {
		return cause{x.Rule.ID, x.Verdict.Group, x.Verdict.Outcome, x.Waived}, x.Verdict.Group != ""
	}, func(a, b *item) bool { return a.Severity > b.Severity })
}

// shareMissing folds what waits on one missing input under the finding that counts highest, and of
// those under the one whose violation would.
func shareMissing(items []*item) {
	type input struct {
		lint.Missing
		waiver *schema.Waiver
	}
	gather(items, func(x *item) (input, bool) {
		if x.Verdict.Outcome != lint.NotProven || len(x.Verdict.Missing) == 0 {
			return input{}, false
		}
		return input{x.Verdict.Missing[0], x.Waived}, true
	}, func(a, b *item) bool { return a.Severity == b.Severity && a.RuleSeverity > b.RuleSeverity })
	countWaiting(items)
}

// countWaiting says under each finding that leads how many rules the one reading would settle.
func countWaiting(items []*item) {
	rules := map[*item]map[string]bool{}
	for _, f := range items {
		x := f.root()
		if f.Verdict.Outcome != lint.NotProven || len(x.Verdict.Missing) == 0 || !slices.Contains(f.Verdict.Missing, x.Verdict.Missing[0]) {
			continue
		}
		if rules[x] == nil {
			rules[x] = map[string]bool{}
		}
		rules[x][f.Rule.ID] = true
	}
	for x, waiting := range rules {
		if len(waiting) > 1 {
			x.Wait = fmt.Sprintf("%d rules wait on %s.", len(waiting), lint.Lacking(x.Verdict.Missing[0], true))
		}
	}
}
