package converter

import (
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// rush looks for the worst closing for one converter.
type rush struct {
	p        *lint.Pass
	x        *network.Converter
	port     network.Port
	worst    closing
	found    bool // that something closes onto it
	lacks    []lint.Missing
	complete bool
}

// closing is a contact that puts batteries onto the converter.
type closing struct {
	view  *explore.View
	peak  derive.Number // A; Kind 0 where nothing bounds it
	limit derive.Number // Kind 0 where not known
	times float64       // of the limit
	part  schema.Block
	edges []int
	from  []int // batteries
	live  explore.Path
}

func (g *rush) look(z *network.Zone, converter int) {
	views, complete := g.p.Space.Views(z, g.p.Space.About(g.p.Space.Closed(explore.All(), g.port.Hot), g.port.Hot))
	g.complete = complete
	for _, v := range views {
		if v.Transit != nil || !v.HasConverter(converter) {
			continue
		}
		feeds := g.feeds(v)
		if len(feeds) == 0 {
			continue
		}
		peak := g.peak(feeds)
		for _, f := range feeds {
			for _, e := range f.way {
				g.closes(v, f, e, peak, feeds)
			}
			g.cutOff(v, f, peak, feeds)
		}
	}
}

// feed is a battery across the converter, with the way of least resistance there and back.
type feed struct {
	source int
	way    []int
	live   explore.Path
	amps   derive.Number // of a dead short there; Kind 0 where not known
	lacks  []lint.Missing
}

func (g *rush) feeds(v *explore.View) []feed {
	var out []feed
	cost := func(e int) float64 {
		r, _ := g.p.Circuit.Ohms(e, circuit.Prospective)
		return r.Value + 1e-9
	}
	for _, s := range g.p.Circuit.Strings(v, g.port) {
		top, foot := &g.p.Net.Sources[s[0]], &g.p.Net.Sources[s[len(s)-1]]
		f := feed{source: s[0], live: v.Reach(top.Hot, nil, cost).To(g.port.Hot)}
		f.way = append(f.live.Edges(), v.Reach(g.port.Ret, nil, cost).To(foot.Ret).Edges()...)
		f.amps, f.lacks = g.short(s, f.way)
		out = append(out, f)
	}
	return out
}

// short is what a string drives into a dead short at the converter.
func (g *rush) short(s []int, way []int) (derive.Number, []lint.Missing) {
	loop, lacks := g.p.Circuit.Loop(way, circuit.Prospective)
	from, volts, ohms := []derive.Number{loop}, 0.0, loop.Value
	for _, i := range s {
		b := g.p.Net.Sources[i].Source
		v, m := g.p.Circuit.BatteryVolts(b)
		low, _, _, m2 := g.p.Circuit.BatteryOhms(b)
		if lacks = append(append(lacks, m...), m2...); m != nil || m2 != nil {
			continue
		}
		from, volts, ohms = append(from, v.Full, low), volts+v.Full.Value, ohms+low.Value
	}
	if len(lacks) > 0 || !(ohms > 0) {
		return derive.Number{}, lacks
	}
	return derive.Compute("current of "+lint.Quote(g.p.Net.Sources[s[0]].Source)+" into empty capacitors", "Ic", volts/ohms, "A", "Ic = Vfull / (Rlow + both runs)", from...), nil
}

// peak is what runs at most: the converter's own figure, and what the batteries give together.
func (g *rush) peak(feeds []feed) derive.Number {
	var parts []derive.Number
	sum := 0.0
	for _, f := range feeds {
		if f.amps.Kind == 0 {
			sum = math.Inf(1)
			break
		}
		parts, sum = append(parts, f.amps), sum+f.amps.Value
	}
	name := "peak current into " + lint.Quote(g.x.Converter)
	var own derive.Number
	if g.x.Inrush.Set {
		own = derive.Read("inrush of "+lint.Quote(g.x.Converter), "Ii", g.x.Inrush.Value, "A", g.x.Addr, "inrush", g.x.Inrush.Range)
	}
	switch {
	case math.IsInf(sum, 1):
		return own
	case own.Kind == 0 || own.Value > sum:
		return derive.Compute(name, "Ip", sum, "A", "volts over resistance, of all batteries there", append(parts, lint.Known(nil, own)...)...)
	}
	return derive.Compute(name, "Ip", own.Value, "A", "the least of its inrush and volts over resistance", append(parts, own)...)
}

// closes asks whether the edge is a contact that makes the connection, or a device that bears it.
func (g *rush) closes(v *explore.View, f feed, e int, peak derive.Number, all []feed) {
	x := &g.p.Net.Edges[e]
	if x.Kind != network.Contact && x.Kind != network.Mate || !g.makes(v, x, all) {
		return
	}
	g.found = true
	switch b := g.p.Plan.Block(x.Addr).(type) {
	case *schema.Switch:
		g.against(closing{view: v, part: b, edges: f.way, from: []int{f.source}, live: f.live}, peak, limitOf(b, "rating", b.Rating, makesTimes))
	case *schema.Connector:
		g.against(closing{view: v, part: b, edges: f.way, from: []int{f.source}, live: f.live}, peak, limitOf(b, "rating", b.Rating, 1))
	}
	for _, o := range f.way {
		if d := &g.p.Net.Edges[o]; d.Kind == network.Element && d.Fuse.Rating.Set {
			g.against(closing{view: v, part: d.Fuse, edges: f.way, from: []int{f.source}, live: f.live}, peak, limitOf(d.Fuse, "rating", d.Fuse.Rating, deviceTimes))
		}
	}
}

// limitOf is the peak that a part bears, with no value where the plan leaves it out.
func limitOf(b schema.Block, attribute string, q schema.Quantity, times float64) derive.Number {
	if !q.Set {
		return derive.Number{Subject: b.Header().Addr, Attribute: attribute}
	}
	r := derive.Read(attribute+" of "+lint.Quote(b), "Ir", q.Value, "A", b.Header().Addr, attribute, q.Range)
	if times == 1 {
		return r
	}
	return derive.Compute("peak that "+lint.Quote(b)+" bears", "Ib", times*q.Value, "A", fmt.Sprintf("Ib = %g x Ir", times), r)
}

// cutOff holds the peak against the current at which a battery's own cut-off opens again.
func (g *rush) cutOff(v *explore.View, f feed, peak derive.Number, all []feed) {
	s := g.p.Net.Sources[f.source].Source
	if s.BMS == nil || !s.BMS.OpensAbove.Set || s.BMS.OpensAbove.Dim != quantity.Current || len(all) > 1 {
		return
	}
	g.found = true
	q := s.BMS.OpensAbove
	q.Value *= float64(s.Parallel.Or(1))
	g.against(closing{view: v, part: s, edges: f.way, from: []int{f.source}, live: f.live}, peak, limitOf(s, "bms opens_above", q, 1))
}

// against keeps the closing that passes its limit by most.
func (g *rush) against(c closing, peak, limit derive.Number) {
	if limit.Kind == 0 {
		if m := (lint.Missing{Subject: limit.Subject, Attribute: limit.Attribute}); peak.Kind != 0 && !slices.Contains(g.lacks, m) {
			g.lacks = append(g.lacks, m)
		}
		return
	}
	if c.peak, c.limit = peak, limit; peak.Kind != 0 {
		c.times = peak.Value / limit.Value
	}
	if g.worst.view == nil || c.times > g.worst.times {
		g.worst = c
	}
}

// makes says whether a throw of the contact's switch, or mating its plug, or what it follows, joins a battery to the converter
// that none was joined to before.
func (g *rush) makes(v *explore.View, x *network.Edge, feeds []feed) bool {
	for _, l := range x.When {
		if g.p.Net.Vars[l.Var].Kind == network.SourceVar || v.At(l.Var) < 0 {
			continue
		}
		for _, other := range g.neighbours(l.Var, v.At(l.Var)) {
			if !g.joined(v, l.Var, other, feeds) {
				return true
			}
		}
	}
	return false
}

// neighbours lists the positions from which one is thrown to.
func (g *rush) neighbours(variable, at int) []int {
	q := &g.p.Net.Vars[variable]
	x, _ := g.p.Plan.Block(q.Addr).(*schema.Switch)
	var out []int
	for i := range q.Positions {
		if i == at-1 || i == at+1 || i != at && x != nil && x.AnyOrder.True() {
			out = append(out, i)
		}
	}
	return out
}

// joined says whether one of the batteries is joined to the converter with one variable elsewhere.
func (g *rush) joined(v *explore.View, variable, at int, feeds []feed) bool {
	holds := func(e int) bool {
		for _, l := range g.p.Net.Edges[e].When {
			if l.Var == variable {
				if !l.At[at] {
					return false
				}
			} else if p := v.At(l.Var); p < 0 || !l.At[p] {
				return false
			}
		}
		return true
	}
	in := map[network.NodeID]bool{g.port.Hot: true}
	for queue := []network.NodeID{g.port.Hot}; len(queue) > 0; queue = queue[1:] {
		for _, e := range g.p.Net.At(queue[0]) {
			if to := g.p.Net.Edges[e].Other(queue[0]); !in[to] && holds(e) {
				in[to] = true
				queue = append(queue, to)
			}
		}
	}
	return slices.ContainsFunc(feeds, func(f feed) bool { return in[g.p.Net.Sources[f.source].Hot] })
}
