package circuit_test

import (
	"fmt"
	"strings"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
)

// line is a wire of a size and a length in m.
func line(name, from, to, polarity, size string, metres float64) string {
	return fmt.Sprintf("conductor %q {\n  from = %s\n  to = %s\n  polarity = %q\n  size = %q\n  length = \"%g m\"\n}\n", name, from, to, polarity, size, metres)
}

// dropOf is the largest drop at a load over the states of its zone.
func dropOf(t *testing.T, c *circuit.Circuit, load int) (most circuit.Drop) {
	t.Helper()
	l := &c.Net.Loads[load]
	views, _ := c.Space.Views(c.LowZone(c.Net.ZoneOf(l.Hot)), c.Space.Closed(explore.All()))
	for _, v := range views {
		if d, ok := c.DropTo(v, l.Port, 0); ok && d.Volts.Value >= most.Volts.Value {
			most = d
		}
	}
	return most
}

// What an alternator gives through a diode to a bank divides between two equal wires before the diode:
// 50 A each (Kirchhoff's laws), and not nothing because the bank stands beyond.
func TestDiodeChargesThroughARing(t *testing.T) {
	c := build(t, system+pack+"source \"alternator\" {\n  kind = \"alternator\"\n  regulated_voltage = \"14.4 V\"\n  rated = \"100 A\"\n}\nconverter \"split\" {\n  kind = \"diode\"\n}\n"+
		line("one", "source.alternator", "converter.split.in", "pair", "6 AWG", 3)+line("two", "source.alternator", "converter.split.in", "positive", "6 AWG", 3)+
		line("out", "converter.split.out", "source.pack", "pair", "6 AWG", 1))
	near(t, "half of the charge", c.Worst(c.Net.EdgesOf("conductor.two")[0]).Steady.Value, 50, 0.1)
}

// Four batteries on two buses of a ring: the bound covers the one case in which the two on the left are
// good and the two on the right are tired, given here as resistances of 2 and 10 mohm.
func TestRingOfFourBatteries(t *testing.T) {
	plan := func(left, right string) string {
		var b strings.Builder
		b.WriteString(system + load("lamp", 100) + "\n")
		for _, n := range []string{"left", "right", "mid"} {
			fmt.Fprintf(&b, "bus %q {\n  polarity = \"positive\"\n}\n", n)
		}
		b.WriteString("bus \"neg\" {\n  polarity = \"negative\"\n}\n")
		for i, n := range []string{"a", "b", "c", "d"} {
			at, ohms := "left", left
			if i > 1 {
				at, ohms = "right", right
			}
			fmt.Fprintf(&b, "source %q {\n  kind = \"battery\"\n  chemistry = \"lifepo4\"\n  voltage = \"12.8 V\"\n  capacity = \"100 Ah\"\n%s}\n", n, ohms)
			b.WriteString(line("p"+n, "source."+n+".pos", "bus."+at, "positive", "4/0 AWG", 0.1) + line("n"+n, "source."+n+".neg", "bus.neg", "negative", "4/0 AWG", 0.1))
		}
		b.WriteString(line("lm", "bus.left", "bus.mid", "positive", "4/0 AWG", 0.1) + line("rm", "bus.right", "bus.mid", "positive", "4/0 AWG", 0.1) +
			line("lr", "bus.left", "bus.right", "positive", "14 AWG", 20) + line("out", "bus.mid", "load.lamp.pos", "positive", "4/0 AWG", 0.1) + line("back", "bus.neg", "load.lamp.neg", "negative", "4/0 AWG", 0.1))
		return b.String()
	}
	unsaid := steady(build(t, plan("", "")), "conductor.lm")
	said := steady(build(t, plan("  resistance = \"2 mohm\"\n", "  resistance = \"10 mohm\"\n")), "conductor.lm")
	if said < 60 || unsaid < said*(1-1e-9) {
		t.Errorf("%g A bounds no %g A of batteries that the plan allows", unsaid, said)
	}
}

// The drop behind two batteries in series is that behind one: R x I of both runs, by Ohm's law from the
// resistance that the circuit gives for the wires.
func TestDropBehindAString(t *testing.T) {
	c := build(t, system+battery("top", false)+"\n"+battery("low", false)+"\n"+load("lamp", 20)+"\n"+line("link", "source.top.neg", "source.low.pos", "positive", "6 AWG", 1)+
		line("plus", "source.top.pos", "load.lamp.pos", "positive", "14 AWG", 10)+line("minus", "load.lamp.neg", "source.low.neg", "negative", "14 AWG", 10))
	way, _ := c.Loop(append(c.Net.EdgesOf("conductor.plus"), c.Net.EdgesOf("conductor.minus")...), circuit.Operating)
	near(t, "drop behind a string", dropOf(t, c, 0).Volts.Value, 20*way.Value, 1e-6)
}

