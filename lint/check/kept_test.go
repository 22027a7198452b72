package check

import (
	"fmt"
	"maps"
	"testing"

	"ferrule/lint"
)

// TestKept has runs over one plan that ask more and more of it: each rule is asked once, but for one that failed,
// and one that reviews others than before.
func TestKept(t *testing.T) {
	asked := map[string]int{}
	counts := func(r *lint.Rule) *lint.Rule {
		run := r.Run
		r.Run = func(p *lint.Pass) []lint.Verdict {
			asked[r.ID]++
			return run(p)
		}
		return r
	}
	a, b := counts(fake("x/a", violated("fuse.main", lint.Danger))), counts(fake("x/b", violated("fuse.spare", lint.Warning)))
	broken := fake("x/broken")
	broken.Run = func(*lint.Pass) []lint.Verdict { panic("out of range") }
	review := fake("x/review")
	review.Run, review.Review = nil, func(p *lint.Pass, ran *lint.Ran) []lint.Verdict {
		asked["x/review"]++
		return []lint.Verdict{{Subject: p.Plan.System, Outcome: lint.Violated, Word: lint.Notice, Message: fmt.Sprint(len(ran.Rules), " rules")}}
	}
	plan, opt := decode(t, aboard), Options{Today: day25, Kept: &Kept{}}
	for i, c := range []struct {
		rules []*lint.Rule
		want  string
	}{
		{[]*lint.Rule{a}, "map[x/a:1]"},
		{[]*lint.Rule{a, b}, "map[x/a:1 x/b:1]"},
		{[]*lint.Rule{a, b, review}, "map[x/a:1 x/b:1 x/review:1]"},
		{[]*lint.Rule{b, review}, "map[x/a:1 x/b:1 x/review:2]"},
		{[]*lint.Rule{b, broken}, "map[x/a:1 x/b:1 x/review:2]"},
		{[]*lint.Rule{b}, "map[x/a:1 x/b:2 x/review:2]"},
	} {
		got := Run(plan, c.rules, opt)
		if s := fmt.Sprint(asked); s != c.want {
			t.Errorf("run %d: asked %s, wanted %s", i, s, c.want)
		}
		so := maps.Clone(asked)
		expect(t, got, sketch(Run(plan, c.rules, Options{Today: day25})))
		asked = so
	}
	Run(decode(t, aboard), []*lint.Rule{b}, opt)
	if asked["x/b"] != 3 {
		t.Errorf("another plan: asked %v", asked)
	}
}
