package explore_test

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// TestCountsAgainstListing compares the counted states and networks, of the whole plan, of every zone
// and of what is held, with those seen when all are listed.
func TestCountsAgainstListing(t *testing.T) {
	many(t, 1000, func(t *rapid.T) {
		text := widePlan(t)
		n, s := build(t, text)
		resting, seen := 0, map[string]bool{}
		if !s.Each(func(v *explore.View) {
			if seen[v.Signature()] = true; v.Transit == nil {
				resting++
			}
		}) {
			t.Fatalf("too many states to list")
		}
		if total, ok := s.Total(); !ok || total.Int64() != int64(resting) {
			t.Fatalf("total %v, listed %d\n%s", total, resting, text)
		}
		if got, ok := s.Distinct(); !ok || got.Int64() != int64(len(seen)) {
			t.Fatalf("distinct %v, listed %d\n%s", got, len(seen), text)
		}
		for _, z := range append(n.Zones, n.Whole()) {
			a := randomAsk(t, n, z)
			seen := map[string]bool{}
			if !s.List(z, a, func(v *explore.View) bool { seen[v.Signature()] = true; return true }) {
				t.Fatal("too many states to list")
			}
			if got, ok := s.Different(z, a); !ok || got.Int64() != int64(len(seen)) {
				t.Fatalf("zone %d, %v: different %v, listed %d\n%s", z.ID, a, got, len(seen), text)
			}
		}
	})
}

func randomAsk(t *rapid.T, n *network.Network, z *network.Zone) explore.Ask {
	a := explore.Ask{At: map[int]int{}, Transits: rapid.Bool().Draw(t, "transits")}
	for _, v := range z.Vars {
		if rapid.IntRange(0, 3).Draw(t, "hold") == 0 {
			a.At[v] = rapid.IntRange(0, len(n.Vars[v].Positions)-1).Draw(t, "at")
		} else if k := len(n.Vars[v].Throws); k > 0 && len(a.Throws) == 0 && rapid.IntRange(0, 3).Draw(t, "move") == 0 {
			a.Moving, a.Throws = v, []*network.Throw{&n.Vars[v].Throws[rapid.IntRange(0, k-1).Draw(t, "throw")]}
		}
	}
	return a
}

// TestCountsOfVeryMany: sixty selectors, each of which may be on only while the one before it is, and
// a plan of 2^70 states; both counted exactly.
func TestCountsOfVeryMany(t *testing.T) {
	var b strings.Builder
	b.WriteString("system \"t\" {\n}\n")
	for i := range 60 {
		fmt.Fprintf(&b, "switch \"s%d\" {\n  terminals = [\"a\", \"b\"]\n}\n", i)
		if i > 0 {
			fmt.Fprintf(&b, "interlock \"i%d\" {\n  never = [{ switch.s%d = \"open\", switch.s%d = \"closed\" }]\n}\n", i, i-1, i)
		}
	}
	_, s := build(t, b.String())
	for i := 60; i < 130; i++ {
		fmt.Fprintf(&b, "switch \"s%d\" {\n  terminals = [\"a\", \"b\"]\n}\n", i)
	}
	if total, ok := s.Total(); !ok || total.Int64() != 61 {
		t.Errorf("a chain of sixty: %v, %v", total, ok)
	}
	_, s = build(t, b.String())
	want := new(big.Int).Mul(big.NewInt(61), new(big.Int).Lsh(big.NewInt(1), 70))
	for name, count := range map[string]func() (*big.Int, bool){"total": s.Total, "distinct": s.Distinct} {
		if got, ok := count(); !ok || got.Cmp(want) != 0 {
			t.Errorf("%s: %v, %v, want %v", name, got, ok, want)
		}
	}
}
