package remedy

import (
	"math"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// DeviceAndWires offers a device for what its circuit draws for hours, and with it a larger size for each wire behind it
// that it would not guard: where what the wires allow is too little for the load.
func DeviceAndWires(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		for _, a := range carrying(p, f.Addr, lasting(v)) {
			if f.Rating.Set && a.V != f.Rating.Value {
				out = append(out, withWires(p, rated(f, a), behind(p, f.Addr+".load", f.Addr+".line"), a.V)...)
			}
		}
	}
	for _, c := range begun(p, v) {
		for _, e := range ends(c) {
			if composed(c) || len(v.Path) > 0 && place(e.at) != v.Path[0] || e.at.Pole == schema.Neg || !holds(p, e.at) {
				continue
			}
			for _, a := range carrying(p, c.Addr, 0) {
				out = append(out, withWires(p, onSource(p, c, e, a), behind(p, otherPlace(c, e), place(e.at)), a.V)...)
			}
		}
	}
	for i := range out {
		out[i].Second = true
	}
	return out
}

// begun lists the wires on a verdict's way; those that it is about where it has none.
func begun(p *lint.Pass, v lint.Verdict) []*schema.Conductor {
	if out := along(p, v.Path); len(out) > 0 {
		return out
	}
	return about[*schema.Conductor](p, v)
}

func otherPlace(c *schema.Conductor, e end) string {
	if e.attr == "from" {
		return place(c.To)
	}
	return place(c.From)
}

// continuous is the share of its rating that a device carries for hours. NFPA 70 690.9 and 706.30 have its inverse.
const continuous = 0.8

// demand is what passes a part for hours, in A; not ok where something that passes it is not written.
func demand(p *lint.Pass, addr string) (amps float64, ok bool) {
	for _, i := range p.Net.EdgesOf(addr) {
		if p.Net.Nodes[p.Net.Edges[i].A].Return { // it carries what others bring home too
			continue
		}
		w := p.Circuit.Worst(i)
		if len(p.Circuit.LacksAt(i)) > 0 || !w.Complete {
			return 0, false
		}
		amps = max(amps, w.Lasting.Value)
	}
	return amps, amps > 0
}

// carrying are the two smallest standard ratings for what passes a part for hours, and that is known to be at least so much;
// none where neither is known.
func carrying(p *lint.Pass, addr string, least float64) []tables.Value {
	amps, ok := demand(p, addr)
	if amps = max(amps, least); !ok && least == 0 {
		return nil
	}
	up := above(amps / continuous * (1 - 1e-9))
	return up[:min(len(up), 2)]
}

// fitting are the standard ratings for a new device ahead of a wire, as far as it guards the wire: from what passes it for
// hours upwards, the smallest first. Where what passes is not known, the largest first.
func fitting(p *lint.Pass, c *schema.Conductor) []tables.Value {
	list := below(roughly(c))
	if iz, lacks := p.Circuit.Ampacity(c); iz.Kind != 0 && len(lacks) == 0 {
		list = slices.DeleteFunc(list, func(a tables.Value) bool { return !guards(p, c, a.V, c.Size) })
	}
	amps, ok := demand(p, c.Addr)
	if !ok {
		return list
	}
	list = slices.DeleteFunc(list, func(a tables.Value) bool { return a.V < amps/continuous*(1-1e-9) })
	slices.Reverse(list)
	return list
}

// behind lists the wires that a device guards whose current enters at a terminal: up to the next devices, and to the
// sources, by any contact. The way back through the device itself is not gone.
func behind(p *lint.Pass, from, not string) []*schema.Conductor {
	g := graph(p, false)
	seen := map[string]bool{from: true, not: true}
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		if _, ends := p.Plan.Block(block(p, queue[0])).(*schema.Source); ends {
			continue
		}
		for _, s := range g[queue[0]] {
			through := strings.HasSuffix(s.to, ".load") && strings.HasSuffix(queue[0], ".line") || strings.HasSuffix(s.to, ".line") && strings.HasSuffix(queue[0], ".load")
			if !seen[s.to] && !through {
				seen[s.to] = true
				queue = append(queue, s.to)
			}
		}
	}
	var out []*schema.Conductor
	for _, c := range p.Plan.Conductors {
		if a, b := place(c.From), place(c.To); seen[a] && seen[b] && c.Polarity.Value != "negative" && c.Polarity.Value != "grounding" {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b *schema.Conductor) int { return strings.Compare(a.Addr, b.Addr) })
	return out
}

// withWires adds to a proposal of a device what makes it guard wires: for each that it would not, the first size that it
// does. None where no wire has to grow, which other offers propose, and where one cannot.
func withWires(p *lint.Pass, x lint.Proposal, wires []*schema.Conductor, amps float64) []lint.Proposal {
	grown := 0
	for _, c := range wires {
		if guards(p, c, amps, c.Size) {
			continue
		}
		n, _ := tables.Thicker(c.Size.Size)
		i := slices.IndexFunc(n, func(s quantity.Size) bool { y := c.Size; y.Size = s; return guards(p, c, amps, y) })
		one, ok := thicker(c, max(i, 0))
		if i < 0 || !ok {
			return nil
		}
		x.Do += " " + one.Do
		x.Changes = append(x.Changes, one.Changes...)
		x.Sources = append(x.Sources, one.Sources...)
		x.Part = strings.TrimSpace(x.Part + " " + one.Part)
		grown++
	}
	if grown == 0 {
		return nil
	}
	return []lint.Proposal{x}
}

// guards says whether a device may guard a wire of a size, by the strictest of the plan's practices.
func guards(p *lint.Pass, c *schema.Conductor, amps float64, size schema.Size) bool {
	x := *c
	x.Size = size
	iz, lacks := p.Circuit.Ampacity(&x)
	if len(lacks) > 0 || iz.Kind == 0 {
		return false
	}
	volts := math.Inf(1)
	for _, i := range p.Net.EdgesOf(c.Addr) {
		if v, _, lacks := p.Circuit.Highest(p.Net.Edges[i].A); v.Kind != 0 && len(lacks) == 0 {
			volts = v.Value
		}
		break
	}
	for _, practice := range p.Plan.Practices() {
		most := tables.DeviceCeiling(practice, volts, iz.Value).V
		if small, ok := tables.SmallConductorCap(size.Size); ok && practice == "us-rv" && c.Parallel.Or(1) == 1 {
			most = min(most, small.V)
		}
		if amps > most*(1+1e-9) {
			return false
		}
	}
	return true
}
