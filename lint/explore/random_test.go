package explore_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// randomPlan draws a small plan: batteries (some removable), come-and-go sources, selectors and
// on-off switches, plugs, fuses, loads, wires between random terminals, followers and interlocks.
func randomPlan(t *rapid.T) string {
	var b strings.Builder
	w := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	w("system \"t\" {\n  practice = [\"general\"]\n}")
	var terminals, pins []string
	for i := range rapid.IntRange(1, 3).Draw(t, "batteries") {
		removable := rapid.Bool().Draw(t, "removable")
		w("source \"b%d\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  removable = %v\n}", i, removable)
		terminals = append(terminals, fmt.Sprintf("source.b%d", i))
		if removable {
			pins = append(pins, fmt.Sprintf("source.b%d = \"absent\"", i), fmt.Sprintf("source.b%d = \"present\"", i))
		}
	}
	if rapid.Bool().Draw(t, "supply") {
		w("source \"s\" {\n  kind = \"supply\"\n  voltage = \"12 V\"\n}")
		terminals = append(terminals, "source.s")
		pins = append(pins, "source.s = \"present\"")
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "switches") {
		a, p := fmt.Sprintf("switch.w%d", i), rapid.IntRange(2, 3).Draw(t, "positions")
		w("switch \"w%d\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  poles = %d\n  any_order = %v", i, rapid.IntRange(1, 2).Draw(t, "poles"), rapid.Bool().Draw(t, "any"))
		if f := rapid.SampledFrom([]string{"", "make-before-break", "break-before-make"}).Draw(t, "transition"); f != "" {
			w("  transition = %q", f)
		}
		for k := range p {
			joins := rapid.SampledFrom([]string{"[]", `[["a", "b"]]`, `[["a", "c"]]`, `[["b", "c"]]`, `[["a", "b", "c"]]`}).Draw(t, "joins")
			w("  position \"p%d\" {\n    joins = %s\n  }", k, joins)
			pins = append(pins, fmt.Sprintf("%s = \"p%d\"", a, k))
		}
		w("}")
		terminals = append(terminals, a+".a", a+".b", a+".c")
	}
	if rapid.Bool().Draw(t, "relay") {
		w("switch \"relay\" {\n  kind = \"relay\"\n  terminals = [\"a\", \"b\"]\n  follows = source.b0")
		w("  position \"rest\" {\n  }\n  position \"pulled\" {\n    joins = [[\"a\", \"b\"]]\n  }\n}")
		terminals = append(terminals, "switch.relay.a", "switch.relay.b")
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "plugs") {
		w("connector \"k%d\" {\n  style = \"x\"\n  tow = %v\n}", i, rapid.Bool().Draw(t, "tow"))
		terminals = append(terminals, fmt.Sprintf("connector.k%d.fixed", i), fmt.Sprintf("connector.k%d.free", i))
		pins = append(pins, fmt.Sprintf("connector.k%d = \"mated\"", i), fmt.Sprintf("connector.k%d = \"unmated\"", i))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "fuses") {
		w("fuse \"f%d\" {\n  kind = \"blade\"\n  rating = \"%d A\"\n}", i, rapid.IntRange(1, 5).Draw(t, "rating")*5)
		terminals = append(terminals, fmt.Sprintf("fuse.f%d.line", i), fmt.Sprintf("fuse.f%d.load", i))
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "loads") {
		w("load \"l%d\" {\n  draw = \"1 A\"\n}", i)
		terminals = append(terminals, fmt.Sprintf("load.l%d", i))
	}
	pick := rapid.SampledFrom(terminals)
	for i := range rapid.IntRange(2, 10).Draw(t, "wires") {
		from, to := pick.Draw(t, "from"), pick.Draw(t, "to")
		if from != to {
			w("conductor \"c%d\" {\n  from = %s\n  to = %s\n  size = \"10 AWG\"\n  length = \"1 m\"\n}", i, from, to)
		}
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "interlocks") {
		if len(pins) == 0 {
			break
		}
		a, c := rapid.SampledFrom(pins).Draw(t, "pin"), rapid.SampledFrom(pins).Draw(t, "pin")
		if strings.Fields(a)[0] != strings.Fields(c)[0] {
			a += ", " + c
		}
		w("interlock \"i%d\" {\n  never = [{ %s }]\n}", i, a)
	}
	return b.String()
}

func build(t interface{ Fatalf(string, ...any) }, text string) (*network.Network, *explore.Space) {
	p, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatalf("%v\n%s", diags, text)
	}
	n, _ := network.Build(p)
	return n, explore.New(n, 0)
}

// TestProjectionIsExact compares the networks that a zone can be, found by projection, with those
// seen when every state of the whole plan is listed.
func TestProjectionIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := randomPlan(t)
		n, s := build(t, text)
		for _, z := range n.Zones {
			got := map[string]bool{}
			list, complete := s.Views(z, explore.All())
			if !complete {
				t.Fatalf("a small plan met the bound")
			}
			for _, v := range list {
				got[v.Signature()] = true
			}
			want := map[string]bool{}
			s.Each(func(v *explore.View) { want[v.Of(z).Signature()] = true })
			if len(got) != len(list) || !equal(got, want) {
				t.Fatalf("zone %d: projection gives %d networks (%d views), listing %d\n%s", z.ID, len(got), len(list), len(want), text)
			}
		}
	})
}

