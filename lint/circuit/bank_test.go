package circuit_test

import (
	"fmt"
	"math"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
)

// bankPlan is two batteries on a bus that a load hangs on.
const bankPlan = `
source "a" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "100 Ah"
  resistance = "10 mohm"
}

source "b" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "100 Ah"
  resistance = "%s"
}

bus "house" {
}

fuse "a" {
  rating = "40 A"
  on     = source.a
}

conductor "a" {
  from   = fuse.a.load
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.b
  to     = bus.house
  size   = "2 AWG"
  length = "%s"
}

conductor "load" {
  from   = bus.house
  to     = load.heater
  size   = "8 AWG"
  length = "9 m"
}

load "heater" {
  draw     = "60 A"
  behavior = "constant-current"
}
`

// Two resistances side by side carry a current in inverse proportion to themselves: the current
// divider rule of circuit textbooks, I1 = I x R2 / (R1 + R2) (from memory). What both have in common,
// the long lead of the load, changes nothing.
func TestShareIsACurrentDivider(t *testing.T) {
	for _, x := range []struct{ ohms, length string }{{"10 mohm", "1 m"}, {"30 mohm", "1 m"}, {"10 mohm", "8 m"}} {
		c := build(t, system+fmt.Sprintf(bankPlan, x.ohms, x.length))
		occasion := c.Occasions(c.Net.Zones[0])[0]
		v, load := occasion.Views[0], c.Net.Loads[0].Port
		run := func(name string) float64 {
			total := 0.0
			for _, e := range c.Net.EdgesOf(name) {
				r, _ := c.Ohms(e, circuit.Operating)
				total += r.Value
			}
			return total
		}
		r1 := 0.010 + run("conductor.a")
		r2 := c.Net.Sources[1].Resistance.Value + run("conductor.b")
		parts := []circuit.Part{{Port: load, Amps: 60}}
		want := 60 * r2 / (r1 + r2)
		if got := c.ShareOf(v, 0, parts).Amps; math.Abs(got-want) > 0.01*want {
			t.Errorf("%v: the first battery gives %g A, want %g", x, got, want)
		}
		if got := c.ShareOf(v, 0, parts).Amps + c.ShareOf(v, 1, parts).Amps; math.Abs(got-60) > 0.01 {
			t.Errorf("%v: both give %g A of 60", x, got)
		}
		if got := c.Passed(v, 0, parts); got != 40 {
			t.Errorf("%v: %g A through a device of 40 A", x, got)
		}
	}
}

// Devices in series let the smallest pass; what hangs beside them is added.
func TestThrough(t *testing.T) {
	c := build(t, system+fmt.Sprintf(bankPlan, "10 mohm", "1 m"))
	v := c.Occasions(c.Net.Zones[0])[0].Views[0]
	load, bus, a := c.Net.Loads[0].Hot, c.Net.Node("bus.house.pos"), c.Net.Sources[0].Hot
	for _, x := range []struct {
		at   network.NodeID
		amps map[network.NodeID]float64
		want float64
	}{
		{a, map[network.NodeID]float64{load: 60}, 40},
		{a, map[network.NodeID]float64{load: 10, bus: 20}, 30},
		{a, map[network.NodeID]float64{load: math.Inf(1), a: 5}, 45},
		{c.Net.Sources[1].Hot, map[network.NodeID]float64{load: 60}, 60},
	} {
		if got := c.Through(v, x.at, -1, x.amps); got != x.want {
			t.Errorf("%v: %g A, want %g", x.amps, got, x.want)
		}
	}
}
