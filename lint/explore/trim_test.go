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
