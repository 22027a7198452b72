package check

import (
	"math/rand"
	"reflect"
	"testing"

	"ferrule/lint"
)

func TestFolding(t *testing.T) {
	for _, c := range []struct {
		name  string
		rules []*lint.Rule
		want  []string
	}{
		{"same subject",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger)), "x/small"), fake("x/small", violated("conductor.feed", lint.Warning))},
			[]string{"danger x/big conductor.feed [x/small conductor.feed]"}},
		{"another subject",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger)), "x/small"), fake("x/small", violated("conductor.tail", lint.Warning))},
			[]string{"danger x/big conductor.feed", "warning x/small conductor.tail"}},
		{"related to the subject",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).related("load.lamp")), "x/small"), fake("x/small", violated("load.lamp", lint.Warning))},
			[]string{"danger x/big conductor.feed [x/small load.lamp]"}},
		{"subject on the other's path",
			[]*lint.Rule{folds(fake("x/big", violated("fuse.main", lint.Danger)), "x/small"),
				fake("x/small", violated("conductor.feed", lint.Warning).path("source.pack.pos", "fuse.main.line.pos"))},
			[]string{"danger x/big fuse.main [x/small conductor.feed]"}},
		{"a source in common is not the same part",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).related("source.pack").path("source.pack.pos", "fuse.main.line.pos")), "x/small"),
				fake("x/small", violated("conductor.tail", lint.Warning).related("source.pack").path("source.pack.pos", "fuse.spare.line.pos"))},
			[]string{"danger x/big conductor.feed", "warning x/small conductor.tail"}},
		{"one cause of a rule's and not the other",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger)), "x/small low"),
				fake("x/small", violated("conductor.feed", lint.Caution).cause("low"), violated("conductor.feed", lint.Warning).cause("high"))},
			[]string{"danger x/big conductor.feed [x/small conductor.feed]", "warning x/small conductor.feed"}},
		{"not proven for want of what is found not to be",
			[]*lint.Rule{folds(fake("x/big", violated("load.lamp", lint.Warning)), "x/other"), fake("x/small", unproven("conductor.feed", lint.Warning, "load.lamp an operating point (x/big)")),
				fake("x/tiny", unproven("conductor.tail", lint.Warning, "fuse.main an operating point (x/big)"))},
			[]string{"warning x/big load.lamp [x/small conductor.feed]", "caution x/tiny conductor.tail ?"}},
		{"nothing into a lower word",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Caution)), "x/small"), fake("x/small", violated("conductor.feed", lint.Warning))},
			[]string{"warning x/small conductor.feed", "caution x/big conductor.feed"}},
		{"no fact into what is not proven",
			[]*lint.Rule{folds(fake("x/big", unproven("conductor.feed", lint.Danger)), "x/small"), fake("x/small", violated("conductor.feed", lint.Warning))},
			[]string{"warning x/big conductor.feed ?", "warning x/small conductor.feed"}},
		{"a state within the other's",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).in("switch.select", "a")), "x/small"),
				fake("x/small", violated("conductor.feed", lint.Warning).in("source.pack", "present", "switch.select", "a"))},
			[]string{"danger x/big conductor.feed [x/small conductor.feed]"}},
		{"more states than the other's",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).in("source.pack", "present", "switch.select", "a")), "x/small"),
				fake("x/small", violated("conductor.feed", lint.Warning).in("switch.select", "a"))},
			[]string{"danger x/big conductor.feed", "warning x/small conductor.feed"}},
		{"no state in particular",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).in("switch.select", "a")), "x/small"),
				fake("x/small", violated("conductor.feed", lint.Warning))},
			[]string{"danger x/big conductor.feed [x/small conductor.feed]"}},
		{"another state",
			[]*lint.Rule{folds(fake("x/big", violated("conductor.feed", lint.Danger).in("switch.select", "a")), "x/small"),
				fake("x/small", violated("conductor.feed", lint.Warning).in("switch.select", "b"))},
			[]string{"danger x/big conductor.feed", "warning x/small conductor.feed"}},
		{"a chain ends at its head",
			[]*lint.Rule{folds(fake("x/one", violated("fuse.main", lint.Danger)), "x/two"), folds(fake("x/two", violated("fuse.main", lint.Warning)), "x/three"),
				fake("x/three", violated("fuse.main", lint.Caution))},
			[]string{"danger x/one fuse.main [x/two fuse.main] [x/three fuse.main]"}},
		{"rules that fold each other leave one head",
			[]*lint.Rule{folds(fake("x/one", violated("fuse.main", lint.Warning)), "x/two"), folds(fake("x/two", violated("fuse.main", lint.Warning)), "x/three"),
				folds(fake("x/three", violated("fuse.main", lint.Warning)), "x/one")},
			[]string{"warning x/two fuse.main [x/one fuse.main] [x/three fuse.main]"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			expect(t, Run(decode(t, aboard), c.rules, Options{Today: day25}), c.want...)
		})
	}
}

