package explore_test

import (
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
)

// TestSoughtBeyondTheBound: with a bound that cuts nearly every list, what is sought is found exactly where
// listing all states finds it.
func TestSoughtBeyondTheBound(t *testing.T) {
	found, none := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text := randomPlan(t)
		n, all := build(t, text)
		cut := explore.New(n, 2)
		for _, z := range n.Zones {
			for _, i := range z.Sources {
				for _, j := range z.Sources {
					a, b := n.Sources[i].Port, n.Sources[j].Port
					so := func(v *explore.View) bool { return i != j && v.HasSource(i) && v.HasSource(j) && v.Across(a, b) }
					want := false
					all.Each(func(v *explore.View) { want = want || so(v.Of(z)) })
					views, complete := cut.Views(z, explore.All())
					if complete {
						continue
					}
					got := false
					views, known := cut.Sought(z, explore.All(), views, so)
					for _, v := range views {
						got = got || so(v)
					}
					if !known || got != want {
						t.Fatalf("%s and %s: sought %v (known %v), listed %v\n%s", n.Sources[i].Addr, n.Sources[j].Addr, got, known, want, text)
					}
					if want {
						found++
					} else {
						none++
					}
				}
			}
		}
	})
	if found == 0 || none == 0 {
		t.Errorf("met %d times, not met %d times", found, none)
	}
}
