package explore_test

import (
	"slices"
	"strings"
	"testing"

	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

const head = "system \"t\" {\n  practice = [\"general\"]\n}\n"

// selector is two batteries, one of them removable, on a selector that feeds a bus.
const selector = head + `
source "pack" {
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  removable = true
}
source "truck" {
  kind = "battery"
  chemistry = "flooded"
  voltage = "12 V"
}
switch "pick" {
  terminals = ["pack", "truck", "house"]
  position "pack" {
    joins = [["pack", "house"]]
  }
  position "off" {
  }
  position "truck" {
    joins = [["truck", "house"]]
  }
}
bus "panel" {
}
conductor "a" {
  from = source.pack
  to = switch.pick.pack
}
conductor "b" {
  from = source.truck
  to = switch.pick.truck
}
conductor "c" {
  from = switch.pick.house
  to = bus.panel
}
`

func states(t *testing.T, text string, pick func(*network.Network, *explore.View) bool) []string {
	t.Helper()
	n, s := build(t, text)
	var out []string
	for _, z := range n.Zones {
		list, complete := s.Views(z, explore.All())
		if !complete {
			t.Fatal("met the bound")
		}
		for _, v := range list {
			if pick(n, v) {
				out = append(out, say(v.State(z.Vars)))
			}
		}
	}
	slices.Sort(out)
	return out
}

func say(state []network.Position) string {
	var words []string
	for _, p := range state {
		words = append(words, p.Addr+"="+p.Position)
	}
	return strings.Join(words, " ")
}

func joined(a, b string) func(*network.Network, *explore.View) bool {
	return func(n *network.Network, v *explore.View) bool { return v.Joined(n.Node(a), n.Node(b)) }
}

// TestOverlapJoins: thrown pack, truck with no off between, the overlap joins the two batteries;
// with off between them, or break-before-make, nothing does.
func TestOverlapJoins(t *testing.T) {
	noOff := strings.Replace(selector, "  position \"off\" {\n  }\n", "", 1)
	both := joined("source.pack.pos", "source.truck.pos")
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"off between", selector, nil},
		{"any order", strings.Replace(selector, `terminals =`, "any_order = true\n  terminals =", 1),
			[]string{"source.pack=absent switch.pick=pack>truck (overlap)", "source.pack=present switch.pick=pack>truck (overlap)"}},
		{"no off", noOff,
			[]string{"source.pack=absent switch.pick=pack>truck (overlap)", "source.pack=present switch.pick=pack>truck (overlap)"}},
		{"break first", strings.Replace(noOff, `terminals =`, "transition = \"break-before-make\"\n  terminals =", 1), nil},
		{"end state ruled out", noOff + "interlock \"i\" {\n  never = [{ switch.pick = \"truck\" }]\n}\n", nil},
		{"only while the pack is in", noOff + "interlock \"i\" {\n  never = [{ switch.pick = \"truck\", source.pack = \"absent\" }]\n}\n",
			[]string{"source.pack=present switch.pick=pack>truck (overlap)"}},
	} {
		if got := states(t, c.text, both); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestGapParts: in the gap of a break-before-make throw the bus is on neither battery.
func TestGapParts(t *testing.T) {
	text := strings.Replace(selector, "  position \"off\" {\n  }\n", "", 1)
	text = strings.Replace(text, `terminals =`, "transition = \"break-before-make\"\n  terminals =", 1)
	dark := func(n *network.Network, v *explore.View) bool {
		bus := n.Node("bus.panel.pos")
		return n.ZoneOf(bus) == v.Zone && !v.Joined(bus, n.Node("source.pack.pos")) && !v.Joined(bus, n.Node("source.truck.pos"))
	}
	want := []string{"source.pack=absent switch.pick=pack>truck (gap)", "source.pack=present switch.pick=pack>truck (gap)"}
	if got := states(t, text, dark); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestNoStateAtAll: interlocks that contradict each other leave no state, in zones that they do not
// touch either.
func TestNoStateAtAll(t *testing.T) {
	text := selector + `
source "far" {
  kind = "battery"
  voltage = "12 V"
  removable = true
}
interlock "i" {
  never = [{ source.far = "absent" }, { source.far = "present" }]
}
`
	if got := states(t, text, func(*network.Network, *explore.View) bool { return true }); got != nil {
		t.Errorf("states remain: %q", got)
	}
}

// TestFollower: a plug that follows the pack is mated exactly while the pack is there, and the state
// names the pack, which somebody can lift out, not the plug.
func TestFollower(t *testing.T) {
	text := head + `
source "pack" {
  kind = "battery"
  voltage = "12.8 V"
  removable = true
}
connector "dock" {
  style = "d"
  follows = source.pack
}
load "lamp" {
  draw = "1 A"
}
conductor "a" {
  from = source.pack
  to = connector.dock.free
}
conductor "b" {
  from = connector.dock.fixed
  to = load.lamp
}
`
	n, s := build(t, text)
	if total, _ := s.Total(); total.Int64() != 2 {
		t.Errorf("%v states, want 2", total)
	}
	list, _ := s.Views(n.Upstream(n.ZoneOf(n.Node("load.lamp.pos"))), explore.All())
	for _, v := range list {
		e := v.Live(nil, nil)
		here := v.HasSource(0)
		if e.Feeds(n.Loads[0].Port) != here {
			t.Errorf("%s: lamp fed %v, pack there %v", say(v.State(v.Zone.Vars)), !here, here)
		}
		if got := say(v.State(v.Zone.Vars)); strings.Contains(got, "dock") {
			t.Errorf("the state names the follower: %s", got)
		}
	}
}

// TestPoles: a single-pole switch leaves the negative joined, a two-pole switch opens both, and a
// load is fed only when its return comes home too.
func TestPoles(t *testing.T) {
	text := head + `
source "b" {
  kind = "battery"
  voltage = "12 V"
}
switch "s" {
  terminals = ["feed", "lamp"]
  poles = 1
}
load "l" {
  draw = "1 A"
}
conductor "a" {
  from = source.b
  to = switch.s["feed"]
}
conductor "c" {
  from = switch.s["lamp"]
  to = load.l
}
`
	for poles, joined := range map[string]bool{"poles = 1": true, "poles = 2": false} {
		n, s := build(t, strings.Replace(text, "poles = 1", poles, 1))
		list, _ := s.Views(n.ZoneOf(n.Node("load.l.pos")), explore.All())
		for _, v := range list {
			open := !v.Joined(n.Node("source.b.pos"), n.Node("load.l.pos"))
			if got := v.Joined(n.Node("source.b.neg"), n.Node("load.l.neg")); open && got != joined {
				t.Errorf("%s: negative joined while open = %v", poles, got)
			}
		}
	}
}

// TestFilters: a mode pins what nobody can reach; a breakaway parts the tow plug whatever the mode says.
func TestFilters(t *testing.T) {
	text := selector + `
connector "tow" {
  style = "t"
  tow = true
}
conductor "d" {
  from = bus.panel
  to = connector.tow.fixed
}
mode "towing" {
  state = { source.pack = "present", connector.tow = "mated", switch.pick = "off" }
}
mode "stored" {
  occupied = false
  state = { source.pack = "absent" }
}
`
	n, s := build(t, text)
	z := n.ZoneOf(n.Node("bus.panel.pos"))
	towing, _ := schema.Lookup[*schema.Mode](n.Plan, "mode.towing")
	at := func(f explore.Filter, addr string) []string {
		seen := map[string]bool{}
		list, _ := s.Views(z, f)
		for _, v := range list {
			if v.Transit == nil {
				seen[n.Vars[n.Var(addr)].Positions[v.At(n.Var(addr))]] = true
			}
		}
		var out []string
		for k := range seen {
			out = append(out, k)
		}
		slices.Sort(out)
		return out
	}
	for _, c := range []struct {
		name string
		f    explore.Filter
		addr string
		want []string
	}{
		{"all", explore.All(), "source.pack", []string{"absent", "present"}},
		{"mode pins a source", s.In(towing), "source.pack", []string{"present"}},
		{"a reachable switch stays free", s.In(towing), "switch.pick", []string{"off", "pack", "truck"}},
		{"resting pins it", s.Resting(towing), "switch.pick", []string{"off"}},
		{"mode pins a plug", s.In(towing), "connector.tow", []string{"mated"}},
		{"breakaway parts it", s.Parted(towing), "connector.tow", []string{"unmated"}},
		{"occupied leaves out storage", s.Occupied(), "source.pack", []string{"present"}},
	} {
		if got := at(c.f, c.addr); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestBound: a search that meets its bound says so.
func TestBound(t *testing.T) {
	p, diags := schema.Decode("t.wiring.hcl", []byte(selector), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, _ := network.Build(p)
	s := explore.New(n, 3)
	_, complete := s.Views(n.ZoneOf(n.Node("bus.panel.pos")), explore.All())
	if complete || s.Complete() {
		t.Error("six states in a bound of three, and nothing was said")
	}
	s = explore.New(n, 0)
	s.Stop = func() bool { return true }
	if _, complete := s.Views(n.ZoneOf(n.Node("bus.panel.pos")), explore.All()); !complete {
		t.Error("a small search was stopped before it asked")
	}
}

// TestDistinct counts joined networks: six resting states and no transit that differs, less the two
// in which an absent pack is selected or not, which are different networks too.
func TestDistinct(t *testing.T) {
	_, s := build(t, selector)
	if got, ok := s.Distinct(); !ok || got.Int64() != 6 {
		t.Errorf("%d networks, want 6", got)
	}
}
