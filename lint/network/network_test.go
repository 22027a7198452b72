package network_test

import (
	"slices"
	"strings"
	"testing"

	"ferrule/lint/network"
	"ferrule/schema"
)

const head = "system \"t\" {\n  practice = [\"general\"]\n}\n"

func build(t *testing.T, text string) (*network.Network, []string) {
	t.Helper()
	p, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, problems := network.Build(p)
	var out []string
	for _, d := range problems {
		out = append(out, d.Summary)
	}
	return n, out
}

func returns(n *network.Network) []string {
	var out []string
	for _, x := range n.Nodes {
		if x.Return {
			out = append(out, x.Name())
		}
	}
	slices.Sort(out)
	return out
}

// TestPairIsTwoEdges: a pair conductor is two wires, a fuse breaks the first and passes the second.
func TestPairIsTwoEdges(t *testing.T) {
	n, _ := build(t, head+`
source "b" {
  kind = "battery"
  voltage = "12 V"
}
fuse "f" {
  on = source.b
}
load "l" {
  draw = "1 A"
}
conductor "c" {
  from = fuse.f.load
  to = load.l
}
`)
	kinds := map[string]int{}
	for _, e := range n.Edges {
		kinds[e.Kind.String()+" "+e.Pole.String()]++
	}
	want := map[string]int{"wire pos": 1, "wire neg": 1, "element pos": 1, "through neg": 1, "joint pos": 1, "joint neg": 1}
	for k, v := range want {
		if kinds[k] != v {
			t.Errorf("%s: %d, want %d (%v)", k, kinds[k], v, kinds)
		}
	}
	if got, want := returns(n), []string{"fuse.f.line.neg", "fuse.f.load.neg", "load.l.neg", "source.b.neg"}; !slices.Equal(got, want) {
		t.Errorf("return set %q, want %q", got, want)
	}
}

// TestReference: the chassis bus is the reference where there is one; a series string's middle is
// live; a one-pole bus under a device joins one node only.
func TestReference(t *testing.T) {
	for _, c := range []struct{ name, text, live string }{
		{"series string", `
source "low" {
  kind = "battery"
  voltage = "12 V"
}
source "high" {
  kind = "battery"
  voltage = "12 V"
}
conductor "link" {
  polarity = "positive"
  from = source.low.pos
  to = source.high.neg
}
`, "source.high.neg"},
		{"device on a positive bus", `
bus "plus" {
  polarity = "positive"
}
source "b" {
  kind = "battery"
  voltage = "12 V"
}
conductor "c" {
  polarity = "positive"
  from = source.b.pos
  to = bus.plus
}
fuse "f" {
  on = bus.plus
}
`, "fuse.f.load.pos"},
	} {
		n, problems := build(t, head+c.text)
		if len(problems) > 0 {
			t.Errorf("%s: %q", c.name, problems)
		}
		id := n.Node(c.live)
		if id == network.None || n.Nodes[id].Return {
			t.Errorf("%s: %s is not live; returns %q", c.name, c.live, returns(n))
		}
	}
}

// TestProblems: what no plan may join.
func TestProblems(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"AC on DC", `
source "shore" {
  kind = "shore"
  voltage = "120 V ac"
}
source "b" {
  kind = "battery"
  voltage = "12 V"
}
conductor "c" {
  from = source.shore
  to = source.b
}
`, "Alternating and direct current are joined"},
		{"dead short", `
source "b" {
  kind = "battery"
  voltage = "12 V"
}
conductor "c" {
  polarity = "positive"
  from = source.b.pos
  to = source.b.neg
}
`, "A source is short-circuited"},
		{"load from positive to positive", `
source "b" {
  kind = "battery"
  voltage = "12 V"
}
fuse "f" { on = source.b }
load "l" { draw = "1 A" }
conductor "c" {
  polarity = "positive"
  from = fuse.f.load.pos
  to = load.l.pos
}
conductor "d" {
  polarity = "positive"
  from = fuse.f.load.pos
  to = load.l.neg
}
`, "Both poles are joined"},
		{"load shorted by a wire", `
source "b" {
  kind = "battery"
  voltage = "12 V"
}
fuse "f" { on = source.b }
load "l" { draw = "1 A" }
conductor "c" {
  from = fuse.f.load
  to = load.l
}
conductor "d" {
  polarity = "positive"
  from = load.l.pos
  to = load.l.neg
}
`, "Both poles are joined"},
		{"line to line", `
source "b" {
  kind = "shore"
  voltage = "120 V ac"
}
fuse "f" { on = source.b }
load "l" { power = "50 W" }
conductor "c" {
  polarity = "positive"
  from = fuse.f.load.line
  to = load.l.line
}
conductor "d" {
  polarity = "positive"
  from = fuse.f.load.line
  to = load.l.neutral
}
`, "Both poles are joined"},
		{"reversed load", `
source "b" {
  kind = "battery"
  voltage = "12 V"
}
load "l" {
  draw = "1 A"
}
conductor "c" {
  polarity = "positive"
  from = source.b.neg
  to = load.l.pos
}
`, "A positive is joined to the return"},
		{"follower with three positions", `
source "b" {
  kind = "battery"
  voltage = "12 V"
  removable = true
}
switch "s" {
  terminals = ["a", "b"]
  follows = source.b
  position "x" {
  }
  position "y" {
    joins = [["a", "b"]]
  }
  position "z" {
  }
}
`, "A following switch has two positions"},
		{"followers in a ring", `
connector "a" {
  follows = connector.b
}
connector "b" {
  follows = connector.a
}
`, "A part follows itself"},
	} {
		if _, got := build(t, head+c.text); !slices.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestZones: a converter parts the live side; both sides know the converter; the AC side is AC.
func TestZones(t *testing.T) {
	n, problems := build(t, head+`
source "b" {
  kind = "battery"
  voltage = "12 V"
}
converter "inv" {
  kind = "inverter"
}
load "kettle" {
  power = "800 W"
}
conductor "c" {
  from = source.b
  to = converter.inv["in"]
}
conductor "d" {
  from = converter.inv["out"]
  to = load.kettle
}
`)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	dc, ac := n.ZoneOf(n.Node("source.b.pos")), n.ZoneOf(n.Node("load.kettle.line"))
	if dc == nil || ac == nil || dc == ac {
		t.Fatalf("zones %v %v", dc, ac)
	}
	if dc.AC || !ac.AC || len(dc.Inputs) != 1 || len(ac.Outputs) != 1 || len(ac.Loads) != 1 {
		t.Errorf("dc %+v, ac %+v", dc, ac)
	}
	if up := n.Upstream(ac); len(up.Sources) != 1 || len(up.Nodes) != len(dc.Nodes)+len(ac.Nodes) {
		t.Errorf("upstream %+v", up)
	}
}

// TestReturnsArePruned: a return that leads nowhere brings no position into a zone.
func TestReturnsArePruned(t *testing.T) {
	n, _ := build(t, head+`
source "b" {
  kind = "battery"
  voltage = "12 V"
}
load "l" {
  draw = "1 A"
}
connector "spare" {
}
conductor "c" {
  from = source.b
  to = load.l
}
conductor "d" {
  polarity = "negative"
  from = source.b.neg
  to = connector.spare.fixed.neg
}
`)
	for _, v := range n.ZoneOf(n.Node("load.l.pos")).Vars {
		if strings.HasPrefix(n.Vars[v].Addr, "connector") {
			t.Errorf("a dead-end return makes the zone depend on %s", n.Vars[v].Addr)
		}
	}
}