// A charger at the panel that is off, or gives less than the lamp takes, feeds nothing: the drop counts from
// the battery at the end of the thin feed.
func TestChargerAtThePanelHidesNoDrop(t *testing.T) {
	c := build(t, system+battery("b", false)+"\n"+load("lamp", 20)+"\nsource \"shore\" {\n  kind = \"shore\"\n  voltage = \"120 V\"\n  rated = \"30 A\"\n}\n"+
		"converter \"charger\" {\n  kind = \"charger\"\n  charges = [source.b]\n  output {\n    voltage = \"14.4 V\"\n    current_max = \"5 A\"\n  }\n}\nbus \"panel\" {\n}\n"+
		line("ac", "source.shore", "converter.charger.in", "pair", "12 AWG", 3)+line("feed", "source.b", "bus.panel", "pair", "14 AWG", 10)+
		line("charge", "converter.charger.out", "bus.panel", "pair", "10 AWG", 1)+line("lamp", "bus.panel", "load.lamp", "pair", "10 AWG", 1))
	way, _ := c.Loop(append(c.Net.EdgesOf("conductor.feed"), c.Net.EdgesOf("conductor.lamp")...), circuit.Operating)
	near(t, "drop from the battery", dropOf(t, c, 0).Volts.Value, 20*way.Value, 1e-6)
}

// Behind a diode the drop counts from the diode.
func TestDropBehindADiode(t *testing.T) {
	c := build(t, system+battery("b", false)+"\n"+load("lamp", 20)+"\nconverter \"split\" {\n  kind = \"diode\"\n}\n"+
		line("in", "source.b.pos", "converter.split.in.pos", "positive", "2 AWG", 1)+line("out", "converter.split.out.pos", "load.lamp.pos", "positive", "14 AWG", 10)+
		line("common", "converter.split.out.neg", "converter.split.in.neg", "negative", "14 AWG", 1)+line("ground", "converter.split.in.neg", "source.b.neg", "negative", "2 AWG", 1)+
		line("back", "load.lamp.neg", "converter.split.out.neg", "negative", "14 AWG", 10))
	way, _ := c.Loop(append(c.Net.EdgesOf("conductor.out"), c.Net.EdgesOf("conductor.back")...), circuit.Operating)
	near(t, "drop behind a diode", dropOf(t, c, 0).Volts.Value, 20*way.Value, 1e-6)
}

// An inverter's input carries what the charger that it feeds asks for, and what it idles:
// (100 W + 14.4 V x 50 A / 0.85) / 0.85 + 50 W over the volts there.
func TestInverterFeedsACharger(t *testing.T) {
	c := build(t, system+pack+battery("other", false)+"\nconverter \"inverter\" {\n  kind = \"inverter\"\n  rated = \"2000 W\"\n  idle = \"50 W\"\n  output {\n    voltage = \"120 V\"\n  }\n}\n"+
		"converter \"charger\" {\n  kind = \"charger\"\n  charges = [source.other]\n  output {\n    voltage = \"14.4 V\"\n    current_max = \"50 A\"\n  }\n}\nload \"kettle\" {\n  power = \"100 W\"\n  behavior = \"constant-power\"\n}\n"+
		line("dc", "source.pack", "converter.inverter.in", "pair", "2 AWG", 1)+line("ac", "converter.inverter.out", "converter.charger.in", "pair", "12 AWG", 3)+
		line("kettle", "converter.inverter.out", "load.kettle", "pair", "12 AWG", 3)+line("charge", "converter.charger.out", "source.other", "pair", "6 AWG", 1))
	n, lacks := c.InputCurrent(0)
	volts := n.From[len(n.From)-1].Value
	near(t, "input of the inverter", n.Value*volts, (100+14.4*50/0.85)/0.85+50, 1e-6)
	if len(lacks) > 0 || volts > 11 {
		t.Errorf("at %g V, missing %v", volts, lacks)
	}
}

