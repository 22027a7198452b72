package circuit_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// bench is a near-ideal supply, a plug whose two contacts are the resistance, and what hangs on it.
func bench(volts, ohms float64, hangs, last string) string {
	return fmt.Sprintf(`system "t" {
  ambient = "20 C"
}
source "emf" {
  kind              = "supply"
  regulated_voltage = "%g V"
  rated             = "100000 A"
  always            = true
}
connector "plug" {
  mated              = "always"
  contact_resistance = "%g ohm"
  on                 = source.emf
}
conductor "lead" {
  from      = connector.plug.free
  to        = %s
  size      = "4/0 AWG"
  length    = "0.001 m"
}
%s
`, volts, ohms/2, last, hangs)
}

// lowest solves the first resting state of a plan with joints that count for nothing.
func lowest(t *testing.T, text string) (*circuit.Circuit, *circuit.Low) {
	t.Helper()
	p, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatalf("%v\n%s", diags, text)
	}
	n, _ := network.Build(p)
	c := circuit.New(explore.New(n, 0), circuit.Guesses{Joints: 1e-9})
	views, _ := c.Space.Views(c.LowZone(c.Net.ZoneOf(c.Net.Sources[0].Hot)), explore.All())
	l := c.Low(views[0], circuit.LowCase{})
	if len(l.Lacks) > 0 {
		t.Fatalf("missing %v", l.Lacks)
	}
	return c, l
}

// Worked examples of internal resistance: a college physics problem with its solution (12.0 V, 11.5 V at
// 3.00 A, so 0.167 ohm into 3.83 ohm), and a course page on direct current, section 6.08, examples 2
// (10 V behind 0.5 ohm into 10, 50 and 100 ohm) and 1 (6 V; 60 mA into 98 ohm, so 2 ohm).
func TestInternalResistance(t *testing.T) {
	for _, x := range []struct{ emf, inner, load, amps, volts, within float64 }{
		{12, 0.167, 3.83, 3.00, 11.5, 0.01},
		{10, 0.5, 10, 0.952, 9.52, 0.005},
		{10, 0.5, 50, 0.198, 9.9, 0.005},
		{10, 0.5, 100, 0.0995, 9.95, 0.005},
		{6, 2, 98, 0.060, 5.88, 0.005},
	} {
		hangs := fmt.Sprintf("load \"r\" {\n  resistance = \"%g ohm\"\n  rated_voltage = \"12 V\"\n}", x.load)
		c, l := lowest(t, bench(x.emf, x.inner, hangs, "load.r"))
		u, ok := l.Across(c.Net.Loads[0].Port)
		if !ok {
			t.Fatalf("%v: nothing at the load", x)
		}
		near(t, "volts", u, x.volts, x.within)
		near(t, "amperes", l.LoadAmps(0), x.amps, x.within)
	}
}

// Drop of a loop of 8 AWG, 200 ft, at 1.04 A: 0.2721 V. Electrical manual of a state highway department,
// calculation example, with its 0.001308 ohm/ft of loop, which is stranded wire at 25 C.
func TestLoopDrop(t *testing.T) {
	c, l := lowest(t, `system "t" {
  ambient = "25 C"
}
source "emf" {
  kind              = "supply"
  regulated_voltage = "12 V"
  rated             = "100000 A"
  always            = true
}
conductor "loop" {
  from   = source.emf
  to     = load.sign
  size   = "8 AWG"
  length = "60.96 m"
}
load "sign" {
  draw          = "1.04 A"
  behavior      = "constant-current"
  rated_voltage = "12 V"
}
`)
	u, _ := l.Across(c.Net.Loads[0].Port)
	near(t, "drop", 12-u, 0.2721, 0.0015)
}

func boost(watts float64) string {
	return fmt.Sprintf("converter \"boost\" {\n  kind = \"dc-dc\"\n  efficiency = 1.0\n  rated = \"%g W\"\n}", watts)
}

// A constant power P behind R at V draws (V - sqrt(V^2 - 4 R P)) / 2 R, and most power passes at half the
// voltage, V^2 / 4 R (maximum power transfer, circuit theory): beyond it nothing is found.
func TestConstantPower(t *testing.T) {
	for _, v := range []float64{12, 24, 48} {
		for _, r := range []float64{0.01, 0.083, 0.3} {
			most := v * v / (4 * r)
			for _, share := range []float64{0.1, 0.5, 0.9, 0.99, 1.01, 1.5, 3} {
				_, l := lowest(t, bench(v, r, boost(share*most), "converter.boost.in"))
				x := l.Pulls[0]
				if l.Found != (share < 1) || x.Folds != (share > 1) {
					t.Errorf("%g V, %g ohm, %g of the most power: found %v, folds %v", v, r, share, l.Found, x.Folds)
					continue
				}
				if x.Folds {
					near(t, "share of the power that passes", x.Share*share, 1, 2e-3)
					continue
				}
				near(t, "current", x.Amps*r/v, (1-math.Sqrt(1-share))/2, 2e-3)
				if want := (1 + math.Sqrt(1-share)) / 2; l.Steep(&x) != (want < circuit.Cliff) {
					t.Errorf("%g V of %g V: steep %v", x.Volts, v, l.Steep(&x))
				}
			}
		}
	}
}

