package spicetest

import (
	"errors"
	"fmt"
	"math"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
)

// tolerance is how far two answers may lie apart: a share of the value, and absolute floors in V and A.
type tolerance struct{ share, volts, amps float64 }

// ngspice stops within 1e-10 A at a node, which is 1e-10 V behind an ohm and 1e-7 A in a milliohm of what
// it had the step before. Where something blocks, only the leak of 1e-6/ohm holds a node: 1e-3 V behind it,
// and 2e-4 A where it stands under 120 V and more.
var (
	exact  = tolerance{1e-6, 1e-7, 1e-5}
	curved = tolerance{1e-4, 1e-3, 2e-4} // with constant powers, converters, arrays and what blocks
)

// differ compares every voltage and current of a point with a row of a plot.
func (y *tally) differ(d *deck, p *plot, row []float64, point *circuit.Point) error {
	c := &comparison{d: d, p: p, row: row, point: point, allow: exact}
	if d.nonlinear {
		c.allow = curved
	} else {
		y.linear++
	}
	c.voltages()
	c.currents()
	c.joints()
	if c.err == nil {
		y.compared += c.count
		y.worst = math.Max(y.worst, c.worst)
	}
	return c.err
}

type comparison struct {
	d     *deck
	p     *plot
	row   []float64
	point *circuit.Point
	allow tolerance
	count int
	worst float64
	err   error
}

func (c *comparison) near(what string, got, want, floor float64) {
	c.count++
	e := math.Abs(got - want)
	if !(e <= c.allow.share*math.Abs(want)+floor) {
		c.err = errors.Join(c.err, fmt.Errorf("%s: %.10g, ngspice %.10g", what, got, want))
	}
	if e > floor {
		c.worst = math.Max(c.worst, e/math.Abs(want))
	}
}

// voltages are compared inside islands, against the first node of each.
func (c *comparison) voltages() {
	first := map[int]network.NodeID{}
	for i := range c.d.net.Nodes {
		id, k := network.NodeID(i), c.d.island.top(i)
		u, alive := c.point.Volts(id)
		if alive != c.d.lit[k] {
			c.err = errors.Join(c.err, fmt.Errorf("%s: energised is %v", c.d.net.Nodes[i].Name(), alive))
		}
		if !alive {
			continue
		}
		if _, ok := first[k]; !ok {
			first[k] = id
		}
		base, _ := c.point.Volts(first[k])
		c.near(c.d.net.Nodes[i].Name(), u-base, c.d.volts(c.p, c.row, id)-c.d.volts(c.p, c.row, first[k]), c.allow.volts)
	}
}

func (c *comparison) currents() {
	for e, r := range c.d.ohms {
		if x := c.d.net.Edges[e]; r > 0 {
			want := (c.d.volts(c.p, c.row, x.A) - c.d.volts(c.p, c.row, x.B)) / r
			c.near(fmt.Sprintf("current in %s from %s", x.Addr, c.d.net.Nodes[x.A].Name()), c.point.Amps(e), want, c.allow.amps)
		}
	}
	for i, m := range c.d.sources {
		c.near(c.d.net.Sources[i].Addr+" gives", c.point.SourceAmps(i), -c.p.at(c.row, m), c.allow.amps)
	}
	for i, m := range c.d.loads {
		c.near(c.d.net.Loads[i].Addr+" takes", c.point.LoadAmps(i), c.p.at(c.row, m), c.allow.amps)
	}
	for i, m := range c.d.inputs {
		c.near(c.d.net.Converters[i].Addr+" takes", c.point.InAmps(i), c.p.at(c.row, m), c.allow.amps)
	}
	for i, m := range c.d.outputs {
		want := -c.p.at(c.row, m)
		if c.d.diodes[i] {
			want = -want
		}
		c.near(c.d.net.Converters[i].Addr+" gives", c.point.OutAmps(i), want, c.allow.amps)
	}
}

// leftOver is the largest current that a row of a plot leaves over at a node. joint gives the currents of
// edges without resistance, which ngspice does not see; nil takes all that they join as one node.
func (d *deck) leftOver(p *plot, row []float64, joint func(edge int) float64) (most float64) {
	left := make([]float64, len(d.net.Nodes))
	pass := func(from, to network.NodeID, i float64) {
		if joint == nil {
			from, to = network.NodeID(d.same.top(int(from))), network.NodeID(d.same.top(int(to)))
		}
		left[from], left[to] = left[from]-i, left[to]+i
	}
	for e, r := range d.ohms {
		x := d.net.Edges[e]
		if r > 0 {
			pass(x.A, x.B, (d.volts(p, row, x.A)-d.volts(p, row, x.B))/r)
		} else if joint != nil {
			pass(x.A, x.B, joint(e))
		}
	}
	draw := func(p2 network.Port, meter string) { pass(p2.Hot, p2.Ret, p.at(row, meter)) }
	for i, m := range d.sources {
		draw(d.net.Sources[i].Port, m)
	}
	for i, m := range d.loads {
		draw(d.net.Loads[i].Port, m)
	}
	for i, m := range d.inputs {
		draw(d.net.Converters[i].In, m)
	}
	for i, m := range d.outputs {
		if x := &d.net.Converters[i]; d.diodes[i] {
			pass(x.In.Hot, x.Out.Hot, p.at(row, m))
		} else {
			draw(x.Out, m)
		}
	}
	for _, amps := range left {
		most = math.Max(most, math.Abs(amps))
	}
	for _, x := range d.cells {
		u := p.at(row, fmt.Sprintf("v(j%d)", x.device)) - d.volts(p, row, x.ret)
		most = math.Max(most, math.Abs(x.light-x.dark*math.Expm1(u/x.slope)+p.at(row, fmt.Sprintf("i(vm%d)", x.device))))
	}
	return most
}

// joints checks the currents in edges without resistance: with those that ngspice sees they leave nothing
// over at any node, and around a ring they share as equal resistances.
func (c *comparison) joints() {
	most := 1.0
	for _, m := range c.d.sources {
		most = math.Max(most, math.Abs(c.p.at(c.row, m)))
	}
	c.near("current left over", c.d.leftOver(c.p, c.row, c.point.Amps), 0, 10*c.allow.amps+c.allow.share*most)
	level := map[network.NodeID]float64{}
	for e, r := range c.d.ohms {
		if r == 0 && !c.settled(e, level) {
			c.err = errors.Join(c.err, fmt.Errorf("currents of the ring at %s do not share", c.d.net.Edges[e].Addr))
		}
	}
}

// settled walks the joints from one of them, a volt for each ampere, and says whether every ring closes.
func (c *comparison) settled(e int, level map[network.NodeID]float64) bool {
	x := c.d.net.Edges[e]
	if _, done := level[x.A]; !done {
		level[x.A] = 0
	}
	queue, closes := []network.NodeID{x.A}, true
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, k := range c.d.net.At(id) {
			if r, there := c.d.ohms[k]; !there || r > 0 {
				continue
			}
			amps, o := c.point.Amps(k), c.d.net.Edges[k].Other(id)
			if c.d.net.Edges[k].B == id {
				amps = -amps
			}
			if l, done := level[o]; done {
				closes = closes && math.Abs(l-(level[id]-amps)) < 1e-6*(1+math.Abs(amps)) || o == id
				continue
			}
			level[o] = level[id] - amps
			queue = append(queue, o)
		}
	}
	return closes
}