// Two circuits, each with an operating point alone, ask too much of the return that they share: both are
// told, and nothing counts as fed without a word.
func TestSharedReturnFolds(t *testing.T) {
	text := system + battery("a", false) + "\n" + battery("b", false) + "\nswitch \"tie\" {\n  terminals = [\"1\", \"2\"]\n}\nbus \"star\" {\n  polarity = \"negative\"\n}\nbus \"home\" {\n  polarity = \"negative\"\n}\n"
	for i, n := range []string{"a", "b"} {
		text += fmt.Sprintf("load %q {\n  power = \"300 W\"\n  behavior = \"constant-power\"\n}\n", n) + line("p"+n, "source."+n+".pos", "load."+n+".pos", "positive", "6 AWG", 1) +
			line("t"+n, "source."+n+".pos", fmt.Sprintf("switch.tie.%d", i+1), "positive", "6 AWG", 1) + line("s"+n, "source."+n+".neg", "bus.star", "negative", "6 AWG", 1) + line("n"+n, "load."+n+".neg", "bus.home", "negative", "6 AWG", 1)
	}
	c := build(t, text+line("shared", "bus.star", "bus.home", "negative", "18 AWG", 3))
	views, _ := c.Space.Views(c.LowZone(c.Net.ZoneOf(c.Net.Loads[0].Hot)), explore.All())
	for _, v := range views {
		low := c.Low(v, circuit.LowCase{})
		if low.Found || !low.Rest().Found || len(low.Pulls) != 2 {
			t.Fatalf("found %v, the rest %v, %d pulls", low.Found, low.Rest().Found, len(low.Pulls))
		}
		for _, x := range low.Pulls {
			if !x.Folds {
				t.Errorf("a pull of %g W at %g V does not fold", x.Watts, x.Volts)
			}
		}
	}
}

// Two constant powers that together starve a supply of 13 V and 20 A do not each draw as if it held 13 V.
func TestStarvedSupplyCountsTheFixedShare(t *testing.T) {
	c := build(t, system+"source \"supply\" {\n  kind = \"supply\"\n  voltage = \"13 V\"\n  rated = \"20 A\"\n}\nbus \"panel\" {\n}\nload \"one\" {\n  power = \"100 W\"\n  behavior = \"constant-power\"\n}\nload \"two\" {\n  power = \"300 W\"\n  behavior = \"constant-power\"\n}\n"+
		wire("feed", "source.supply", "bus.panel", "pair", 1)+"\n"+wire("one", "bus.panel", "load.one", "pair", 1)+"\n"+wire("two", "bus.panel", "load.two", "pair", 1)+"\n")
	n, _ := c.LoadCurrent(0)
	near(t, "current at 0.9 x 13 V", n.Value, 100/(0.9*13), 1e-9)
}

// What a resistance draws is not known where a charger's voltage is not.
func TestUnknownHighVoltsAreMissing(t *testing.T) {
	c := build(t, system+pack+"source \"alternator\" {\n  kind = \"alternator\"\n  rated = \"50 A\"\n}\nload \"heater\" {\n  draw = \"20 A\"\n  behavior = \"resistive\"\n}\n"+
		wire("heater", "source.pack", "load.heater", "pair", 1)+"\n"+wire("charge", "source.alternator", "source.pack", "pair", 1)+"\n")
	if _, lacks := c.LoadCurrent(0); !named(lacks, "source.alternator", "regulated_voltage") {
		t.Errorf("missing %v", lacks)
	}
}

// Where a large and a small constant power fold together, the loss to either is not known; nor is that to
// a lamp beside them, which is solved without the two.
func TestDropBesideWhatFolds(t *testing.T) {
	text := system + battery("b", false) + "\nbus \"panel\" {\n}\n" + line("feed", "source.b", "bus.panel", "pair", "14 AWG", 10) + load("lamp", 1) + "\n" + line("lamp", "bus.panel", "load.lamp", "pair", "14 AWG", 1)
	for i, n := range []string{"large", "small"} {
		watts := 300 - 100*i
		text += fmt.Sprintf("load %q {\n  power = \"%d W\"\n  behavior = \"constant-power\"\n}\n", n, watts) + line(n, "bus.panel", "load."+n, "pair", "14 AWG", 1)
	}
	c := build(t, text)
	for i := range c.Net.Loads {
		if d := dropOf(t, c, i); len(d.Lacks) == 0 || d.Lacks[0].Attribute != circuit.NoPoint {
			t.Errorf("the drop at %s is %g V and lacks %v", c.Net.Loads[i].Addr, d.Volts.Value, d.Lacks)
		}
	}
}
