package compare

import (
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/lint/derive"
	"ferrule/schema"
)

// Difference is what one plan has over another.
type Difference struct {
	Old, New       *check.Report
	Worse          []Change // violated, and it was not, or not as grave
	Lost           []Change // violated before, and cannot be proven now: nothing shows that it was cured
	Unproven       []Change // held before, or was not asked, and cannot be proven now
	Waived         []Change // stands, no graver, and is waived now; it counts as what is waived
	Better         []Change // gone, or less grave
	Unwaived       []Change // as grave as before, and waived no more
	Same           []Change // as grave as before; Numbers say what moved
	Moved          []Change // holds before and after, with numbers that moved
	Left           []Change // asked of one plan, and of the other not: that run was not finished
	Added, Removed []string // addresses of parts
}

// Change is a question with its answers in both plans. An answer without an outcome was not asked.
type Change struct {
	Question
	Before, After Answer
	Counts        lint.Severity  // what the graver of the two counts as; 0 where both hold
	Numbers       []Pair         // that moved
	Gone          []string       // the parts that it was about and that the new plan has not, where it is a finding no more
	Added         bool           // the old plan has not the part
	Unwritten     []lint.Missing // figures that it was measured by and that the new plan does not write
}

// Pair is a number that both verdicts rest on.
type Pair struct {
	Name          string
	Before, After derive.Number
}

// Between compares the reports on two plans, made by the same rules.
func Between(oldPlan, newPlan *schema.Plan, old, new *check.Report, rules []*lint.Rule) *Difference {
	d := &Difference{Old: old, New: new}
	d.Added, d.Removed = without(newPlan, oldPlan), without(oldPlan, newPlan)
	by := map[string]*lint.Rule{}
	for _, r := range check.Asked(rules) {
		by[r.ID] = r
	}
	was, is := Of(old), Of(new)
	waived, waives := waivers(old), waivers(new)
	for _, q := range all(was, is) {
		c := Change{Question: q, Before: was.of(q), After: is.of(q)}
		if c.Before.Outcome == lint.Violated && c.After.Outcome == 0 {
			c.After = is.unsure(q, was)
		}
		c.Numbers = moved(c.Before.Numbers, c.After.Numbers)
		c.Before.Counts, c.After.Counts = counts(by[q.Rule], c.Before), counts(by[q.Rule], c.After)
		c.Before.Waived, c.After.Waived = waived[q].by, waives[q].by
		c.Counts = max(c.Before.Counts, c.After.Counts)
		c.Gone, c.Added = gone(c, oldPlan, newPlan), oldPlan.Block(q.Subject) == nil
		c.Unwritten = unwritten(c, oldPlan, newPlan)
		d.sort(c)
	}
	return d
}

// of is the answer to a question; where a rule found several things on the part in the other plan and
// none here, that of the part as a whole.
func (a Answers) of(q Question) Answer {
	if x, ok := a[q]; ok {
		return x
	}
	if x := a[Question{q.Rule, q.Subject, ""}]; x.Outcome == lint.Holds {
		return x
	}
	return Answer{}
}

// unsure is what a rule cannot prove of a part any more, where it had found something on it before that it does not tell
// apart now: a wire of no size has no answer of its own for its return. It is no answer where there is none of the kind.
func (a Answers) unsure(q Question, was Answers) Answer {
	open := a.those(func(x Question, y Answer) bool {
		old := was[x]
		return x.Rule == q.Rule && x.Subject == q.Subject && y.Outcome == lint.NotProven && (old.Outcome != lint.NotProven || old.Message != y.Message)
	})
	if len(open) == 0 {
		return Answer{}
	}
	return a[open[0]]
}

// kinder are attributes without which a plan is judged as if nothing spoke against it.
var kinder = []string{"bundle", "through", "critical", "surge", "engine", "fuel_vapor", "gas_appliance", "occupied", "needed_in"}

// instead are attributes of which one says what another does.
var instead = [][]string{{"draw", "power", "resistance"}, {"rated", "output current_max"}, {"resistance", "short_circuit"}}

// says says whether a block writes an attribute, or one that says the same.
func says(b schema.Block, attr string) bool {
	return schema.Writes(b, attr) || slices.ContainsFunc(instead, func(list []string) bool {
		return slices.Contains(list, attr) && slices.ContainsFunc(list, func(a string) bool { return schema.Writes(b, a) })
	})
}

