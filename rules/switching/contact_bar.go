package switching

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema"
)

// barVerdict asks of a bus what it carries.
func barVerdict(p *lint.Pass, x *schema.Bus) lint.Verdict {
	v := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Warning}
	if x.Polarity.Value == "chassis" || x.Polarity.Value == "ground" {
		return v
	}
	carried, at, lacks, complete := barCurrent(p, x)
	if at < 0 {
		return v
	}
	v.Numbers = lint.Known(lacks, carried)
	if !x.Rating.Set && carried.Value == 0 {
		return idle(v, lacks, complete)
	}
	if !x.Rating.Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.Addr, Attribute: "rating"}}
		v.Message = fmt.Sprintf("%s carries up to %s, and what it is made for is not written.", lint.Quote(x), carried.Text())
		return v
	}
	rating := derive.Read("rating of "+lint.Quote(x), "Ir", x.Rating.Value, "A", x.Addr, "rating", x.Rating.Range)
	v.Numbers = append(v.Numbers, rating)
	switch {
	case carried.Value > rating.Value*(1+1e-9):
		v.Outcome, v.State = lint.Violated, p.Circuit.StateOf(at)
		v.Message = fmt.Sprintf("%s carries up to %s, and is made for %s.", lint.Quote(x), carried.Text(), rating.Text())
	case len(lacks) > 0 && !feedsWithin(p, x, rating.Value):
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("What %s carries is not known: %s, and %s is missing.",
			lint.Quote(x), ofRating(carried, rating), lint.Lacking(lacks[0], true))
	case !complete:
		return lint.Unfinished(x, lint.Warning)
	}
	return v
}

// barCurrent is the most that a bus carries from one of its ends to the other: what one conductor
// brings, or what several feeds bring for all the branches that only take.
func barCurrent(p *lint.Pass, x *schema.Bus) (most derive.Number, at int, lacks []lint.Missing, complete bool) {
	at, complete = -1, true
	for _, id := range poles(p.Net, x) {
		var takes, gives []derive.Number
		for _, e := range p.Net.At(id) {
			f := through(p, e, false)
			lacks, complete = append(lacks, f.lacks...), complete && f.complete
			if at < 0 || f.n.Value > most.Value {
				most, at = f.n, f.at
			}
			if supplied(p.Net, p.Net.Edges[e].Other(id), id) {
				gives = append(gives, f.n)
			} else {
				takes = append(takes, f.n)
			}
		}
		if p.Net.ZoneOf(id) == nil || len(gives) < 2 {
			continue
		}
		if sum := min(total(takes), total(gives)); sum > most.Value {
			most = derive.Compute("largest current along "+lint.Quote(x), "Ibus", sum, "A", "least of what the branches take and the feeds bring", append(gives, takes...)...)
		}
	}
	return most, at, lacks, complete
}

func total(ns []derive.Number) float64 {
	sum := 0.0
	for _, n := range ns {
		sum += n.Value
	}
	return sum
}

// poles lists the nodes of a bus, grounding left out.
func poles(n *network.Network, x *schema.Bus) []network.NodeID {
	var out []network.NodeID
	for i := range n.Nodes {
		if n.Nodes[i].Addr == x.Addr && n.Nodes[i].Pole != schema.Ground {
			out = append(out, network.NodeID(i))
		}
	}
	return out
}

// feedsWithin says whether devices keep every conductor at a bus within its rating, and no more than
// one of them feeds it.
func feedsWithin(p *lint.Pass, x *schema.Bus, rating float64) bool {
	for _, id := range poles(p.Net, x) {
		feeds := 0
		for _, e := range p.Net.At(id) {
			at := p.Circuit.FeedOf(e)
			if at < 0 || !p.Circuit.Guarded(at, rating) {
				return false
			}
			if p.Net.ZoneOf(id) != nil && supplied(p.Net, p.Net.Edges[e].Other(id), id) {
				feeds++
			}
		}
		if feeds > 1 {
			return false
		}
	}
	return true
}

// supplied says whether a source or a converter's output can be joined to a live node without
// passing the bus.
func supplied(n *network.Network, from, bus network.NodeID) bool {
	z := n.ZoneOf(from)
	if z == nil {
		return false
	}
	seen := map[network.NodeID]bool{from: true, bus: true}
	queue := []network.NodeID{from}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, e := range n.At(id) {
			if to := n.Edges[e].Other(id); !seen[to] && n.ZoneOf(to) == z {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	for _, i := range z.Sources {
		if h := n.Sources[i].Hot; h != bus && seen[h] {
			return true
		}
	}
	for _, i := range z.Outputs {
		if h := n.Converters[i].Out.Hot; h != bus && seen[h] {
			return true
		}
	}
	return false
}

// socket asks of a 12 V accessory socket whether it is used within what such sockets bear.
func socket(p *lint.Pass, i int) (lint.Verdict, bool) {
	l := &p.Net.Loads[i]
	vn, ok := p.Circuit.Nominal(l.Hot)
	if !l.Receptacle.True() || !ok || p.Net.Nodes[l.Hot].AC || vn.Value != 12 {
		return lint.Verdict{}, false
	}
	n, lacks := p.Circuit.LoadCurrent(i)
	if l.Draw.Set {
		n = derive.Read("draw of "+lint.Quote(l.Load), "I", l.Draw.Value, "A", l.Addr, "draw", l.Draw.Range)
	}
	t, _ := tables.ContactLimit("socket")
	most := derive.Assume("most that a 12 V socket bears", "Imax", t.V, "A", l.Addr, "rating of the socket", t.Cite.String())
	v := lint.Verdict{Subject: l.Load, Outcome: lint.Holds, Word: lint.Caution, Numbers: []derive.Number{most}}
	within := false
	for _, e := range p.Net.At(l.Hot) {
		within = within || p.Circuit.Guarded(e, most.Value)
	}
	switch {
	case n.Value > most.Value && !within:
		v.Outcome, v.Numbers = lint.Violated, []derive.Number{n, most}
		v.Message = fmt.Sprintf("%s is used for %s, and 12 V accessory sockets bear about %s.", lint.Quote(l.Load), n.Text(), most.Text())
	case len(lacks) > 0 && !within:
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("What is drawn from the 12 V socket %s is not known, and its device lets more than %s pass: %s is missing.", lint.Quote(l.Load), most.Text(), lint.Lacking(lacks[0], true))
	}
	return v, true
}
