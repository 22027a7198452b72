package circuit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ferrule/lint/circuit"
)

// ringPlan is a load with its return through four nodes that five wires join, some left out, and a strap
// to the battery that is a bridge.
func ringPlan(without string) string {
	var b strings.Builder
	b.WriteString(`
system "ring" {
}

source "bat" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

bus "a" {
  polarity = "negative"
}

bus "b" {
  polarity = "negative"
}

bus "c" {
  polarity = "negative"
}

bus "d" {
  polarity = "negative"
}

conductor "plus" {
  from     = source.bat.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "1 m"
}

load "lamp" {
  draw     = "10 A"
  behavior = "constant-current"
}
`)
	for _, w := range []struct{ name, from, to, length string }{
		{"tail", "load.lamp.neg", "bus.a", "1 m"}, {"strap", "bus.d", "source.bat.neg", "1 m"},
		{"ab", "bus.a", "bus.b", "1 m"}, {"ac", "bus.a", "bus.c", "2 m"}, {"bc", "bus.c", "bus.b", "1 m"},
		{"bd", "bus.b", "bus.d", "3 m"}, {"cd", "bus.c", "bus.d", "1 m"},
	} {
		if w.name != without {
			fmt.Fprintf(&b, "\nconductor %q {\n  from     = %s\n  to       = %s\n  polarity = \"negative\"\n  size     = \"10 AWG\"\n  length   = %q\n}\n", w.name, w.from, w.to, w.length)
		}
	}
	return b.String()
}

func returnsOf(t *testing.T, src string) (*circuit.Circuit, *circuit.Returns) {
	t.Helper()
	c := build(t, src)
	r := c.Returns()
	if !r.Solved {
		t.Fatal(r.Lacks)
	}
	return c, r
}

// What remains after one return has opened is what a plan drawn without it gives; at every node of the
// ring what comes in goes out; a bridge carries all.
func TestReturnsAfterOneOpens(t *testing.T) {
	c, r := returnsOf(t, ringPlan(""))
	takers, plain := c.Takers(nil)
	if len(takers) != 1 || !plain || takers[0].Amps.Value != 10 {
		t.Fatalf("takers: %v, plain %v", takers, plain)
	}
	edge := func(c *circuit.Circuit, name string) int { return c.Net.EdgesOf("conductor." + name)[0] }
	part := func(c *circuit.Circuit, r *circuit.Returns, name string, gone int) float64 {
		list, _ := c.Takers(nil)
		return r.Part(edge(c, name), gone, list[0])
	}
	if got := part(c, r, "ab", -1) + part(c, r, "ac", -1); math.Abs(got-1) > 1e-6 {
		t.Errorf("%g of the current leaves a", got)
	}
	for _, name := range []string{"tail", "strap"} {
		if r.Ring(edge(c, name)) || part(c, r, name, -1) != 1 {
			t.Errorf("%s: ring %v, part %g", name, r.Ring(edge(c, name)), part(c, r, name, -1))
		}
	}
	for _, gone := range []string{"ab", "ac", "bc", "bd", "cd"} {
		d, q := returnsOf(t, ringPlan(gone))
		for _, name := range []string{"ab", "ac", "bc", "bd", "cd"} {
			if name == gone {
				continue
			}
			want, got := part(d, q, name, -1), part(c, r, name, edge(c, gone))
			if math.Abs(got-want) > 1e-3 { // bridges of the plan without it may carry nothing or all
				t.Errorf("without %s, %s carries %g of the current; drawn without it %g", gone, name, got, want)
			}
		}
	}
	if n := r.Most(edge(c, "strap"), -1, takers, "x"); n.Value != 10 {
		t.Errorf("the strap carries %g A", n.Value)
	}
}

// Three ways side by side, one of them in two pieces: each gets its conductance over the sum (the current
// divider of any handbook).
func TestReturnsDivide(t *testing.T) {
	src := strings.Replace(ringPlan("bc"), `to       = bus.c`, `to       = bus.d`, 1)
	c, r := returnsOf(t, strings.Replace(src, `from     = bus.c`, `from     = bus.a`, 1))
	takers, _ := c.Takers(nil)
	ohms := func(name string) float64 {
		n, _ := c.Ohms(c.Net.EdgesOf("conductor." + name)[0], circuit.Operating)
		return n.Value
	}
	g := []float64{1 / (ohms("ab") + ohms("bd")), 1 / ohms("ac"), 1 / ohms("cd")}
	for i, name := range []string{"ab", "ac", "cd"} {
		want := g[i] / (g[0] + g[1] + g[2])
		if got := r.Part(c.Net.EdgesOf("conductor." + name)[0], -1, takers[0]); math.Abs(got-want) > 1e-4 {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
}
