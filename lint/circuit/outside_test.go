package circuit_test

import (
	"fmt"
	"strings"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

var all = explore.All()

const twoBuses = "bus \"a\" {\n}\nbus \"b\" {\n}\n"

// way is the live way from a node to another in some view.
func way(t *testing.T, c *circuit.Circuit, from, to string) explore.Path {
	t.Helper()
	a, b := c.Net.Node(from), c.Net.Node(to)
	views, _ := c.Space.Views(c.Net.ZoneOf(a), all)
	for _, v := range views {
		if p := v.Between(a, b); p != nil {
			return p
		}
	}
	t.Fatalf("no way from %s to %s", from, to)
	return nil
}

// Six 6 V batteries in three parallel strings of two, 2 400 A each, make 7 200 A: batteries in series
// do not add current. Explanatory text to the marine standard (ABYC E-11, interrupting capacity).
func TestFaultOfBank(t *testing.T) {
	c := build(t, system+`source "bank" {
  kind = "battery"
  chemistry = "flooded"
  voltage = "6 V"
  capacity = "220 Ah"
  short_circuit = "2400 A"
  series = 2
  parallel = 3
}
fuse "main" {
  kind = "class-t"
  rating = "200 A"
  on = source.bank
}
`)
	f := c.FaultAt(&c.Net.Sources[0], way(t, c, "source.bank.pos", "fuse.main.line.pos"))
	near(t, "fault current of the bank", f.Most.Value, 7200, 1e-6)
	if f.Least.Value <= 0 || f.Least.Value > f.Most.Value || len(f.Lacks) > 0 {
		t.Errorf("least %g, missing %v", f.Least.Value, f.Lacks)
	}
}

// 10 mm2 of PVC-insulated copper bears 1.3225e6 A2s: 1 000 A for 1.32 s. Wiki edition of an electrical
// installation guide, figure G53.
func TestWithstandTime(t *testing.T) {
	c := build(t, system+twoBuses+"conductor \"a\" {\n  from = bus.a\n  to = bus.b\n  size = \"10 mm2\"\n  insulation = \"70 C\"\n}\nconductor \"b\" {\n  from = bus.a\n  to = bus.b\n}\n")
	got, lacks := c.WithstandTime(find[*schema.Conductor](t, c, "conductor.a"), derive.Number{Value: 1000})
	near(t, "withstand time", got.Value, 1.3225, 1e-3)
	if len(lacks) > 0 {
		t.Errorf("missing %v", lacks)
	}
	if _, lacks = c.WithstandTime(find[*schema.Conductor](t, c, "conductor.b"), derive.Number{Value: 1000}); !named(lacks, "conductor.b", "size") {
		t.Errorf("missing %v, want the size", lacks)
	}
}

// A boost to 48 V and 6 A takes 26 to 32 A from a 12 V tow feed: common practice.
func TestBoostInput(t *testing.T) {
	for _, eff := range []string{"", "  efficiency = 0.9\n"} {
		start := strings.Replace(battery("start", false), "{", "{\n  resistance = \"6 mohm\"", 1)
		c := build(t, system+start+"\nconverter \"boost\" {\n  kind = \"dc-dc\"\n"+eff+"  output {\n    voltage = \"48 V\"\n    current_max = \"6 A\"\n  }\n}\n"+
			wire("feed", "source.start", "converter.boost.in", "pair", 7)+"\n")
		n, lacks := c.InputCurrent(0)
		if n.Value < 26 || n.Value > 32 || len(lacks) > 0 {
			t.Errorf("the boost takes %g A, missing %v", n.Value, lacks)
		}
		for _, e := range c.Net.EdgesOf("conductor.feed") {
			near(t, "each run of the feed", c.Worst(e).Steady.Value, n.Value, 1e-9)
		}
	}
}

// 12 m of 18 AWG there and back is 0.60 ohm hot (0.021 ohm/m at 20 C, NFPA 70 chapter 9 table 8); with
// 30 mohm of the source some 19 A of 12 V: worked by hand, Ohm's law.
func TestFaultOfThinWire(t *testing.T) {
	c := build(t, system+"source \"b\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  resistance = \"30 mohm\"\n}\nload \"lamp\" {\n}\nconductor \"run\" {\n  from = source.b\n  to = load.lamp\n  size = \"18 AWG\"\n  length = \"12 m\"\n}\n")
	loop, lacks := c.Ohms(c.Net.EdgesOf("conductor.run")[0], circuit.Least)
	near(t, "resistance of the loop", 2*loop.Value, 0.60, 0.02)
	f := c.FaultAt(&c.Net.Sources[0], way(t, c, "source.b.pos", "load.lamp.pos"))
	near(t, "least fault current, 12 V against 11.8 V empty", f.Least.Value*12/11.8, 19, 0.5)
	if len(lacks)+len(f.Lacks) > 0 {
		t.Errorf("missing %v %v", lacks, f.Lacks)
	}
	if f.Most.Value <= f.Least.Value {
		t.Errorf("most %g, least %g", f.Most.Value, f.Least.Value)
	}
}

// 10 AWG with 105 C insulation carries 60 A, and 51 A in an engine space at 50 C: 33 CFR 183.425
// table 5 and its engine-space factor 0.85; ABYC E-11 has the same figure.
func TestAmpacityInEngineSpace(t *testing.T) {
	c := build(t, system+"compartment \"engine\" {\n  engine = true\n}\n"+twoBuses+"conductor \"a\" {\n  from = bus.a\n  to = bus.b\n  size = \"10 AWG\"\n  insulation = \"105 C\"\n  through = [compartment.engine]\n}\n")
	iz, lacks := c.Ampacity(find[*schema.Conductor](t, c, "conductor.a"))
	near(t, "ampacity", iz.Value, 51, 0.01)
	if len(lacks) > 0 {
		t.Errorf("missing %v", lacks)
	}
}

// A 40 V module with -0.30 %/C at -10 C stands at 44.2 V, eleven in series at 486.2 V: trade guide on
// the sizing of strings, with NFPA 70 690.7(A)(1).
func TestColdVoc(t *testing.T) {
	text := func(series int, cold string) string {
		return fmt.Sprintf("system \"t\" {\n}\nsource \"a\" {\n  kind = \"solar\"\n  voc = \"40 V\"\n  voc_coefficient = \"-0.30 %%/C\"\n  series = %d\n%s}\n", series, cold)
	}
	c := build(t, text(11, "  coldest = \"-10 C\"\n"))
	a := find[*schema.Source](t, c, "source.a")
	v, lacks := c.ColdVoc(a)
	near(t, "cold voltage of eleven modules", v.Value, 486.2, 0.05)
	high, _, _ := c.Highest(c.Net.Sources[0].Hot)
	near(t, "highest voltage", high.Value, 486.2, 0.05)
	if len(lacks) > 0 {
		t.Errorf("missing %v", lacks)
	}
	c = build(t, text(1, ""))
	if _, lacks = c.ColdVoc(find[*schema.Source](t, c, "source.a")); !named(lacks, "source.a", "coldest") {
		t.Errorf("missing %v, want the coldest morning", lacks)
	}
}

// 14 AWG at 0.00306 ohm/ft (solid-area figure at 20 C of stranded aircraft wire), 100 ft, 20 A: 6.12 V
// in one run. FAA AC 43.13-1B change 1, table 11-7. Chapter 9 figures give 16 % less at 20 C.
func TestDropOfHandbook(t *testing.T) {
	text := "system \"t\" {\n  ambient = \"20 C\"\n}\n" + battery("b", false) + "\n" + load("lamp", 20) + "\n" +
		"conductor \"run\" {\n  from = source.b\n  to = load.lamp\n  size = \"14 AWG\"\n  length = \"100 ft\"\n}\n"
	c := build(t, text)
	p := c.Net.Loads[0].Port
	views, _ := c.Space.Views(c.Net.ZoneOf(p.Hot), all)
	d, ok := c.DropTo(views[0], p, 0)
	if !ok || len(d.Lacks) > 0 {
		t.Fatalf("no drop: %v", d.Lacks)
	}
	near(t, "drop in one run", d.Volts.Value/2, 6.12, 0.17*6.12)
	near(t, "drop as a share", d.Ratio.Value, d.Volts.Value/12, 1e-9)
}

// A 48 V lithium pack on a charger that holds 58.4 V stands at 58.4 V: 16 cells of 3.65 V, the maker's
// figure throughout the trade (common practice).
func TestHighestOnCharge(t *testing.T) {
	text := system + "source \"pack\" {\n  kind = \"battery\"\n  chemistry = \"lifepo4\"\n  voltage = \"48 V\"\n  capacity = \"50 Ah\"\n}\nconverter \"charger\" {\n  kind = \"charger\"\n  charges = [source.pack]\n%s}\n" +
		wire("lead", "converter.charger.out", "source.pack", "pair", 1) + "\n"
	for _, output := range []string{"  output {\n    voltage = \"58.4 V\"\n  }\n", ""} {
		c := build(t, fmt.Sprintf(text, output))
		high, at, lacks := c.Highest(c.Net.Node("source.pack.pos"))
		near(t, "highest volts", high.Value, 58.4, 1e-6)
		if at == nil || len(lacks) > 0 {
			t.Errorf("state %v, missing %v", at, lacks)
		}
	}
	c := build(t, system+"source \"pack\" {\n  kind = \"battery\"\n  chemistry = \"lifepo4\"\n  voltage = \"48 V\"\n}\n")
	high, _, _ := c.Highest(c.Net.Node("source.pack.pos"))
	near(t, "highest volts at rest, 16 x 3.40 V", high.Value, 54.4, 1e-6)
}

// Two returns that lie side by side share by their lengths; hand-worked.
func TestReturnsShare(t *testing.T) {
	c := build(t, system+battery("b", false)+"\n"+load("lamp", 10)+"\n"+wire("out", "source.b", "load.lamp", "positive", 3)+"\n"+
		wire("one", "source.b", "load.lamp", "negative", 3)+"\n"+wire("two", "source.b", "load.lamp", "negative", 9)+"\n")
	one, two := steady(c, "conductor.one"), steady(c, "conductor.two")
	near(t, "the sum of the shares", one+two, 10, 0.01)
	a, _ := c.Ohms(c.Net.EdgesOf("conductor.one")[0], circuit.Operating)
	b, _ := c.Ohms(c.Net.EdgesOf("conductor.two")[0], circuit.Operating)
	near(t, "the share of the shorter", one, 10*b.Value/(a.Value+b.Value), 0.01)
	unknown := strings.Replace(wire("two", "source.b", "load.lamp", "negative", 9), "  length = \"9 m\"\n", "", 1)
	c = build(t, system+battery("b", false)+"\n"+load("lamp", 10)+"\n"+wire("out", "source.b", "load.lamp", "positive", 3)+"\n"+
		wire("one", "source.b", "load.lamp", "negative", 3)+"\n"+unknown+"\n")
	for _, a := range []string{"conductor.one", "conductor.two"} { // no share is known: none may be claimed
		if w := worstOf(c, a); !named(w.Lacks, "conductor.two", "length") {
			t.Errorf("%s beside a return of unknown length: %g A, missing %v", a, w.Steady.Value, w.Lacks)
		}
	}
}

// Every current that a verdict can rest on is made of numbers: on live runs, on returns that are
// bridges, and in rings, where the parts add up to no less than the bound.
func TestCurrentsAreTraced(t *testing.T) {
	text := system + battery("b", false) + "\n" + load("lamp", 10) + "\n" + load("fan", 4) + "\n" + wire("out", "source.b", "load.lamp", "positive", 3) + "\n" +
		wire("on", "load.lamp", "load.fan", "pair", 2) + "\n" + wire("one", "source.b", "load.lamp", "negative", 3) + "\n" + wire("two", "source.b", "load.lamp", "negative", 9) + "\n"
	c := build(t, text)
	for i := range c.Net.Edges {
		w := c.Worst(i)
		if w.Steady.Value == 0 {
			continue
		}
		if len(w.Steady.From) == 0 {
			t.Errorf("%s %s: %g A is made of nothing", c.Net.Edges[i].Addr, c.Net.Edges[i].Pole, w.Steady.Value)
		}
		sum := 0.0
		for _, n := range w.Steady.From {
			sum += n.Value
		}
		if sum < w.Steady.Value*(1-1e-9) {
			t.Errorf("%s %s: the parts add up to %g A of %g", c.Net.Edges[i].Addr, c.Net.Edges[i].Pole, sum, w.Steady.Value)
		}
	}
}
