package circuit_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/schema"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > within {
		t.Errorf("%s is %g, want %g within %g", what, got, want, within)
	}
}

func named(list []derive.Missing, subject, attribute string) bool {
	return slices.Contains(list, derive.Missing{Subject: subject, Attribute: attribute})
}

// worstOf is the largest current through any edge of the part at addr, with all that its edges lack.
func worstOf(c *circuit.Circuit, addr string) circuit.Current {
	best := circuit.Current{Complete: true}
	for _, e := range c.Net.EdgesOf(addr) {
		w := c.Worst(e)
		lacks, complete := append(slices.Clone(w.Lacks), best.Lacks...), w.Complete && best.Complete
		if best.Steady.Kind == 0 || w.Steady.Value > best.Steady.Value {
			best = w
		}
		best.Lacks, best.Complete = lacks, complete
	}
	return best
}

func steady(c *circuit.Circuit, addr string) float64 {
	w := worstOf(c, addr)
	return w.Steady.Value
}

// find looks a block up.
func find[T schema.Block](t *testing.T, c *circuit.Circuit, addr string) T {
	t.Helper()
	b, ok := schema.Lookup[T](c.Net.Plan, addr)
	if !ok {
		t.Fatalf("no %s", addr)
	}
	return b
}

const pack = `
source "pack" {
  kind = "battery"
  chemistry = "lifepo4"
  voltage = "12.8 V"
  capacity = "100 Ah"
}
`

const array = `
source "array" {
  kind = "solar"
  voc = "22 V"
  vmp = "18 V"
  isc = "30 A"
  imp = "28 A"
}
converter "tracker" {
  kind = "mppt"
  charges = [source.pack]
  output {
    voltage = "14.4 V"
    current_max = "20 A"
  }
}
` + "conductor \"sun\" {\n  from = source.array\n  to = converter.tracker.in\n}\n"

// What charges the pack flows in its wire, and comes on top of nothing: it is the larger of charge
// and load that counts, each way.
func TestChargeCounts(t *testing.T) {
	text := system + pack + array + load("lamp", 3) +
		"\nbus \"panel\" {\n}\n" + wire("feed", "source.pack", "bus.panel", "pair", 1) + "\n" +
		wire("charge", "converter.tracker.out", "bus.panel", "pair", 1) + "\n" + wire("lamp", "bus.panel", "load.lamp", "pair", 1) + "\n"
	c := build(t, text)
	near(t, "charge current in the pack's wire", steady(c, "conductor.feed"), 20, 1e-9)
	near(t, "current of the lamp's wire", steady(c, "conductor.lamp"), 3, 1e-9)
	w := worstOf(c, "conductor.feed")
	if len(w.Lacks) > 0 || !w.Complete {
		t.Errorf("nothing is missing, but %v", w.Lacks)
	}
}

// An alternator without a rating charges lithium with nobody knows what: it is named, in the live
// wire and in the return.
func TestAlternatorWithoutRating(t *testing.T) {
	text := system + pack + "source \"alternator\" {\n  kind = \"alternator\"\n  regulated_voltage = \"14.4 V\"\n}\n" +
		wire("charge", "source.alternator", "source.pack", "pair", 3) + "\n"
	c := build(t, text)
	for _, e := range c.Net.EdgesOf("conductor.charge") {
		if w := c.Worst(e); !named(w.Lacks, "source.alternator", "rated") {
			t.Errorf("edge %d: %g A, missing %v", e, w.Steady.Value, w.Lacks)
		}
	}
}

// Lead-acid bounds the charge itself: 0.25 C of 100 Ah.
func TestLeadAcidBoundsCharge(t *testing.T) {
	text := system + battery("b", false) + "\nsource \"alternator\" {\n  kind = \"alternator\"\n  regulated_voltage = \"14.4 V\"\n}\n" +
		wire("charge", "source.alternator", "source.b", "pair", 3) + "\n" + wire("spare", "source.alternator", "source.b", "negative", 1) + "\n"
	c := build(t, text)
	near(t, "charge of lead-acid", steady(c, "conductor.charge"), 25, 1e-9)
	if back := steady(c, "conductor.spare"); back < 12.5 || back > 25 {
		t.Errorf("the shorter of two returns carries %g A of 25 A", back)
	}
}