func TestHidingAndGrouping(t *testing.T) {
	for _, c := range []struct {
		name  string
		rules []*lint.Rule
		want  []string
	}{
		{"violated hides not proven of the same rule and part",
			[]*lint.Rule{fake("x/a", unproven("fuse.main", lint.Warning, "fuse.main curve"), violated("fuse.main", lint.Warning), unproven("fuse.spare", lint.Warning, "fuse.spare rating"))},
			[]string{"warning x/a fuse.main", "caution x/a fuse.spare ?"}},
		{"but not what would count higher",
			[]*lint.Rule{fake("x/a", unproven("fuse.main", lint.Danger, "fuse.main curve"), violated("fuse.main", lint.Notice))},
			[]string{"warning x/a fuse.main ?", "notice x/a fuse.main"}},
		{"one finding for one missing input, over rules and parts",
			[]*lint.Rule{fake("x/a", unproven("fuse.main", lint.Caution, "fuse.main rating")),
				fake("x/b", unproven("conductor.feed", lint.Danger, "fuse.main rating", "conductor.feed size"), unproven("fuse.spare", lint.Danger, "fuse.spare rating"))},
			[]string{"warning x/b fuse.spare ?", "warning x/b conductor.feed ? [x/a fuse.main]"}},
		{"nothing named as missing stands alone",
			[]*lint.Rule{fake("x/a", unproven("fuse.main", lint.Danger), unproven("fuse.spare", lint.Danger))},
			[]string{"warning x/a fuse.main ?", "warning x/a fuse.spare ?"}},
		{"one cause, the first with the highest word leads",
			[]*lint.Rule{fake("x/a", violated("conductor.feed", lint.Caution).group("pack"), violated("conductor.tail", lint.Danger).group("pack"),
				violated("fuse.main", lint.Danger).group("pack"), violated("fuse.spare", lint.Danger).group("other"))},
			[]string{"danger x/a fuse.spare", "danger x/a conductor.tail [x/a fuse.main] [x/a conductor.feed]"}},
		{"groups of two rules are two",
			[]*lint.Rule{fake("x/a", violated("conductor.feed", lint.Caution).group("pack")), fake("x/b", violated("conductor.tail", lint.Caution).group("pack"))},
			[]string{"caution x/a conductor.feed", "caution x/b conductor.tail"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			expect(t, Run(decode(t, aboard), c.rules, Options{Today: day25}), c.want...)
		})
	}
}

func TestHiddenWordStaysPossible(t *testing.T) {
	r := Run(decode(t, aboard), []*lint.Rule{fake("x/a", violated("fuse.main", lint.Warning), unproven("fuse.main", lint.Danger))}, Options{Today: day25})
	expect(t, r, "warning x/a fuse.main")
	if got := r.Findings[0].RuleSeverity; got != lint.Danger {
		t.Errorf("rule severity %s, wanted danger: what was hidden does not exclude it", got)
	}
}

func TestOrderOfRulesDoesNotMatter(t *testing.T) {
	rules := []*lint.Rule{
		folds(fake("x/one", violated("fuse.main", lint.Warning), violated("conductor.feed", lint.Warning).cause("b"), violated("conductor.feed", lint.Warning).cause("a")), "x/two", "x/four"),
		folds(fake("x/two", violated("fuse.main", lint.Warning).related("conductor.feed")), "x/one", "x/three"),
		folds(fake("x/three", unproven("fuse.main", lint.Danger, "fuse.main curve"), unproven("load.lamp", lint.Danger, "fuse.main curve")), "x/four"),
		fake("x/four", violated("load.lamp", lint.Notice).group("g"), violated("fuse.main", lint.Notice).group("g"), holds("fuse.spare")),
		fake("x/five", unproven("load.lamp", lint.Danger, "fuse.main curve")),
	}
	plan := decode(t, aboard)
	want := Run(plan, rules, Options{Today: day25})
	rng := rand.New(rand.NewSource(1))
	for range 50 {
		rng.Shuffle(len(rules), func(i, j int) { rules[i], rules[j] = rules[j], rules[i] })
		if got := Run(plan, rules, Options{Today: day25}); !reflect.DeepEqual(got, want) {
			t.Fatalf("another order of rules gave\n%s\nnot\n%s", sketch(got), sketch(want))
		}
	}
}
