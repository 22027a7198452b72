package spicetest

import (
	"errors"
	"fmt"
	"strings"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// found is the share of the power at its peak that a tracker draws: a part in a million below it, since
// the peak itself is the fold.
const found = 1 - 1e-6

// lost marks, among the trackers of a state, that ngspice found no solution for one.
const lost = -1

// errLost says that ngspice itself found no solution.
var errLost = errors.New("ngspice finds no solution")

// tracked finds, with ngspice, the most power that each tracker's supply gives at its input: the voltage
// there is swept. A tracker that a battery feeds is not limited so.
func tracked(dir string, c *circuit.Circuit, cases []state) ([]map[int]float64, error) {
	out := make([]map[int]float64, len(cases))
	var asks []*ask
	for k, s := range cases {
		out[k] = map[int]float64{}
		for i := range c.Net.Converters {
			if n := sharers(c, s.view, i); n > 0 {
				if a := hold(c, s, i); a != nil {
					a.give, a.sharers = out[k], float64(n)
					asks = append(asks, a)
				}
			}
		}
	}
	for range 2 {
		left := asks
		for _, up := range []bool{false, true} { // down from the first guess, else up from nothing
			var err error
			if left, err = sweep(dir, left, up); err != nil {
				return nil, err
			}
		}
		for _, a := range left {
			a.give[lost] = 1
		}
	}
	return out, nil
}

// sweep asks, and gives the asks that had no answer.
func sweep(dir string, asks []*ask, up bool) (left []*ask, err error) {
	jobs := make([]job, len(asks))
	for k, a := range asks {
		jobs[k] = a.sweep(up)
	}
	plots, err := simulate(dir, jobs)
	for k, p := range plots {
		if p != nil {
			asks[k].narrow(p)
		} else {
			left = append(left, asks[k])
		}
	}
	return left, err
}

// ask is a sweep of the voltage at a tracker's input, from high down to low.
type ask struct {
	netlist   string
	start     string // the first guess
	high, low float64
	tracker   int
	sharers   float64
	give      map[int]float64
}

func (a *ask) sweep(up bool) job {
	if up {
		return job{a.netlist + ".end\n", fmt.Sprintf("dc vh %.15g %.15g %.15g", a.low, a.high, (a.high-a.low)/400)}
	}
	return job{a.netlist + a.start + ".end\n", fmt.Sprintf("dc vh %.15g %.15g %.15g", a.high, a.low, (a.low-a.high)/400)}
}

// narrow notes the peak of a sweep and closes in on it.
func (a *ask) narrow(p *plot) {
	best, top := 0.0, 0
	for k, row := range p.rows {
		if w := p.at(row, "v(v-sweep)") * p.at(row, "i(vh)"); w > best {
			best, top = w, k
		}
	}
	if best > 0 {
		a.give[a.tracker] = best * found / a.sharers
	}
	above, below := p.rows[max(top-1, 0)], p.rows[min(top+1, len(p.rows)-1)]
	if p.at(above, "v(v-sweep)") < p.at(below, "v(v-sweep)") {
		above, below = below, above
	}
	a.high, a.low, a.start = p.at(above, "v(v-sweep)"), p.at(below, "v(v-sweep)"), ""
	for name := range p.column {
		if strings.HasPrefix(name, "v(n") {
			a.start += fmt.Sprintf(".nodeset %s=%.17g\n", name, p.at(above, name))
		}
	}
}

// sharers counts the trackers on the supply of one, itself among them; 0 where it is none that its
// supply limits.
func sharers(c *circuit.Circuit, v *explore.View, i int) (n int) {
	x := &c.Net.Converters[i]
	if x.Kind.Value != "mppt" || !v.HasConverter(i) {
		return 0
	}
	for k := range c.Net.Sources {
		if s := &c.Net.Sources[k]; s.Kind.Value == "battery" && v.HasSource(k) && v.Joined(s.Hot, x.In.Hot) {
			return 0
		}
	}
	for k := range c.Net.Converters {
		if o := &c.Net.Converters[k]; o.Kind.Value == "mppt" && v.HasConverter(k) && v.Joined(o.In.Hot, x.In.Hot) {
			n++
		}
	}
	return n
}

// hold is what can give power at a tracker's input, with a voltage held there, from that without loads
// down; nil where nothing does.
func hold(c *circuit.Circuit, s state, tracker int) *ask {
	in := c.Net.Converters[tracker].In
	first := giving(c, s, tracker, nil)
	idle := first.unloaded()
	high, ok := idle.Across(in)
	if !first.fed(in) || !ok || high <= 0 {
		return nil
	}
	near := first.regions()
	d := giving(c, s, tracker, func(id network.NodeID) bool {
		k := near.top(int(id))
		return k == near.top(int(in.Hot)) || k == near.top(int(in.Ret))
	})
	d.line("vh %s %s 0", d.node(in.Hot), d.node(in.Ret))
	d.ties = fmt.Sprintf("vg %s 0 0\n", d.node(in.Ret))
	return &ask{netlist: d.text.String() + d.ties, start: first.nodeset(idle, in.Ret), high: high, tracker: tracker}
}

// regions are the nodes that edges and diodes join.
func (d *deck) regions() sets {
	r := newSets(len(d.net.Nodes))
	for e := range d.ohms {
		r.join(d.net.Edges[e].A, d.net.Edges[e].B)
	}
	for i := range d.diodes {
		r.join(d.net.Converters[i].In.Hot, d.net.Converters[i].Out.Hot)
	}
	return r
}

// giving is a view with what gives power alone, of the nodes kept (nil: all). Batteries feed what is
// behind another converter, so they count as there; a kilo-ohm keeps them from giving any here.
func giving(c *circuit.Circuit, s state, tracker int, keep func(network.NodeID) bool) *deck {
	d := empty(c, s.view, s.set)
	d.keep = keep
	d.edges()
	for i := range d.net.Sources {
		x := &d.net.Sources[i]
		if !d.v.HasSource(i) || !d.stands(x.Port) {
			continue
		}
		if x.Kind.Value == "battery" {
			d.supplies(x.Port)
			volts, _ := c.BatteryVolts(x.Source)
			d.draws(x.Port, fmt.Sprintf("(%s-%g)/1k", d.across(x.Port), volts.Rested.Value))
			continue
		}
		d.source(i, x)
	}
	for range d.net.Converters {
		for i := range d.net.Converters {
			d.supplying(i, tracker)
		}
	}
	return d
}

// supplying adds the output of another converter as a supply of its own.
func (d *deck) supplying(i, tracker int) {
	x := &d.net.Converters[i]
	if _, done := d.outputs[i]; done || i == tracker || !d.v.HasConverter(i) || !d.fed(x.In) || !d.stands(x.Out) {
		return
	}
	if x.Kind.Value == "diode" {
		d.diode(i, x)
		return
	}
	volts, most, ok := d.holds(x)
	if !ok {
		return
	}
	if x.Rated.Set {
		most = min(most, x.Rated.Value/volts)
	}
	d.outputs[i] = d.draws(x.Out, "-("+d.regulated(d.across(x.Out), volts, droop*volts/most, most, false)+")")
	d.supplies(x.Out)
}
