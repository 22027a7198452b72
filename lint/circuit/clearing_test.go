package circuit_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/circuit"
	"ferrule/schema"
)

// A 10 A blade opens at twice its rating within 5 s and at six times within 0.1 s (ISO 8820-3 gates as a maker's sheet gives
// them); between gates straight in log-log, beyond the last constant I2t, both by hand.
func TestOpensBetweenGates(t *testing.T) {
	f := &schema.Fuse{}
	f.Kind.Value, f.Kind.Set = "blade", true
	f.Rating.Value, f.Rating.Set = 10, true
	for amps, want := range map[float64]float64{
		20: 5, 60: 0.1, 120: 0.1 / 4, // (60 / 120)^2
		math.Sqrt(20 * 35): math.Sqrt(5 * 0.5), // halfway in logarithms between 2 x (5 s) and 3.5 x (0.5 s)
	} {
		got, ok := circuit.OpensWithin(f, amps)
		if near(t, "time to open", got, want, want*1e-9); !ok {
			t.Errorf("at %g A it is said not to open", amps)
		}
	}
	if _, ok := circuit.OpensWithin(f, 13); ok {
		t.Error("it is said to open below its first gate")
	}
	if circuit.MayCarry(f) != 13.5 {
		t.Errorf("it may carry %g A", circuit.MayCarry(f))
	}
}

// A device's own curve stands before the gates of its kind.
func TestOwnCurve(t *testing.T) {
	f := &schema.Fuse{}
	f.Kind.Value, f.Kind.Set = "blade", true
	f.Rating.Value, f.Rating.Set = 10, true
	f.Curve.Set = true
	f.Curve.Points = []schema.CurvePoint{{Amps: 20, Seconds: 50}, {Amps: 200, Seconds: 0.5}}
	for amps, want := range map[float64]float64{20: 50, math.Sqrt(20 * 200): 5, 400: 0.125} {
		got, _ := circuit.OpensWithin(f, amps)
		near(t, "time to open", got, want, want*1e-9)
	}
	if n, ok := circuit.Opens(f, 100); !ok || len(n.From) != 2 {
		t.Errorf("made of %d points", len(n.From))
	}
}

// TestMostIsNoLessThanLeast: at every place the prospective fault is no less than the least one.
func TestMostIsNoLessThanLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &maker{t: t}
		m.draw()
		m.tree()
		m.graph()
		most := largest(build(t, m.text()), circuit.Prospective)
		for place, amps := range largest(build(t, m.text()), circuit.Least) {
			if amps > most[place]*(1+1e-6) {
				t.Fatalf("%s: least %g A, most %g A\n%s", place, amps, most[place], m.text())
			}
		}
	})
}

// TestMoreBatteriesNoLess: where all wires are pairs, another like battery makes no prospective fault smaller.
func TestMoreBatteriesNoLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &maker{t: t}
		m.draw()
		m.tree()
		one := largest(build(t, m.text()), circuit.Prospective)
		m.add("%s", battery("more", false))
		m.add("%s", wire("more", rapid.SampledFrom(m.terminals).Draw(t, "at"), "source.more", "pair", 1))
		more := largest(build(t, m.text()), circuit.Prospective)
		for place, amps := range one {
			if more[place] < amps*(1-1e-6) {
				t.Fatalf("%s: %g A, with another battery %g A\n%s", place, amps, more[place], m.text())
			}
		}
	})
}

// largest is the largest short at every place over all states, in A.
func largest(c *circuit.Circuit, corner circuit.Corner) map[string]float64 {
	out := map[string]float64{}
	for _, z := range c.Net.Stacks() {
		list, _ := c.Sections(z, all)
		for s := range list {
			f := c.Faults(s, corner, true)
			for _, id := range s.Nodes {
				if x, _, ok := f.At(id); ok {
					out[c.Net.Nodes[id].Name()] = max(out[c.Net.Nodes[id].Name()], x.Amps())
				}
			}
		}
	}
	return out
}
