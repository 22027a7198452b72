package explore_test

import (
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// TestOpenedPartsOnly: once a part has opened, its contacts, halves and elements conduct nothing, and
// every other edge conducts as before.
func TestOpenedPartsOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s := build(t, randomPlan(t))
		list, _ := s.Views(n.Whole(), explore.All())
		if len(list) == 0 || len(n.Edges) == 0 {
			return
		}
		v := list[rapid.IntRange(0, len(list)-1).Draw(t, "view")]
		addr := n.Edges[rapid.IntRange(0, len(n.Edges)-1).Draw(t, "part")].Addr
		w := v.Opened(addr)
		for i, e := range n.Edges {
			opens := e.Addr == addr && (e.Kind == network.Element || e.Kind == network.Contact || e.Kind == network.Mate)
			if want := v.Conducts(i) && !opens; w.Conducts(i) != want {
				t.Fatalf("edge %d of %s: %v after %s opened", i, e.Addr, w.Conducts(i), addr)
			}
		}
	})
}

// TestAgreeing compares the search for an agreeing state with the plain enumeration.
func TestAgreeing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s := build(t, randomPlan(t))
		if len(n.Zones) < 2 || len(n.Edges) == 0 {
			return
		}
		edge := rapid.IntRange(0, len(n.Edges)-1).Draw(t, "edge")
		on := func(v *explore.View) bool { return v.Conducts(edge) }
		list, _ := s.Views(n.Zones[0], explore.All())
		whole := n.Whole()
		for _, v := range list[:min(len(list), 8)] {
			if v.Transit != nil {
				continue
			}
			want := false
			s.Each(func(w *explore.View) {
				same := w.Transit == nil
				for i := range n.Vars {
					same = same && (v.At(i) < 0 || v.At(i) == w.At(i))
				}
				want = want || same && on(w)
			})
			found, known := s.Agreeing(v, whole, on)
			if !known || (found != nil) != want {
				t.Fatalf("found %v, known %v; there is one: %v", found != nil, known, want)
			}
		}
	})
}

// TestModesOnTrust: a mode that is not relied on admits states without what it pins as present, and
// counts as occupied.
func TestModesOnTrust(t *testing.T) {
	n, s := build(t, `system "t" {}

source "pack" {
  kind      = "battery"
  removable = true
}

load "lamp" {}

conductor "c" {
  from = source.pack
  to   = load.lamp
}

mode "out" {
  state    = { source.pack = "present" }
  occupied = false
}
`)
	m := n.Plan.Modes[0]
	if s.Aboard(m) || !s.Without(m).Aboard(m) {
		t.Error("people may be aboard only where the mode is not relied on")
	}
	for _, x := range []struct {
		space  *explore.Space
		states int
	}{{s, 1}, {s.Without(m), 2}} {
		list, _ := x.space.Views(n.ZoneOf(n.Sources[0].Hot), x.space.In(m))
		if len(list) != x.states {
			t.Errorf("%d states in the mode, wanted %d", len(list), x.states)
		}
	}
}
