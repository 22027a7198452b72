package source

import (
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// drawer is a load or a converter's input, with what it takes.
type drawer struct {
	block           schema.Block
	port            network.Port
	load, converter int // -1 where it is the other
	steady, surge   derive.Number
	lacks           []lint.Missing
	loads           []int // that it takes with it: itself, or those that only the converter feeds
}

// drawersOf lists what can draw in a zone. A starter draws for seconds: all of it is a surge.
func drawersOf(p *lint.Pass, z *network.Zone) []*drawer {
	starter := map[int]bool{}
	for _, i := range p.Circuit.Starters() {
		starter[i] = true
	}
	var out []*drawer
	for _, i := range z.Loads {
		l := &p.Net.Loads[i]
		d := &drawer{block: l.Load, port: l.Port, load: i, converter: -1, loads: []int{i}}
		d.steady, d.lacks = p.Circuit.LoadCurrent(i)
		if l.Surge.Set {
			d.surge = derive.Read("starting current of "+lint.Quote(l.Load), "Is", l.Surge.Value, "A", l.Addr, "surge", l.Surge.Range)
		}
		if starter[i] {
			d.surge, d.steady, d.lacks = d.steady, derive.Number{}, nil
		}
		out = append(out, d)
	}
	for _, i := range z.Inputs {
		c := &p.Net.Converters[i]
		if c.Kind.Value == "diode" {
			continue
		}
		d := &drawer{block: c.Converter, port: c.In, load: -1, converter: i, loads: p.Net.Served(i)}
		d.steady, d.lacks = p.Circuit.InputCurrent(i)
		out = append(out, d)
	}
	return out
}

func (d *drawer) there(v *explore.View) bool {
	return d.load >= 0 && v.HasLoad(d.load) || d.converter >= 0 && v.HasConverter(d.converter)
}

// most is what a drawer takes at most: without a figure, what devices let pass.
func (d *drawer) most() float64 {
	if len(d.lacks) > 0 {
		return math.Inf(1)
	}
	return d.steady.Value
}

// fedZone is the zone of a battery, with those of the string that it is in and those behind diodes.
func fedZone(n *network.Network, battery int) *network.Zone {
	z := n.ZoneOf(n.Sources[battery].Hot)
	if z == nil {
		return nil
	}
	zones, in := []*network.Zone{z}, map[*network.Zone]bool{z: true, nil: true}
	add := func(z *network.Zone) {
		if !in[z] {
			in[z], zones = true, append(zones, z)
		}
	}
	for k := 0; k < len(zones); k++ {
		for i := range n.Sources {
			if s := &n.Sources[i]; n.ZoneOf(s.Hot) == zones[k] || n.ZoneOf(s.Ret) == zones[k] {
				add(n.ZoneOf(s.Hot))
				add(n.ZoneOf(s.Ret))
			}
		}
		for _, i := range zones[k].Inputs {
			if c := &n.Converters[i]; c.Kind.Value == "diode" {
				add(n.ZoneOf(c.Out.Hot))
			}
		}
	}
	if len(zones) == 1 {
		return z
	}
	var nodes []network.NodeID
	for _, z := range zones {
		nodes = append(nodes, z.Nodes[0])
	}
	return n.Together(nodes...)
}

// reached is a battery in a view, with the diodes that it feeds.
type reached struct {
	n     *network.Network
	view  *explore.View
	row   explore.Series
	doors []door
}

// door is a port at which a battery's current comes out of a diode, and the battery's side of it.
type door struct{ out, in network.Port }

func reach(n *network.Network, v *explore.View, battery int) *reached {
	r := &reached{n: n, view: v, row: v.Series(battery)}
	passed := map[int]bool{}
	for grown := true; grown; {
		grown = false
		for _, i := range v.Zone.Inputs {
			c := &n.Converters[i]
			if c.Kind.Value != "diode" || passed[i] || !v.HasConverter(i) {
				continue
			}
			if at, ok := r.port(c.In); ok {
				passed[i], grown = true, true
				r.doors = append(r.doors, door{c.Out, at})
			}
		}
	}
	return r
}

// port is where, on the battery's own pair of wires, what a port takes is taken: the port itself, or
// the diode that stands before it. A return that is drawn nowhere is taken to be joined.
func (r *reached) port(p network.Port) (network.Port, bool) {
	bare := len(r.n.At(p.Ret)) == 0
	if r.row.Across(p) {
		return p, true
	}
	for _, i := range r.row.Tops() {
		if bare && r.view.Joined(r.n.Sources[i].Hot, p.Hot) {
			return p, true
		}
	}
	for _, d := range r.doors {
		if r.view.Joined(d.out.Hot, p.Hot) && (bare || r.view.Joined(d.out.Ret, p.Ret)) {
			return d.in, true
		}
	}
	return network.Port{}, false
}

// ask is what a battery is asked for in one view.
type ask struct {
	view  *explore.View
	row   explore.Series
	on    []*drawer
	ports []network.Port // by drawer, on the battery's own wires
	loads []*schema.Load // that go dark with it
	sum   float64        // A, of all that is known
	extra *drawer        // the one that adds most on starting; nil where none does
	doubt bool           // a figure is missing
}

func askOf(n *network.Network, v *explore.View, battery int, all []*drawer, runs func(int) bool) *ask {
	r := reach(n, v, battery)
	a := &ask{view: v, row: r.row}
	for _, d := range all {
		if !d.there(v) || d.load >= 0 && !runs(d.load) {
			continue
		}
		at, ok := r.port(d.port)
		if !ok {
			continue
		}
		a.on, a.ports = append(a.on, d), append(a.ports, at)
		for _, i := range d.loads {
			if runs(i) {
				a.loads = append(a.loads, n.Loads[i].Load)
			}
		}
		a.sum += d.steady.Value
		a.doubt = a.doubt || len(d.lacks) > 0
		if d.adds() > a.adds() {
			a.extra = d
		}
	}
	return a
}

// adds is what a drawer takes on starting beyond its steady draw, in A.
func (d *drawer) adds() float64 { return max(0, d.surge.Value-d.steady.Value) }

func (a *ask) adds() float64 {
	if a.extra == nil {
		return 0
	}
	return a.extra.adds()
}

// parts are the currents that are asked for, at the ports where they leave; most counts those without
// a figure as endless.
func (a *ask) parts(most bool) []circuit.Part {
	var out []circuit.Part
	for i, d := range a.on {
		x := d.steady.Value
		if most {
			x = d.most()
		}
		out = append(out, circuit.Part{Port: a.ports[i], Amps: x})
	}
	return out
}
