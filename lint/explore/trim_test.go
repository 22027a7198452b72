package explore_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// TestTrimKeepsWhatIsJoined compares what joins the sources of a zone, over all states, with what
// joins them once everything that leads to none of them is taken away.
func TestTrimKeepsWhatIsJoined(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := randomPlan(t)
		n, s := build(t, text)
		zones := append(n.Zones, n.Whole())
		for i := range n.Sources {
			zones = append(zones, n.Series(i))
		}
		for _, z := range zones {
			var keep []network.NodeID
			for _, i := range z.Sources {
				keep = append(keep, n.Sources[i].Hot)
			}
			whole, _ := s.Views(z, explore.All())
			trimmed, _ := s.Views(n.Trim(z, keep...), explore.All())
			if a, b := joinings(n, z, whole), joinings(n, z, trimmed); !equal(a, b) {
				t.Fatalf("zone %d: %v before, %v trimmed\n%s", z.ID, a, b, text)
			}
		}
	})
}

// TestTrimRestingKeepsWhatIsJoined: at rest, what joins a load and the sources of its zone is the same without
// the limbs behind which none of them lies.
func TestTrimRestingKeepsWhatIsJoined(t *testing.T) {
	less := 0
	rapid.Check(t, func(t *rapid.T) {
		text := widePlan(t)
		n, s := build(t, text)
		for _, z := range n.Zones {
			for _, l := range z.Loads {
				keep := []network.NodeID{n.Loads[l].Hot}
				for _, i := range z.Sources {
					keep = append(keep, n.Sources[i].Hot)
				}
				trimmed := s.TrimResting(z, keep...)
				if len(trimmed.Edges) < len(n.Trim(z, keep...).Edges) {
					less++
				}
				if a, b := fed(s, z, z.Sources, l), fed(s, trimmed, z.Sources, l); !equal(a, b) {
					t.Fatalf("load %d: %v before, %v trimmed\n%s", l, a, b, text)
				}
			}
		}
	})
	if less == 0 {
		t.Error("no limb was left away")
	}
}

// fed tells each resting state by which sources are there and across which of them a load is.
func fed(s *explore.Space, z *network.Zone, sources []int, l int) map[string]bool {
	out := map[string]bool{}
	list, _ := s.Views(z, explore.All())
	for _, v := range list {
		key := ""
		for _, i := range sources {
			a, b := s.Net.Sources[i].Port, s.Net.Loads[l].Port
			key += fmt.Sprint(v.HasSource(i), v.Joined(a.Hot, b.Hot), v.Joined(a.Ret, b.Ret), ";")
		}
		if v.Transit == nil {
			out[key] = true
		}
	}
	return out
}

// joinings tells each state by which sources are there and which are across which.
func joinings(n *network.Network, z *network.Zone, list []*explore.View) map[string]bool {
	out := map[string]bool{}
	for _, v := range list {
		key := ""
		for _, i := range z.Sources {
			for _, j := range z.Sources {
				a, b := n.Sources[i].Port, n.Sources[j].Port
				key += fmt.Sprint(v.HasSource(i), v.Joined(a.Hot, b.Hot), v.Joined(a.Ret, b.Ret), v.Joined(a.Hot, b.Ret), ";")
			}
		}
		out[key] = true
	}
	return out
}
