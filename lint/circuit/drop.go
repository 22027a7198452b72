package circuit

import (
	"fmt"
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Drop is the voltage lost between a supply and a place, both runs, in one view.
type Drop struct {
	Volts derive.Number // V
	Ratio derive.Number // of the nominal voltage
	Path  explore.Path  // the live run, from the supply
	From  network.Port  // the supply
	View  *explore.View
	Lacks []derive.Missing
}

// DropTo is the drop from the nearest battery or converter output that feeds a port in the view; ok is
// false where none does. Every edge counts with the largest current it ever carries, so the drop is
// a bound. Where several ways lead there, the one with the least bound counts: the true drop is
// below each.
func (c *Circuit) DropTo(v *explore.View, p network.Port) (best Drop, ok bool) {
	feeders := c.feeding(v, p)
	if len(feeders) == 0 {
		return best, false
	}
	out, back := v.Reach(p.Hot, c.within(p.Hot), c.cost), v.Reach(p.Ret, c.within(p.Ret), c.cost)
	least, from := math.Inf(1), network.Port{}
	for _, f := range feeders {
		a, there := out.Dist[f.Hot]
		b, home := back.Dist[f.Ret]
		if there && home && a+b < least {
			least, from = a+b, f
		}
	}
	if math.IsInf(least, 1) { // joined by a way that is neither all live nor all return
		addr := c.Net.Nodes[p.Hot].Addr
		return Drop{From: feeders[0], View: v, Lacks: []derive.Missing{{Subject: addr, Attribute: "a way to it that keeps live and return apart"}}}, true
	}
	best = c.dropAlong(from, p, out.To(from.Hot).Back(), back.To(from.Ret))
	best.View = v
	return best, true
}

// within keeps a walk on the side, live or return, that it starts on.
func (c *Circuit) within(from network.NodeID) func(int, network.NodeID) bool {
	home := c.comesHome(from)
	return func(e int, at network.NodeID) bool { return c.comesHome(c.Net.Edges[e].Other(at)) == home }
}

// feeding lists the ports of batteries, other stiff or regulated sources and converter outputs that
// are joined to a port on both poles.
func (c *Circuit) feeding(v *explore.View, p network.Port) []network.Port {
	var out []network.Port
	for _, i := range v.Zone.Sources {
		if s := &c.Net.Sources[i]; v.HasSource(i) && s.Kind.Value != "solar" && v.Across(s.Port, p) {
			out = append(out, s.Port)
		}
	}
	for _, i := range v.Zone.Outputs {
		if x := &c.Net.Converters[i]; v.HasConverter(i) && v.Across(x.Out, p) {
			out = append(out, x.Out)
		}
	}
	return out
}

// dropAlong is the drop along one way out and one way back. It does not depend on the state, so each
// pair of ways is worked out once.
func (c *Circuit) dropAlong(from, to network.Port, out, back explore.Path) Drop {
	key := fmt.Sprint(from, to, out.Edges(), back.Edges())
	if d, ok := c.drops[key]; ok {
		return d
	}
	d := c.workOutDrop(from, to, out, back)
	c.drops[key] = d
	return d
}

func (c *Circuit) workOutDrop(from, to network.Port, out, back explore.Path) Drop {
	d := Drop{From: from, Path: out}
	var parts []derive.Number
	sum := 0.0
	for _, h := range append(append(explore.Path{}, out...), back...) {
		r, lacks := c.Ohms(h.Edge, Operating)
		w := c.Worst(h.Edge)
		d.Lacks = merge(merge(d.Lacks, lacks...), w.Lacks...)
		if r.Kind == 0 || w.Capped.Value == 0 && len(w.Lacks) > 0 {
			continue // a zero would stand for what is not known
		}
		u := derive.Compute("drop in "+c.partName(h.Edge), "U", r.Value*w.Capped.Value, "V", "U = R x I", r, w.Capped)
		sum += u.Value
		parts = append(parts, u)
	}
	d.Volts = derive.Compute("voltage drop, both runs", "dU", sum, "V", "sum of the drops on the way there and back", parts...)
	vn, ok := c.Nominal(to.Hot)
	if !ok {
		d.Lacks = merge(d.Lacks, derive.Missing{Subject: c.Net.Nodes[to.Hot].Addr, Attribute: "rated_voltage"})
		return d
	}
	d.Ratio = derive.Compute("drop as a share of nominal", "dU/Vn", sum/vn.Value, "", "dU / Vn", d.Volts, vn)
	return d
}

// cost is the bound on the drop in one edge, in V; where its resistance is not known, more than any
// other way has.
func (c *Circuit) cost(e int) float64 {
	if u, ok := c.costs[e]; ok {
		return u
	}
	r, lacks := c.Ohms(e, Operating)
	u := r.Value*c.Worst(e).Capped.Value + 1e-9
	if lacks != nil {
		u = 1e6
	}
	c.costs[e] = u
	return u
}

// Fault is a bolted short fed through one way, in A: the most it can be and the least.
type Fault struct {
	Most, Least derive.Number
	Lacks       []derive.Missing
}

// FaultAt is the fault current of one battery, with those that it can stand on in series, through a
// way along the live side, to a short between the end of the way and the return that runs beside it.
// The links between the batteries of a string count as nothing.
func (c *Circuit) FaultAt(s *network.Source, way explore.Path) Fault {
	var f Fault
	var most, least []derive.Number
	var full, empty, rm, rl float64
	for _, b := range c.standing(s) {
		v, m := c.BatteryVolts(b)
		low, high, _, m2 := c.BatteryOhms(b)
		f.Lacks = merge(merge(f.Lacks, m...), m2...)
		most, least = append(most, v.Full, low), append(least, v.Empty, high)
		full, empty, rm, rl = full+v.Full.Value, empty+v.Empty.Value, rm+low.Value, rl+high.Value
	}
	if len(f.Lacks) > 0 {
		return f
	}
	for _, h := range way {
		a, lacks := c.Ohms(h.Edge, Prospective)
		b, _ := c.Ohms(h.Edge, Least)
		f.Lacks = merge(f.Lacks, lacks...)
		runs := c.runs(h.Edge)
		if a.Kind != 0 {
			most, rm = append(most, a), rm+runs*a.Value
		}
		if b.Kind != 0 {
			least, rl = append(least, b), rl+runs*b.Value
		}
	}
	if rm <= 0 || rl <= 0 {
		f.Lacks = merge(f.Lacks, missing(s.Source, "resistance")...)
		return f
	}
	f.Most = derive.Compute("most fault current at the end of the run", "Ipf", full/rm, "A", "Ipf = Vfull / (Rlow + both runs)", most...)
	f.Least = derive.Compute("least fault current at the end of the run", "Imf", empty/rl, "A", "Imf = Vempty / (Rhigh + both runs hot + joints)", least...)
	return f
}

// standing is a battery and those that lie below it in series in some position, top first.
func (c *Circuit) standing(s *network.Source) []*schema.Source {
	out := []*schema.Source{s.Source}
	in := map[*schema.Source]bool{s.Source: true}
	for z := c.Net.ZoneOf(s.Ret); z != nil; {
		next := -1
		for _, i := range z.Sources {
			if o := &c.Net.Sources[i]; next < 0 && o.Kind.Value == "battery" && !in[o.Source] {
				next = i
			}
		}
		if next < 0 {
			break
		}
		o := &c.Net.Sources[next]
		in[o.Source], out, z = true, append(out, o.Source), c.Net.ZoneOf(o.Ret)
	}
	return out
}

// runs is how often an edge's resistance counts in a fault: a pair's return runs beside it.
func (c *Circuit) runs(edge int) float64 {
	if e := &c.Net.Edges[edge]; e.Wire != nil && (e.Wire.Polarity.Value == "positive" || e.Wire.Polarity.Value == "negative") {
		return 1
	}
	return 2
}
