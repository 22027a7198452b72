package explore_test

import (
	"testing"

	"ferrule/lint/explore"
)

// stack is two batteries drawn as blocks, one on the other, with a load across both and one across
// the lower; the upper lifts out.
const stack = head + `
source "upper" {
  kind = "battery"
  removable = true
}
source "lower" {
  kind = "battery"
}
conductor "link" {
  from = source.upper.neg
  to = source.lower.pos
  polarity = "positive"
}
load "both" {
}
load "tap" {
}
conductor "top" {
  from = source.upper.pos
  to = load.both.pos
  polarity = "positive"
}
conductor "bottom" {
  from = source.lower.neg
  to = load.both.neg
  polarity = "negative"
}
conductor "tap" {
  from = source.lower
  to = load.tap
}
`

// A string of sources feeds what is across it, and only while all of it is there.
func TestSeriesFeeds(t *testing.T) {
	n, s := build(t, stack)
	for load, want := range map[int]string{0: "source.upper=present", 1: "all"} {
		z := n.Upstream(n.ZoneOf(n.Loads[load].Hot))
		views, complete := s.Views(z, explore.All())
		if !complete {
			t.Fatal("not complete")
		}
		for _, v := range views {
			fed := v.Live(nil, nil).Feeds(n.Loads[load].Port)
			if is := want == "all" || v.HasSource(0); fed != is {
				t.Errorf("load %d, upper there %v: fed %v", load, v.HasSource(0), fed)
			}
		}
	}
}

// What charges the string is across its lower battery too, though it touches no pole of it but one.
func TestSeriesAcross(t *testing.T) {
	n, s := build(t, stack)
	views, _ := s.Views(n.Series(1), explore.All())
	both, tap := n.Loads[0].Port, n.Loads[1].Port
	for _, v := range views {
		row := v.Series(1)
		if row.Across(both) != v.HasSource(0) || !row.Across(tap) {
			t.Errorf("upper there %v: across both %v, across the tap %v", v.HasSource(0), row.Across(both), row.Across(tap))
		}
		if v.HasSource(0) && len(row.Way(both)) < 3 {
			t.Errorf("the way across the string has edges %v", row.Way(both))
		}
	}
}

// Loosening can only join more, and what is kept proves that a load is dark.
func TestKeep(t *testing.T) {
	n, s := build(t, selector+"load \"lamp\" {\n}\nconductor \"d\" {\n  from = bus.panel\n  to = load.lamp\n}\n")
	lamp := n.Loads[0].Port
	views, _ := s.Views(n.Upstream(n.ZoneOf(lamp.Hot)), explore.All())
	dark := func(v *explore.View) bool { return !v.Live(nil, nil).Feeds(lamp) }
	found := map[string]bool{}
	for _, v := range views {
		kept := v.Keep(v.Zone.Vars, dark)
		if !dark(v) {
			continue
		}
		text := ""
		for _, p := range v.State(kept) {
			text += p.Addr + "=" + p.Position + " "
		}
		found[text] = true
	}
	for _, want := range []string{"switch.pick=off ", "source.pack=absent switch.pick=pack "} {
		if !found[want] {
			t.Errorf("no state is dark for %q alone: %v", want, found)
		}
	}
}