func equal(a, b map[string]bool) bool {
	if len(a) != len(b) {
		return false
	}
	for k := range a {
		if !b[k] {
			return false
		}
	}
	return true
}

// TestTotalCountsStates compares the counted total with a listing of resting states.
func TestTotalCountsStates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, s := build(t, randomPlan(t))
		resting := 0
		s.Each(func(v *explore.View) {
			if v.Transit == nil {
				resting++
			}
		})
		if total, ok := s.Total(); !ok || total.Int64() != int64(resting) {
			t.Fatalf("total %v, listed %d", total, resting)
		}
	})
}

// TestInterlockNeverAddsStates: taking an interlock away keeps every network.
func TestInterlockNeverAddsStates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s := build(t, randomPlan(t))
		for _, x := range n.Plan.Interlocks {
			free := s.Without(x)
			for _, z := range n.Zones {
				more := map[string]bool{}
				list, _ := free.Views(z, explore.All())
				for _, v := range list {
					more[v.Signature()] = true
				}
				list, _ = s.Views(z, explore.All())
				for _, v := range list {
					if !more[v.Signature()] {
						t.Fatalf("an interlock added a network to zone %d", z.ID)
					}
				}
			}
		}
	})
}

// TestGuardsAgainstEveryWay compares the least protected way with all simple ways, one by one.
func TestGuardsAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s := build(t, randomPlan(t))
		for _, z := range n.Zones {
			list, _ := s.Views(z, explore.All())
			for _, v := range list[:min(len(list), 20)] {
				for _, i := range z.Sources {
					from := n.Sources[i].Hot
					guards, widest := v.Guards(from), everyWay(n, v, from)
					for _, id := range z.Nodes {
						g, w := guards.At(id), widest[id]
						if g.Reached != (w > 0) || g.Reached && g.Rating != w {
							t.Fatalf("node %s: guard %+v, every way %g", n.Nodes[id].Name(), g, w)
						}
					}
				}
			}
		}
	})
}

const unguarded = 1e9

var inf = math.Inf(1)

// everyWay walks all simple ways; the value of a node is the largest smallest rating, 0 where it is
// not reached.
func everyWay(n *network.Network, v *explore.View, from network.NodeID) map[network.NodeID]float64 {
	best, on := map[network.NodeID]float64{}, map[network.NodeID]bool{}
	var walk func(id network.NodeID, w float64)
	walk = func(id network.NodeID, w float64) {
		best[id] = max(best[id], w)
		on[id] = true
		for _, e := range n.At(id) {
			edge := &n.Edges[e]
			to := edge.Other(id)
			if on[to] || n.Nodes[to].Return || !v.Conducts(e) {
				continue
			}
			limit := w
			if edge.Kind == network.Element {
				limit = min(w, edge.Fuse.Rating.Value)
			}
			walk(to, limit)
		}
		on[id] = false
	}
	walk(from, unguarded)
	for id, w := range best {
		if w == unguarded {
			best[id] = inf
		}
	}
	return best
}

// TestClosedLeavesNothingOut: what some state joins to a source is joined in some state with the leaf
// switches closed too, and the other way round; those that are told apart stay open in some.
func TestClosedLeavesNothingOut(t *testing.T) {
	fewer := 0
	rapid.Check(t, func(t *rapid.T) {
		text := randomPlan(t)
		n, s := build(t, text)
		for _, z := range n.Zones {
			all, _ := s.Views(z, explore.All())
			closed, _ := s.Views(z, s.Closed(explore.All()))
			if len(closed) > len(all) {
				t.Fatalf("closing adds states")
			}
			if len(closed) < len(all) {
				fewer++
			}
			for _, i := range z.Sources {
				for _, id := range z.Nodes {
					if a, b := ever(all, n.Sources[i].Hot, id), ever(closed, n.Sources[i].Hot, id); a != b {
						t.Fatalf("%s to %s: joined in some state %v, in some closed one %v\n%s", n.Sources[i].Addr, n.Nodes[id].Name(), a, b, text)
					}
				}
			}
			for _, i := range z.Loads {
				apart, _ := s.Views(z, s.Closed(explore.All(), n.Loads[i].Hot, n.Loads[i].Ret))
				for _, k := range z.Sources {
					if a, b := never(all, n.Sources[k].Port, n.Loads[i].Port), never(apart, n.Sources[k].Port, n.Loads[i].Port); a != b {
						t.Fatalf("%s from %s: parted in some state %v, in some told apart %v\n%s", n.Loads[i].Addr, n.Sources[k].Addr, a, b, text)
					}
				}
			}
		}
	})
	if fewer == 0 {
		t.Error("no random plan had a leaf switch")
	}
}

func ever(list []*explore.View, a, b network.NodeID) bool {
	for _, v := range list {
		if v.Joined(a, b) {
			return true
		}
	}
	return false
}

// never says whether two ports are parted in some state.
func never(list []*explore.View, a, b network.Port) bool {
	for _, v := range list {
		if !v.Across(a, b) {
			return true
		}
	}
	return false
}