// unwritten lists the figures of the plan that a finding was measured by, and such facts of its parts, that are not written any
// more: without them it is not asked, or asked more kindly, and that is no cure.
func unwritten(c Change, oldPlan, newPlan *schema.Plan) []lint.Missing {
	if c.Before.Outcome != lint.Violated || grade(c.After.Verdict) > 0 {
		return nil
	}
	var out []lint.Missing
	gone := func(addr, attr string) {
		m := lint.Missing{Subject: addr, Attribute: attr}
		if is := newPlan.Block(addr); is != nil && schema.Writes(oldPlan.Block(addr), attr) && !says(is, attr) && !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	derive.Walk(c.Before.Numbers, func(n derive.Number) {
		if addr, attr, ok := strings.Cut(n.Source, " "); ok && n.Kind == derive.Plan {
			gone(addr, attr)
		}
	})
	for _, addr := range append([]string{c.Subject}, c.Before.Related...) {
		for _, attr := range kinder {
			gone(addr, attr)
		}
	}
	return out
}

// gone lists the parts that a finding was about and that went with it: its own first.
func gone(c Change, oldPlan, newPlan *schema.Plan) []string {
	if grade(c.Before.Verdict) == 0 || grade(c.After.Verdict) > 0 {
		return nil
	}
	var out []string
	for _, addr := range append([]string{c.Subject}, c.Before.Related...) {
		if oldPlan.Block(addr) != nil && newPlan.Block(addr) == nil && !slices.Contains(out, addr) {
			out = append(out, addr)
		}
	}
	return out
}

// sort puts a change where it belongs.
func (d *Difference) sort(c Change) {
	stood, stands := grade(c.Before.Verdict) > 0, grade(c.After.Verdict) > 0
	switch {
	case c.After.Outcome == 0 && d.New.Tainted(), c.Before.Outcome == 0 && d.Old.Tainted():
		d.Left = append(d.Left, c)
	case worse(c.After, c.Before) && c.After.Outcome == lint.NotProven && !stood:
		d.Unproven = append(d.Unproven, c)
	case worse(c.After, c.Before), strayed(c.After, c.Before, false):
		d.Worse = append(d.Worse, c)
	case lost(c.Before, c.After), len(c.Unwritten) > 0:
		d.Lost = append(d.Lost, c)
	case stands && c.Before.Waived == nil && c.After.Waived != nil:
		c.Counts = c.After.Counts
		d.Waived = append(d.Waived, c)
	case worse(c.Before, c.After), strayed(c.Before, c.After, false):
		d.Better = append(d.Better, c)
	case stands && c.Before.Waived != nil && c.After.Waived == nil:
		d.Unwaived = append(d.Unwaived, c)
	case stands:
		d.Same = append(d.Same, c)
	case len(c.Numbers) > 0:
		d.Moved = append(d.Moved, c)
	}
}

// lost says whether what was violated is not shown to be cured: it is not proven now, or what is left of it has something
// graver beside it that is not.
func lost(before, after Answer) bool {
	return before.Outcome == lint.Violated && (after.Outcome == lint.NotProven || after.Outcome == lint.Violated && after.Unproven > max(after.Word, before.Unproven))
}

func counts(r *lint.Rule, a Answer) lint.Severity {
	if r == nil || grade(a.Verdict) == 0 {
		return 0
	}
	beside := a.Verdict
	beside.Outcome, beside.Word = lint.NotProven, a.Unproven // what is not proven may count higher than what is violated
	if a.Unproven == 0 {
		return r.CountsAs(a.Verdict)
	}
	return max(r.CountsAs(a.Verdict), r.CountsAs(beside))
}

// all lists the questions of both, by the graver answer.
func all(was, is Answers) []Question {
	both := Answers{}
	for _, a := range []Answers{was, is} {
		for q, x := range a {
			if old, ok := both[q]; !ok || grade(x.Verdict) > grade(old.Verdict) {
				both[q] = x
			}
		}
	}
	var out []Question
	for q := range both {
		out = append(out, q)
	}
	both.order(out)
	return out
}

// slack is how far apart two figures may be and still be the same: what is left of solving in another
// order.
const slack = 1e-6

// moved pairs the numbers of one name and unit in two verdicts, where they differ in what is printed of them.
func moved(before, after []derive.Number) []Pair {
	var out []Pair
	seen := map[[2]string]int{}
	for _, b := range before {
		k := [2]string{b.Name, b.Unit}
		left := seen[k]
		seen[k]++
		for _, a := range after { // the first with the first, the second with the second
			if a.Name == b.Name && a.Unit == b.Unit {
				if left--; left >= 0 {
					continue
				}
				if math.Abs(a.Value-b.Value) > slack*max(math.Abs(a.Value), math.Abs(b.Value)) && a.Text() != b.Text() {
					out = append(out, Pair{b.Name, b, a})
				}
				break
			}
		}
	}
	return out
}

// without lists the parts of a plan that another has not.
func without(plan, other *schema.Plan) []string {
	var out []string
	for _, b := range plan.Blocks() {
		if h := b.Header(); other.Block(h.Addr) == nil {
			out = append(out, h.Addr)
		}
	}
	return out
}

// Reaches says whether anything is worse, waived now, or not proven any more, that counts as a word or a higher one. What
// was violated and is not proven counts as it did: it may be there still. What is waived is: no other report will press it.
func (d *Difference) Reaches(w lint.Severity) bool {
	for _, list := range [][]Change{d.Worse, d.Lost, d.Unproven, d.Waived} {
		for _, c := range list {
			if c.Counts >= w {
				return true
			}
		}
	}
	return false
}
