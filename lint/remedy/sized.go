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
			for _, a := range carrying(p, c.Addr, pushed(p, c)) {
				out = append(out, withWires(p, onSource(p, c, e, a), behind(p, otherPlace(c, e), place(e.at)), a.V)...)
			}
		}
	}
	for _, t := range sitting(p, v) {
		for _, c := range head(begun(p, v)) {
			for _, a := range carrying(p, c.Addr, pushed(p, c)) {
				out = append(out, withWires(p, led(p, t, c, a), behind(p, place(c.From), place(t.at)), a.V)...)
			}
		}
	}
	for i := range out {
		out[i].Second = true
	}
	return out
}

// DeviceEach offers a device of its own for each wire behind a device that this one does not guard, right on the bus that the
// wire begins at: where several thin ones leave one bar. It guards what the wire leads on to as well.
func DeviceEach(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, f := range head(about[*schema.Fuse](p, v)) {
		var all lint.Proposal
		var covered []*schema.Conductor
		n := 0
		thin := slices.DeleteFunc(behind(p, f.Addr+".load", f.Addr+".line"), func(c *schema.Conductor) bool { return !f.Rating.Set || guards(p, c, f.Rating.Value, c.Size) })
		for _, c := range thin {
			e, ok := nearEnd(p, c, f.Addr+".load")
			if !ok || composed(c) {
				continue
			}
			on := behind(p, otherPlace(c, e), place(e.at))
			list := slices.DeleteFunc(fitting(p, c), func(a tables.Value) bool {
				return slices.ContainsFunc(on, func(w *schema.Conductor) bool { return !guards(p, w, a.V, w.Size) })
			})
			if len(list) == 0 {
				return nil
			}
			one := onSource(p, c, e, list[0])
			all.Do = strings.TrimSpace(all.Do + " " + one.Do)
			all.Changes = append(all.Changes, one.Changes...)
			all.Sources, all.Part = append(all.Sources, one.Sources...), one.Part
			covered = append(append(covered, on...), c)
			n++
		}
		if n > 1 && !slices.ContainsFunc(thin, func(c *schema.Conductor) bool { return !slices.Contains(covered, c) }) {
			out = append(out, all)
		}
	}
	return out
}

