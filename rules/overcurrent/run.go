package overcurrent

import (
	"encoding/binary"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// allowance is how far a run may go before its first device, by how it is laid: the strictest of the
// plan's practices each time.
type allowance struct{ bare, sheathed, battery derive.Number }

func allowanceOf(p *schema.Plan) allowance {
	var out allowance
	tighten := func(n *derive.Number, v tables.Value, laid string) {
		if v.Known() && (n.Kind == 0 || v.V < n.Value) {
			*n = figure("longest run before the first device, "+laid, "Lmax", v, "m", "distance to the first device, "+laid)
		}
	}
	for _, practice := range p.Practices() {
		bare, sheathed, battery := tables.DeviceDistance(practice)
		tighten(&out.bare, bare, "bare")
		tighten(&out.sheathed, sheathed, "sheathed all the way")
		tighten(&out.battery, battery, "sheathed and straight from the battery")
	}
	return out
}

// figure is a table's value as a number. One that was not read in its source is an assumption.
func figure(name, symbol string, v tables.Value, unit, attribute string) derive.Number {
	if v.Cite.Status == tables.Memory {
		return derive.Assume(name, symbol, v.V, unit, "plan", attribute, v.Cite.String())
	}
	return derive.LookUp(name, symbol, v.V, unit, v.Cite.String())
}

// run is a way along conductors without a device, from a feed through a conductor to its far end.
type run struct {
	*area
	feed feed
	view *explore.View
	way  explore.Path // the conductor is its last hop
}

func (r *run) wire() *schema.Conductor { return r.n.Edges[r.last().Edge].Wire }

func (r *run) last() explore.Hop { return r.way[len(r.way)-1] }

// key tells ways apart.
func (r *run) key() string {
	b := binary.AppendVarint(nil, int64(r.feed.at))
	for _, h := range r.way {
		b = binary.AppendVarint(b, int64(h.Edge))
	}
	return string(b)
}

// conductors lists the conductors along the run that count, in order.
func (r *run) conductors() []*schema.Conductor {
	var out []*schema.Conductor
	for _, h := range r.way {
		if e := &r.n.Edges[h.Edge]; e.Kind == network.Wire && !e.Wire.Cranking.True() {
			out = append(out, e.Wire)
		}
	}
	return out
}

// far is the length from the feed to the conductor's far end; lacks names the lengths left out, and
// the number is then the least that it can be.
func (r *run) far() (far derive.Number, lacks []lint.Missing) {
	return laidLength("conductor from "+lint.Quote(r.feed.block)+" to the far end of "+lint.Quote(r.wire()), r.conductors())
}

func laidLength(name string, list []*schema.Conductor) (sum derive.Number, lacks []lint.Missing) {
	var parts []derive.Number
	total := 0.0
	for _, c := range list {
		if !c.Length.Set {
			lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: "length"})
			continue
		}
		total += c.Length.Value
		parts = append(parts, derive.Read("length of "+lint.Quote(c), "L", c.Length.Value, "m", c.Addr, "length", c.Length.Range))
	}
	return derive.Compute(name, "D", total, "m", "sum of L, as laid", parts...), lacks
}

// limit is how far the run may go without a device. Where conductors do not say whether they are
// sheathed, known is the limit of a bare run, and lacks names those conductors; sheathed is the
// limit that would count if they are.
func (r *run) limit(a allowance) (known, sheathed derive.Number, lacks []lint.Missing) {
	sheathed = a.sheathed
	if len(r.way) == 1 && r.feed.battery(r.n) {
		sheathed = a.battery
	}
	for _, c := range r.conductors() {
		switch {
		case c.Sheathed.False():
			return a.bare, a.bare, nil
		case !c.Sheathed.Set:
			lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: "sheathed"})
		}
	}
	if lacks != nil {
		return a.bare, sheathed, lacks
	}
	return sheathed, sheathed, nil
}

// through makes the run from a feed through one edge, entered at the end that is nearer.
func (a *area) through(f feed, v *explore.View, reach *explore.Reach, edge int) (*run, bool) {
	e := &a.n.Edges[edge]
	da, okA := reach.Dist[e.A]
	db, okB := reach.Dist[e.B]
	if !v.Conducts(edge) || !okA && !okB {
		return nil, false
	}
	near := e.A
	if !okA || okB && db < da {
		near = e.B
	}
	way := append(reach.To(near), explore.Hop{Edge: edge, From: near, To: e.Other(near)})
	return &run{a, f, v, way}, true
}
