package explore_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// told names a view's state, its transit included.
func told(n *network.Network, v *explore.View) string {
	all := make([]int, len(n.Vars))
	for i := range all {
		all[i] = i
	}
	return say(v.State(all))
}

// TestListIsExact compares what is listed one after another with the plain enumeration, whole and
// narrowed to positions, to a switch on its way, and to the resting states.
func TestListIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := randomPlan(t)
		n, s := build(t, text)
		a := explore.Ask{At: map[int]int{}, Transits: rapid.Bool().Draw(t, "transits")}
		for v := range n.Vars {
			if rapid.IntRange(0, 3).Draw(t, "hold") == 0 {
				a.At[v] = rapid.IntRange(0, len(n.Vars[v].Positions)-1).Draw(t, "at")
			} else if k := len(n.Vars[v].Throws); k > 0 && len(a.Throws) == 0 && rapid.IntRange(0, 3).Draw(t, "move") == 0 {
				a.Moving, a.Throws = v, []*network.Throw{&n.Vars[v].Throws[rapid.IntRange(0, k-1).Draw(t, "throw")]}
			}
		}
		fits := func(v *explore.View) bool {
			for i, at := range a.At {
				if v.At(i) != at || v.Transit != nil && v.Transit.Var == i {
					return false
				}
			}
			if len(a.Throws) > 0 {
				return v.Transit != nil && v.Transit.Throw == a.Throws[0]
			}
			return v.Transit == nil || a.Transits
		}
		want, got := map[string]int{}, map[string]int{}
		s.Each(func(v *explore.View) {
			if fits(v) {
				want[told(n, v)+v.Signature()]++
			}
		})
		if !s.List(n.Whole(), a, func(v *explore.View) bool { got[told(n, v)+v.Signature()]++; return true }) {
			t.Fatal("a small plan met the bound")
		}
		if !maps.Equal(want, got) {
			t.Fatalf("%v\nlisting gives %d states, the plain enumeration %d\n%s", a, len(got), len(want), text)
		}
		if ok, known := s.Allows(a.At); len(a.Throws) == 0 && (!known || ok != (len(want) > 0)) {
			t.Fatalf("%v is allowed: %v, %v; there are %d states\n%s", a, ok, known, len(want), text)
		}
	})
}

// A plan with 2^70 states gives its first ones at once, and says where the bound ended it.
func TestListOfVeryMany(t *testing.T) {
	var b strings.Builder
	b.WriteString("system \"t\" {\n}\n")
	for i := range 70 {
		fmt.Fprintf(&b, "switch \"s%d\" {\n  terminals = [\"a\", \"b\"]\n}\n", i)
	}
	n, s := build(t, b.String())
	seen := 0
	if !s.List(n.Whole(), explore.Ask{}, func(*explore.View) bool { seen++; return seen < 10 }) || seen != 10 {
		t.Errorf("%d states before the stop", seen)
	}
	if s.List(n.Whole(), explore.Ask{}, func(*explore.View) bool { return true }) {
		t.Error("2^70 states were all listed")
	}
	last := n.Var("switch.s69")
	s.List(n.Whole(), explore.Ask{At: map[int]int{last: 1}}, func(v *explore.View) bool {
		if v.At(last) != 1 {
			t.Error("a held switch moved")
		}
		return false
	})
	s.Stop = func() bool { return true }
	if s.List(n.Whole(), explore.Ask{}, func(*explore.View) bool { return true }) {
		t.Error("the caller's stop was not minded")
	}
}

func TestExcludes(t *testing.T) {
	n, s := build(t, `system "t" {
}
switch "a" {
  terminals = ["x", "y"]
}
switch "b" {
  terminals = ["x", "y"]
}
interlock "one" {
  never = [{ switch.a = "closed", switch.b = "closed" }]
}
interlock "other" {
  never = [{ switch.a = "closed", switch.b = "open" }]
}
`)
	a, b := n.Var("switch.a"), n.Var("switch.b")
	names := func(at map[int]int) (out []string) {
		for _, x := range s.Excludes(at) {
			out = append(out, x.Addr)
		}
		return out
	}
	if got := names(map[int]int{a: 1, b: 1}); !slices.Equal(got, []string{"interlock.one"}) {
		t.Errorf("%v", got)
	}
	if got := names(map[int]int{a: 1}); !slices.Equal(got, []string{"interlock.one", "interlock.other"}) {
		t.Errorf("either one taken away lets %q: %v", "a", got)
	}
	if ok, known := s.Allows(map[int]int{a: 1}); ok || !known {
		t.Errorf("%v %v", ok, known)
	}
}