// A boost of 360 W behind 7 m of solid 12 AWG and a plug of 10 mohm, at 20 C: 38 A at 12.6 V, not the 28.6 A
// of watts over volts; 44 A at 11.8 V, where nothing above 420 W has a point; 34 A at 12.6 V through 10 AWG.
// By hand from 5.21 and 3.28 mohm/m.
func TestBoostBehindTowPlug(t *testing.T) {
	plan := func(volts, watts float64, size string) string {
		return fmt.Sprintf(`system "t" {
  ambient = "20 C"
}
source "start" {
  kind              = "supply"
  regulated_voltage = "%g V"
  rated             = "100000 A"
  always            = true
}
connector "plug" {
  mated              = "always"
  contact_resistance = "5 mohm"
  on                 = source.start
}
conductor "run" {
  from      = connector.plug.free
  to        = converter.boost.in
  size      = %q
  length    = "7 m"
  stranding = "solid"
}
%s
`, volts, size, boost(watts))
	}
	for _, x := range []struct {
		volts float64
		size  string
		amps  float64
	}{{12.6, "12 AWG", 38}, {11.8, "12 AWG", 44}, {12.6, "10 AWG", 34}} {
		_, l := lowest(t, plan(x.volts, 360, x.size))
		near(t, fmt.Sprintf("current at %g V through %s", x.volts, x.size), l.Pulls[0].Amps, x.amps, 0.5)
	}
	for watts, point := range map[float64]bool{415: true, 419: true, 421: false, 440: false} {
		if _, l := lowest(t, plan(11.8, watts, "12 AWG")); l.Found != point {
			t.Errorf("%g W at 11.8 V: found %v", watts, l.Found)
		}
	}
}

// Of two converters on wires of their own one folds: the other keeps its point, and the loads on the bus
// are known to stand no higher than without it.
func TestOneOfTwoFolds(t *testing.T) {
	c, l := lowest(t, bench(12, 0.001, boost(1000)+`
bus "b" {
}
conductor "thin" {
  from   = bus.b
  to     = converter.boost.in
  size   = "16 AWG"
  length = "5 m"
}
conductor "thick" {
  from   = bus.b
  to     = converter.other.in
  size   = "4 AWG"
  length = "1 m"
}
converter "other" {
  kind       = "dc-dc"
  efficiency = 1.0
  rated      = "300 W"
}
`, "bus.b"))
	if l.Found || !l.Pulls[0].Folds || l.Pulls[1].Folds || l.Steep(&l.Pulls[1]) {
		t.Fatalf("found %v: %+v", l.Found, l.Pulls)
	}
	if u, ok := l.AtMost(c.Net.Converters[1].In); !ok || u < 11.8 || u > 12 {
		t.Errorf("the other stands at %g V, %v", u, ok)
	}
	if x := l.Beside(c.Net.Converters[1].In); x == nil || x.Converter != 0 {
		t.Errorf("beside it is %+v", x)
	}
}

// A supply that is asked for more than it gives browns out: nobody's wire is to blame.
func TestBrownOutIsNoCollapse(t *testing.T) {
	_, l := lowest(t, `system "t" {
}
source "small" {
  kind              = "supply"
  regulated_voltage = "12 V"
  rated             = "10 A"
  always            = true
}
conductor "lead" {
  from   = source.small
  to     = converter.boost.in
  size   = "4 AWG"
  length = "1 m"
}
`+boost(300))
	if l.Found || l.Pulls[0].Folds || !l.Pulls[0].Short {
		t.Errorf("found %v: %+v", l.Found, l.Pulls)
	}
}

// What is drawn never lifts a voltage above what it is with nothing drawn, on plans of any shape; and what
// folds draws more, at the end, than it would at the volts with nothing drawn.
func TestDrawingNeverLifts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &maker{t: t}
		m.draw()
		for i := range m.upTo(1, 2, "converters") {
			m.add("converter \"c%d\" {\n  kind = \"dc-dc\"\n  rated = \"%d W\"\n}", i, m.upTo(1, 30, "watts")*50)
			m.at(fmt.Sprintf("converter.c%d.in", i))
		}
		m.tree()
		m.graph()
		c := build(t, m.text())
		for _, z := range c.Net.Zones {
			views, _ := c.Space.Views(c.LowZone(z), explore.All())
			for _, v := range views[:min(len(views), 8)] {
				l := c.Low(v, circuit.LowCase{})
				for i := range c.Net.Loads {
					p := c.Net.Loads[i].Port
					if u, ok := l.AtMost(p); ok && u > l.Open(p)+1e-6 {
						t.Fatalf("%s stands at %g V, %g V with nothing drawn\n%s", c.Net.Loads[i].Addr, u, l.Open(p), m.text())
					}
				}
				for i := range l.Pulls {
					if x := &l.Pulls[i]; x.Folds && x.Amps*l.Open(x.Port) < x.Share*x.Watts {
						t.Fatalf("%+v folds at %g V\n%s", *x, l.Open(x.Port), m.text())
					}
				}
			}
		}
	})
}