// nearEnd is the end of a wire that is nearer to a terminal, where that is on a bus.
func nearEnd(p *lint.Pass, c *schema.Conductor, from string) (near end, ok bool) {
	list := ends(c)
	if a, b := way(p, from, place(list[0].at)), way(p, from, place(list[1].at)); len(a) > len(b) {
		list[0] = list[1]
	}
	_, ok = p.Plan.Block(list[0].at.Addr).(*schema.Bus)
	return list[0], ok
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

// demand is what passes a part for hours, in A, as far as it is known; whole is false where something that passes it is not
// written, or nothing is.
func demand(p *lint.Pass, addr string) (amps float64, whole bool) {
	whole = true
	for _, i := range p.Net.EdgesOf(addr) {
		if p.Net.Nodes[p.Net.Edges[i].A].Return { // it carries what others bring home too
			continue
		}
		w := p.Circuit.Worst(i)
		whole = whole && len(p.Circuit.LacksAt(i)) == 0 && w.Complete
		amps = max(amps, w.Lasting.Value)
	}
	return amps, whole && amps > 0
}

// carrying are the two smallest standard ratings for what passes a part for hours, and that is known to be at least so much;
// none where neither is known.
func carrying(p *lint.Pass, addr string, least float64) []tables.Value {
	amps, whole := demand(p, addr)
	if amps = max(amps, least); !whole && least == 0 {
		return nil
	}
	up := above(amps / tables.Continuous * (1 - 1e-9))
	return up[:min(len(up), 2)]
}

// fitting are the standard ratings for a new device ahead of a wire, as far as it guards the wire: from what passes it for
// hours upwards, the smallest first. Where what passes is not known, the largest first.
func fitting(p *lint.Pass, c *schema.Conductor) []tables.Value {
	list := below(roughly(c))
	if iz, lacks := p.Circuit.Ampacity(c); iz.Kind != 0 && len(lacks) == 0 {
		list = slices.DeleteFunc(list, func(a tables.Value) bool { return !guards(p, c, a.V, c.Size) })
	}
	for _, l := range p.Plan.Loads {
		if l.MaxFuse.Set && (place(c.From) == l.Addr || place(c.To) == l.Addr) {
			list = slices.DeleteFunc(list, func(a tables.Value) bool { return a.V > l.MaxFuse.Value*(1+1e-9) })
		}
	}
	amps, whole := demand(p, c.Addr)
	if least := pushed(p, c); least > 0 {
		list = slices.DeleteFunc(list, func(a tables.Value) bool { return a.V < least/tables.Continuous*(1-1e-9) })
		amps = max(amps, least)
	}
	if !whole {
		return list
	}
	list = slices.DeleteFunc(list, func(a tables.Value) bool { return a.V < amps/tables.Continuous*(1-1e-9) })
	slices.Reverse(list)
	return list
}

// behind lists the wires that a device guards whose current enters at a terminal: up to the next devices, and to the
// sources, by any contact. The way back through the device itself is not gone.
func behind(p *lint.Pass, from, not string) []*schema.Conductor {
	seen := spread(p, from, not)
	var out []*schema.Conductor
	for _, c := range p.Plan.Conductors {
		if a, b := place(c.From), place(c.To); seen[a] && seen[b] && c.Polarity.Value != "negative" && c.Polarity.Value != "grounding" {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b *schema.Conductor) int { return strings.Compare(a.Addr, b.Addr) })
	return out
}

// spread are the terminals that are reached from one of them without another, up to the next devices, and to the sources.
func spread(p *lint.Pass, from, not string) map[string]bool {
	seen := walk(p, from, func(x, y string) bool {
		_, ends := p.Plan.Block(block(p, x)).(*schema.Source)
		through := strings.HasSuffix(y, ".load") && strings.HasSuffix(x, ".line") || strings.HasSuffix(y, ".line") && strings.HasSuffix(x, ".load")
		return y != not && !ends && !through
	})
	seen[not] = true // the wire between the two is one of them
	return seen
}

// pushed is what alternators, supplies and converters on one side of a wire, with no device between, give a battery on the
// other together, in A: a device there must carry it, or it opens on the charge.
func pushed(p *lint.Pass, c *schema.Conductor) float64 {
	most := 0.0
	for _, e := range ends(c) {
		if !stores(p, place(e.at), c) {
			continue
		}
		seen := spread(p, otherPlace(c, e), place(e.at))
		sum := 0.0
		for _, s := range p.Plan.Sources {
			if g, lacks := p.Circuit.SourceGives(s); s.Kind.Value != "battery" && seen[s.Addr] && len(lacks) == 0 && !g.Unlimited {
				sum += g.N.Value
			}
		}
		for _, x := range p.Plan.Converters {
			if g, lacks := p.Circuit.OutputGives(x); seen[x.Addr+".out"] && len(lacks) == 0 && !g.Unlimited {
				sum += g.N.Value
			}
		}
		most = max(most, sum)
	}
	return most
}

// withWires adds to a proposal of a device what makes it guard wires: for each that it would not, the first size that it
// does. None where no wire has to grow, which other offers propose, and where one cannot.
func withWires(p *lint.Pass, x lint.Proposal, wires []*schema.Conductor, amps float64) []lint.Proposal {
	more := 0
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
		x.Changes = append(grown(x.Changes, c, n[i]), one.Changes...)
		x.Sources = append(x.Sources, one.Sources...)
		x.Part = strings.TrimSpace(x.Part + " " + one.Part)
		more++
	}
	if more == 0 {
		return nil
	}
	return []lint.Proposal{x}
}

// grown lays new pieces that are like a wire in another size, as the wire is.
func grown(changes []lint.Change, like *schema.Conductor, size quantity.Size) []lint.Change {
	out := slices.Clone(changes)
	for i, c := range out {
		if strings.HasPrefix(c.Block, "conductor ") {
			out[i].Block = strings.Replace(c.Block, `"`+like.Size.String()+`"`, `"`+size.String()+`"`, 1)
		}
	}
	return out
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
	if edges := p.Net.EdgesOf(c.Addr); len(edges) > 0 {
		if v, _, lacks := p.Circuit.Highest(p.Net.Edges[edges[0]].A); v.Kind != 0 && len(lacks) == 0 {
			volts = v.Value
		}
	}
	for _, practice := range p.Plan.Practices() {
		if most, _ := tables.MostDevice(practice, volts, iz.Value, size.Size, c.Parallel.Or(1)); amps > most.V*(1+1e-9) {
			return false
		}
	}
	return true
}
