package spicetest

import (
	"fmt"
	"math"
	"strings"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

const (
	droop  = 0.01 // of a regulated output at its rated current
	leak   = 1e-6 // 1/ohm, across what blocks: ngspice needs a way for every node
	seep   = 1e-8 // 1/ohm, beyond a limit
	least  = 0.05 // V, below which no power is believed
	taper  = 0.1  // of a load's rated voltage, below which it is out of its range
	valve  = 1e-3 // ohm, of a diode that conducts
	limits = ".options reltol=1e-9 abstol=1e-10 vntol=1e-10 gmin=1e-15 pivrel=0.5 itl1=300 itl2=300\n"
)

// deck is a view as a netlist. Edges without resistance are one node; sets are by the network's nodes.
type deck struct {
	c    *circuit.Circuit
	v    *explore.View
	set  circuit.Setting
	net  *network.Network
	text strings.Builder
	ties string                    // to the ground
	keep func(network.NodeID) bool // what is written; nil for all

	same   sets // joined without resistance
	island sets // joined by edges and by what supplies
	lit    map[int]bool

	ohms       map[int]float64 // by edge that conducts
	sources    map[int]string  // ammeters, by index in the network; the current into the positive
	loads      map[int]string
	inputs     map[int]string
	outputs    map[int]string
	diodes     map[int]bool
	powers     []power
	cells      []junction
	triggered  map[int]bool // converters that do not start for want of input voltage: their output is dead
	found      map[int]float64
	nonlinear  bool
	devices    int
	unfinished bool // something that the plan does not state
}

// junction is an array's diode.
type junction struct {
	device             int
	ret                network.NodeID
	light, dark, slope float64 // A, A, V
}

// power is something that draws constant power down to a floor.
type power struct {
	port  network.Port
	floor float64
}

type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) top(i int) int {
	for s[i] != i {
		i = s[i]
	}
	return i
}

func (s sets) join(a, b network.NodeID) { s[s.top(int(a))] = s.top(int(b)) }

// node is the netlist's name of a node.
func (d *deck) node(id network.NodeID) string { return fmt.Sprintf("n%d", d.same.top(int(id))) }

func (d *deck) across(p network.Port) string {
	return fmt.Sprintf("v(%s,%s)", d.node(p.Hot), d.node(p.Ret))
}

func (d *deck) line(format string, args ...any) { fmt.Fprintf(&d.text, format+"\n", args...) }

// draws puts a device across a port that draws a current, by expression, and gives its ammeter.
func (d *deck) draws(p network.Port, expression string) string {
	d.devices++
	if d.keep != nil && !d.keep(p.Hot) {
		return ""
	}
	d.line("vm%d %s x%d 0", d.devices, d.node(p.Hot), d.devices)
	d.line("bm%d x%d %s i=%s", d.devices, d.devices, d.node(p.Ret), expression)
	return fmt.Sprintf("i(vm%d)", d.devices)
}

// stands says whether a port has two nodes that are not joined.
func (d *deck) stands(p network.Port) bool {
	return p.Hot != network.None && p.Ret != network.None && !d.v.Joined(p.Hot, p.Ret)
}

func (d *deck) supplies(p network.Port) {
	d.island.join(p.Hot, p.Ret)
	d.lit[d.island.top(int(p.Hot))] = true
}

// fed says whether something supplies a port.
func (d *deck) fed(p network.Port) bool {
	return d.stands(p) && d.island.top(int(p.Hot)) == d.island.top(int(p.Ret)) && d.lit[d.island.top(int(p.Hot))]
}

// edges adds the edges that conduct.
func (d *deck) edges() {
	for e := range d.net.Edges {
		if !d.v.Conducts(e) {
			continue
		}
		r, lacks := d.c.Ohms(e, circuit.Operating)
		d.unfinished = d.unfinished || len(lacks) > 0
		d.ohms[e] = r.Value
		a, b := d.net.Edges[e].A, d.net.Edges[e].B
		d.island.join(a, b)
		if r.Value == 0 {
			d.same.join(a, b)
		}
	}
	for e := range d.net.Edges { // in order: what ngspice finds must not change from run to run
		r := d.ohms[e]
		if a, b := d.node(d.net.Edges[e].A), d.node(d.net.Edges[e].B); r > 0 && a != b && (d.keep == nil || d.keep(d.net.Edges[e].A)) {
			d.line("r%d %s %s %.17g", e, a, b, r)
		}
	}
}

// empty is the netlist of a view before anything is in it.
func empty(c *circuit.Circuit, v *explore.View, set circuit.Setting) *deck {
	d := &deck{c: c, v: v, set: set, net: c.Net, same: newSets(len(c.Net.Nodes)), island: newSets(len(c.Net.Nodes)), lit: map[int]bool{},
		ohms: map[int]float64{}, sources: map[int]string{}, loads: map[int]string{}, inputs: map[int]string{}, outputs: map[int]string{}, diodes: map[int]bool{}}
	d.line("* a plan\n%svs scale 0 1", limits)
	return d
}

// write makes the netlist of a view at a setting. found are the powers of trackers that are limited by
// what feeds them; stopped are converters that do not start.
func write(c *circuit.Circuit, v *explore.View, set circuit.Setting, found map[int]float64, stopped map[int]bool) *deck {
	d := empty(c, v, set)
	d.found, d.triggered = found, stopped
	d.edges()
	for i := range d.net.Sources {
		if s := &d.net.Sources[i]; d.v.HasSource(i) && d.stands(s.Port) {
			d.source(i, s)
		}
	}
	d.converters()
	for i := range d.net.Loads {
		if l := &d.net.Loads[i]; d.v.HasLoad(i) && (set.Runs == nil || set.Runs(i)) && d.fed(l.Port) {
			d.load(i, l)
		}
	}
	d.loneInputs()
	d.ground()
	return d
}

// ground ties one node of each island that has something to a common 0 V: voltages are compared as
// differences inside an island.
func (d *deck) ground() {
	done := map[int]bool{}
	for i := range d.net.Nodes {
		if k := d.island.top(i); !done[k] {
			done[k] = true
			d.ties += fmt.Sprintf("vg%d %s 0 0\n", i, d.node(network.NodeID(i)))
		}
	}
}

func (d *deck) netlist() string { return d.text.String() + d.ties + ".end\n" }

// high says whether a row of a plot stands on the high-voltage branch: every power above its floor.
func (d *deck) high(p *plot, row []float64) bool {
	for _, w := range d.powers {
		if u := d.volts(p, row, w.port.Hot) - d.volts(p, row, w.port.Ret); !(u >= w.floor) {
			return false
		}
	}
	return true
}

func (d *deck) volts(p *plot, row []float64, id network.NodeID) float64 {
	return p.at(row, "v("+d.node(id)+")")
}

func number(x float64) string {
	if math.IsInf(x, 1) {
		return "1e30"
	}
	return fmt.Sprintf("%.17g", x)
}
