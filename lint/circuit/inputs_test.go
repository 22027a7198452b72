package circuit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

// The class is that of the stated figure; figures between classes are their own.
func TestNominalClasses(t *testing.T) {
	for _, x := range []struct {
		volts  string
		series int
		want   float64
	}{
		{"12.8 V", 1, 12}, {"13.2 V", 1, 12}, {"25.6 V", 1, 24}, {"36 V", 1, 36}, {"51.2 V", 1, 48}, {"6 V", 1, 6}, {"6 V", 2, 12},
		{"12 V", 4, 48}, {"18 V", 1, 18}, {"3.2 V", 4, 12}, {"96 V", 1, 96},
	} {
		c := build(t, system+fmt.Sprintf("source \"b\" {\n  kind = \"battery\"\n  voltage = %q\n  series = %d\n}\n", x.volts, x.series))
		n, ok := c.Nominal(c.Net.Sources[0].Hot)
		if !ok || n.Value != x.want {
			t.Errorf("%d x %s is of class %g, want %g", x.series, x.volts, n.Value, x.want)
		}
	}
	c := build(t, system+"source \"b\" {\n  kind = \"battery\"\n}\n")
	if n, ok := c.Nominal(c.Net.Sources[0].Hot); ok {
		t.Errorf("a battery without volts is of class %g", n.Value)
	}
}

// A space's own ambient comes before the engine space's, that before the system's, that before 40 C.
func TestAmbientPrecedence(t *testing.T) {
	hot := 60.0
	for _, x := range []struct {
		system, space string
		guess         *float64
		want          float64
		kind          derive.Kind
	}{
		{"  ambient = \"35 C\"\n", "  ambient = \"45 C\"\n  engine = true\n", nil, 45, derive.Plan},
		{"  ambient = \"35 C\"\n", "  engine = true\n", nil, 50, derive.Assumption},
		{"  ambient = \"55 C\"\n", "  engine = true\n", nil, 55, derive.Plan},
		{"  ambient = \"35 C\"\n", "", nil, 35, derive.Plan},
		{"", "", nil, 40, derive.Assumption},
		{"", "", &hot, 60, derive.Assumption},
		{"", "  engine = true\n", &hot, 60, derive.Assumption},
		{"  ambient = \"35 C\"\n", "", &hot, 35, derive.Plan},
	} {
		c := build(t, "system \"t\" {\n"+x.system+"}\ncompartment \"k\" {\n"+x.space+"}\n")
		c.Guesses.Ambient = x.guess
		got := c.AmbientOf(find[*schema.Compartment](t, c, "compartment.k"))
		if got.Value != x.want || got.Kind != x.kind {
			t.Errorf("system %q, space %q: %g C of kind %d, want %g C of kind %d", x.system, x.space, got.Value, got.Kind, x.want, x.kind)
		}
	}
}

// The hottest space on the way decides.
func TestHottestSpaceDecides(t *testing.T) {
	c := build(t, system+"compartment \"cool\" {\n  ambient = \"25 C\"\n}\ncompartment \"warm\" {\n  ambient = \"55 C\"\n}\n"+twoBuses+
		"conductor \"one\" {\n  from = bus.a\n  to = bus.b\n  size = \"10 AWG\"\n  bundle = 2\n  through = [compartment.cool, compartment.warm]\n}\n"+
		"conductor \"two\" {\n  from = bus.a\n  to = bus.b\n  size = \"10 AWG\"\n  bundle = 2\n  through = [compartment.warm]\n}\n")
	one, _ := c.Ampacity(find[*schema.Conductor](t, c, "conductor.one"))
	two, _ := c.Ampacity(find[*schema.Conductor](t, c, "conductor.two"))
	if one.Value != two.Value || one.Value <= 0 {
		t.Errorf("through both %g A, through the warm one %g A", one.Value, two.Value)
	}
}

// Whatever is needed and left out is named.
func TestMissingInputsAreNamed(t *testing.T) {
	c := build(t, system+"compartment \"x\" {\n}\ncompartment \"y\" {\n}\n"+twoBuses+`source "bare" {
  kind = "battery"
}
source "unsized" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
}
conductor "bare" {
  from = bus.a
  to = load.lamp
}
conductor "long" {
  from = bus.a
  to = bus.b
  size = "10 AWG"
  through = [compartment.x, compartment.y]
}
conductor "feed" {
  from = source.unsized
  to = bus.a
  size = "10 AWG"
  length = "1 m"
}
load "lamp" {
}
`)
	bare, unsized := find[*schema.Source](t, c, "source.bare"), find[*schema.Source](t, c, "source.unsized")
	_, noSize := c.Ampacity(find[*schema.Conductor](t, c, "conductor.bare"))
	_, noBundle := c.Ampacity(find[*schema.Conductor](t, c, "conductor.long"))
	_, noLength := c.Ohms(c.Net.EdgesOf("conductor.long")[0], circuit.Operating)
	_, noDraw := c.LoadCurrent(0)
	_, noChemistry := c.BatteryVolts(bare)
	_, _, _, noCapacity := c.BatteryOhms(unsized)
	w := worstOf(c, "conductor.feed")
	d := build(t, system+battery("b", false)+"\nload \"lamp\" {\n}\nload \"fan\" {\n  draw = \"2 A\"\n}\nconductor \"bare\" {\n  from = source.b\n  to = load.lamp\n}\nconductor \"on\" {\n  from = load.lamp\n  to = load.fan\n}\n")
	views, _ := d.Space.Views(d.Net.ZoneOf(d.Net.Loads[0].Hot), explore.All())
	drop, _ := d.DropTo(views[0], d.Net.Loads[0].Port, 0)
	for _, x := range []struct {
		lacks              []derive.Missing
		subject, attribute string
	}{
		{noSize, "conductor.bare", "size"}, {noBundle, "conductor.long", "bundle"}, {noLength, "conductor.long", "length"}, {noDraw, "load.lamp", "draw"},
		{noChemistry, "source.bare", "chemistry"}, {noCapacity, "source.unsized", "capacity"}, {w.Lacks, "load.lamp", "draw"},
		{drop.Lacks, "conductor.bare", "size"}, {drop.Lacks, "load.lamp", "draw"},
	} {
		if !named(x.lacks, x.subject, x.attribute) {
			t.Errorf("missing %v, want %s of %s", x.lacks, x.attribute, x.subject)
		}
	}
	for _, e := range c.Net.EdgesOf("conductor.feed") {
		if !named(c.Worst(e).Lacks, "load.lamp", "draw") {
			t.Errorf("one run of the feed does not name the lamp's draw: %v", c.Worst(e).Lacks)
		}
	}
}