// diodes join an alternator to a lithium bank and to its loads: the current of a diode is what hangs
// behind it, and its voltage is that before it.
func TestDiodePassesCurrent(t *testing.T) {
	text := func(rated string) string {
		return system + pack + load("lamp", 7) + "\nsource \"alternator\" {\n  kind = \"alternator\"\n  regulated_voltage = \"14.4 V\"\n" + rated + "}\nconverter \"split\" {\n  kind = \"diode\"\n}\n" +
			wire("in", "source.alternator", "converter.split.in", "pair", 1) + "\n" + wire("out", "converter.split.out", "source.pack", "pair", 1) + "\n" +
			wire("lamp", "source.pack", "load.lamp", "pair", 1) + "\n"
	}
	c := build(t, text("  rated = \"60 A\"\n"))
	for _, a := range []string{"conductor.in", "conductor.out"} {
		near(t, "current of "+a, steady(c, a), 60, 1e-9)
		for _, e := range c.Net.EdgesOf(a) {
			near(t, "both runs of "+a, c.Worst(e).Steady.Value, 60, 1e-9)
		}
	}
	high, _, _ := c.Highest(c.Net.Node("source.pack.pos"))
	near(t, "highest volts behind the diode", high.Value, 14.4, 1e-9)
	c = build(t, text(""))
	for _, a := range []string{"conductor.in", "conductor.out"} {
		if w := worstOf(c, a); !named(w.Lacks, "source.alternator", "rated") {
			t.Errorf("%s lacks %v", a, w.Lacks)
		}
	}
}

// stack is sources in series, drawn as blocks, with one load across all.
func stack(n int, removable bool) string {
	out := system
	for i := range n {
		out += battery(fmt.Sprintf("b%d", i), removable && i == 0) + "\n"
		if i > 0 {
			out += wire(fmt.Sprintf("link%d", i), fmt.Sprintf("source.b%d.neg", i), fmt.Sprintf("source.b%d.pos", i-1), "positive", 1) + "\n"
		}
	}
	out += load("lamp", 9) + "\n" + wire("top", fmt.Sprintf("source.b%d.pos", n-1), "load.lamp.pos", "positive", 1) + "\n"
	return out + wire("bottom", "source.b0.neg", "load.lamp.neg", "negative", 1) + "\n"
}

// Every wire of a string of sources carries the string's current, and its top has the sum of volts.
func TestSourcesInSeries(t *testing.T) {
	for _, removable := range []bool{false, true} {
		c := build(t, stack(4, removable))
		for _, a := range []string{"conductor.top", "conductor.link1", "conductor.link2", "conductor.link3", "conductor.bottom"} {
			near(t, "current of "+a, steady(c, a), 9, 1e-9)
		}
		for i, node := range []string{"source.b0.pos", "source.b1.pos", "source.b3.pos"} {
			high, _, _ := c.Highest(c.Net.Node(node))
			near(t, "highest volts at "+node, high.Value, []float64{12.8, 25.6, 51.2}[i], 1e-6)
		}
	}
}

// A load on the middle of a string, or across its upper half, is counted in every link it uses.
func TestTapOfString(t *testing.T) {
	text := stack(2, false) + load("low", 4) + "\n" + wire("low", "source.b0", "load.low", "pair", 1) + "\n" + load("high", 2) + "\n" +
		wire("high", "source.b1.pos", "load.high.pos", "positive", 1) + "\n" + wire("middle", "load.high.neg", "source.b0.pos", "positive", 1) + "\n"
	c := build(t, text)
	for a, least := range map[string]float64{"conductor.link1": 11, "conductor.low": 4, "conductor.middle": 2, "conductor.high": 2, "conductor.bottom": 9, "conductor.top": 9} {
		if got := steady(c, a); got < least {
			t.Errorf("%s: %g A, it can carry %g A", a, got, least)
		}
	}
}

// Both poles of a switch carry the same, and so do the wires behind its second pole.
func TestTwoPoles(t *testing.T) {
	text := system + battery("b", false) + "\nswitch \"main\" {\n  terminals = [\"a\", \"b\"]\n  poles = 2\n  position \"off\" {\n  }\n  position \"on\" {\n    joins = [[\"a\", \"b\"]]\n  }\n}\n" +
		load("lamp", 9) + "\n" + wire("feed", "source.b", "switch.main.a", "pair", 1) + "\n" + wire("lamp", "switch.main.b", "load.lamp", "pair", 1) + "\n"
	c := build(t, text)
	for _, a := range []string{"conductor.feed", "switch.main", "conductor.lamp"} {
		edges := c.Net.EdgesOf(a)
		if len(edges) != 2 {
			t.Fatalf("%s has %d edges", a, len(edges))
		}
		for _, e := range edges {
			near(t, "each pole of "+a, c.Worst(e).Steady.Value, 9, 1e-9)
		}
	}
	on := c.Net.Loads[0]
	views, _ := c.Space.Views(c.Net.ZoneOf(on.Hot), all)
	for _, v := range views {
		d, ok := c.DropTo(v, on.Port, 0)
		if !ok {
			continue
		}
		one, _ := c.Ohms(c.Net.EdgesOf("conductor.feed")[0], circuit.Operating)
		near(t, "drop through both poles, two wires of two runs", d.Volts.Value, 4*one.Value*9, 1e-9)
	}
}