// panel is a plan of about sixty blocks: a battery, a selector, a panel and its circuits.
func panel() string {
	var b strings.Builder
	b.WriteString(system + battery("b0", true) + "\n" + battery("b1", false) + "\n")
	b.WriteString("switch \"pick\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  position \"off\" {\n  }\n  position \"one\" {\n    joins = [[\"a\", \"c\"]]\n  }\n  position \"two\" {\n    joins = [[\"b\", \"c\"]]\n  }\n  position \"both\" {\n    joins = [[\"a\", \"b\", \"c\"]]\n  }\n}\nbus \"p\" {\n}\n")
	b.WriteString(wire("b0", "source.b0", "switch.pick.a", "pair", 1) + "\n" + wire("b1", "source.b1", "switch.pick.b", "pair", 2) + "\n" + wire("p", "switch.pick.c", "bus.p", "pair", 1) + "\n")
	for i := range 13 {
		fmt.Fprintf(&b, "fuse \"f%d\" {\n  kind = \"blade\"\n  rating = \"10 A\"\n}\n", i)
		b.WriteString(load(fmt.Sprintf("l%d", i), i+1) + "\n")
		b.WriteString(wire(fmt.Sprintf("a%d", i), "bus.p", fmt.Sprintf("fuse.f%d.line", i), "pair", 1) + "\n")
		b.WriteString(wire(fmt.Sprintf("z%d", i), fmt.Sprintf("fuse.f%d.load", i), fmt.Sprintf("load.l%d", i), "pair", 5) + "\n")
	}
	return b.String()
}

func BenchmarkWorstAllEdges(b *testing.B) {
	net := build(b, panel()).Net
	for b.Loop() {
		c := circuit.New(explore.New(net, 0), circuit.Guesses{})
		for e := range net.Edges {
			c.Worst(e)
		}
	}
}

// A short behind batteries in series is driven by all of them: volts and resistances add (Kirchhoff).
func TestFaultOfAString(t *testing.T) {
	block := "  kind = \"battery\"\n  chemistry = \"lifepo4\"\n  voltage = \"12.8 V\"\n  capacity = \"100 Ah\"\n  resistance = \"3 mohm\"\n}\n"
	c := build(t, system+"source \"top\" {\n"+block+"source \"foot\" {\n"+block+
		"conductor \"link\" {\n  from = source.top.neg\n  to = source.foot.pos\n  polarity = \"positive\"\n  size = \"2 AWG\"\n  length = \"0.1 m\"\n}\n")
	top, foot := c.FaultAt(&c.Net.Sources[0], nil), c.FaultAt(&c.Net.Sources[1], nil)
	if len(top.Most.From) != 4 || len(foot.Most.From) != 2 || math.Abs(top.Most.Value-29.2/0.006) > 1e-6 || math.Abs(foot.Most.Value-14.6/0.003) > 1e-6 {
		t.Errorf("top %g A from %d figures, foot %g A from %d", top.Most.Value, len(top.Most.From), foot.Most.Value, len(foot.Most.From))
	}
}

// A battery that stands on two others side by side is bounded by the stronger of them on both, and by the weaker
// alone, whichever is written first.
func TestFaultOnSeveral(t *testing.T) {
	battery := func(name string, volts, milliohms float64) string {
		return fmt.Sprintf("source %q {\n  kind = \"battery\"\n  chemistry = \"lifepo4\"\n  voltage = \"%g V\"\n  capacity = \"100 Ah\"\n  resistance = \"%g mohm\"\n}\n", name, volts, milliohms)
	}
	link := func(name, from, to string) string {
		return fmt.Sprintf("conductor %q {\n  from = %s\n  to = %s\n  polarity = \"positive\"\n  size = \"2 AWG\"\n  length = \"0.1 m\"\n}\n", name, from, to)
	}
	links := link("la", "source.top.neg", "source.weak.pos") + link("lb", "source.top.neg", "source.strong.pos")
	for _, below := range []string{battery("weak", 12.8, 3) + battery("strong", 25.6, 1), battery("strong", 25.6, 1) + battery("weak", 12.8, 3)} {
		c := build(t, system+battery("top", 12.8, 3)+below+links)
		f := c.FaultAt(&c.Net.Sources[0], nil)
		// full 14.6 + 29.2 V on 3 mohm and both side by side, 1/(1/3 + 1/1) = 0.75 mohm; empty 2 x 10 V on 6 mohm
		if most := 43.8 / 0.00375; math.Abs(f.Most.Value-most) > 1e-6*most || f.Least.Value <= 0 || f.Least.Value > 4000 {
			t.Errorf("most %g A, want %g; least %g A", f.Most.Value, most, f.Least.Value)
		}
	}
}
