package charging

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
)

var alternatorOverload = &lint.Rule{
	ID:      "charging/alternator-overload",
	Claim:   "A battery or converter holds the alternator at an output at which it cooks.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Harm:    true,
	Subject: "alternator",
	When: "In some state the alternator is joined to a lithium battery with nothing between that limits current, or to a lead-acid battery other than its own that " +
		"accepts more than half its rating, or to converters whose inputs together draw more than half.",
	Why: "An alternator cools by its own fan and is built to charge for minutes. Held at full output it overheats: fire at the engine, or the engine lost under way. " +
		"A run of wire that keeps the current under half the rating makes it a caution.",
	Numbers: "Half of `rated`. Lithium: (regulated volts - empty volts) / (low resistance + both runs). Lead-acid: `charge_limit`, else 0.25 A for each Ah. " +
		"Converters: output power / efficiency / lowest volts.",
	Not: "Its own battery: the one that no switch, plug or converter parts from it. An alternator with a regulator that senses its temperature: a plan cannot say so. " +
		"A hot engine at idle gives less than its rating, nearer a third than a half.",
	Offer: "A converter that limits current to 40 % of the rating or less; a regulator with a temperature sensor.",
	Meter: "Clamp meter at the alternator, hot and at idle; its case below 110 C.",
	Cites: []lint.Citation{
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "accounts of alternators under large lithium banks were read: a 100 Ah pack takes 80 A and more"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerOutput},
	Since:  "0.1",
	Run:    overload,
}

const share = 0.5 // of an alternator's rating, for hours

func overload(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if s := &p.Net.Sources[i]; s.Kind.Value == "alternator" {
			out = append(out, strain(p, i)...)
		}
	}
	return out
}

// strain asks one alternator about every battery that can be joined to it, and about the converters.
func strain(p *lint.Pass, alt int) []lint.Verdict {
	a := &p.Net.Sources[alt]
	holds := lint.Verdict{Subject: a.Source, Outcome: lint.Holds}
	z := p.Net.ZoneOf(a.Hot)
	if z == nil {
		return []lint.Verdict{holds}
	}
	views, complete := p.Space.Views(z, p.Space.Closed(explore.All()))
	var out []lint.Verdict
	for _, b := range z.Sources {
		if x := &p.Net.Sources[b]; x.Kind.Value == "battery" && !own(p.Net, a, x) {
			if v, found := bank(p, views, alt, b); found {
				out = append(out, v)
			}
		}
	}
	if v, found := converters(p, views, alt); found {
		out = append(out, v)
	}
	speaks := func(v lint.Verdict) bool { return v.Outcome != lint.Holds }
	switch {
	case !complete && !slices.ContainsFunc(out, speaks):
		return []lint.Verdict{lint.Unfinished(a.Source, lint.Warning)}
	case len(out) > 0:
		return out
	}
	return []lint.Verdict{holds}
}

// own says whether a battery is joined to the alternator by wire and devices alone, in every state.
func own(n *network.Network, a, b *network.Source) bool {
	seen, queue := map[network.NodeID]bool{a.Hot: true}, []network.NodeID{a.Hot}
	for ; len(queue) > 0; queue = queue[1:] {
		if queue[0] == b.Hot {
			return true
		}
		for _, e := range n.At(queue[0]) {
			x := &n.Edges[e]
			to := x.Other(queue[0])
			if x.Kind != network.Contact && x.Kind != network.Mate && !n.Nodes[to].Return && !seen[to] {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return false
}

// bank judges one battery, in the state with the least resistance between the two.
func bank(p *lint.Pass, views []*explore.View, alt, battery int) (lint.Verdict, bool) {
	a, b := &p.Net.Sources[alt], &p.Net.Sources[battery]
	var at *explore.View
	var best link
	for _, view := range views {
		if !view.HasSource(alt) || !view.HasSource(battery) || !view.Across(a.Port, b.Port) {
			continue
		}
		if k := linkOf(p, view, a.Port, b.Port); at == nil || k.ohms.Value < best.ohms.Value {
			at, best = view, k
		}
	}
	if at == nil {
		return lint.Verdict{}, false
	}
	v := lint.Verdict{Subject: a.Source, Word: lint.Warning, Related: []string{b.Addr}, Cause: b.Addr,
		State: at.Witness(best.edges, alt, battery), Path: at.Places(a.Hot, best.live)}
	i, lacks := chargeCurrent(p, a, b, best)
	rated, more := p.Circuit.SourceGives(a.Source)
	if lacks = append(lacks, more...); len(lacks) > 0 {
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("%s can charge %s directly, and how hard that works it is not known: %s is missing.", lint.Quote(a.Source), lint.Quote(b.Source), lint.Lacking(lacks[0], true))
		return v, true
	}
	half := derive.Compute("half of what it is rated for", "Ih", share*rated.N.Value, "A", "Ih = 0.5 x rated", rated.N)
	v.Numbers = []derive.Number{half, i}
	lithium := tables.Lithium(b.Chemistry.Value)
	if !lithium && i.Value <= half.Value {
		v.Outcome = lint.Holds
		return v, true
	}
	v.Outcome = lint.Violated
	if i.Value <= half.Value {
		v.Word = lint.Caution
	}
	v.Message = fmt.Sprintf("%s charges %s with nothing between that limits the current: up to %s, and %s is half its rating.",
		lint.Quote(a.Source), lint.Quote(b.Source), i.Text(), half.Text())
	return v, true
}

// chargeCurrent is what a battery takes from the alternator: what lead-acid accepts, what resistance
// lets into lithium.
func chargeCurrent(p *lint.Pass, a, b *network.Source, k link) (derive.Number, []lint.Missing) {
	accept, unlimited, lacks := p.Circuit.Accepts(b.Source)
	if !unlimited {
		return accept, lacks
	}
	volts, m := p.Circuit.BatteryVolts(b.Source)
	low, _, _, m2 := p.Circuit.BatteryOhms(b.Source)
	lacks = append(append(lacks, m...), m2...)
	if !a.RegulatedVoltage.Set {
		lacks = append(lacks, lint.Missing{Subject: a.Addr, Attribute: "regulated_voltage"})
	}
	if len(lacks) > 0 {
		return derive.Number{}, lacks
	}
	reg := derive.Read("regulated volts of "+lint.Quote(a.Source), "Vreg", a.RegulatedVoltage.Value, "V", a.Addr, "regulated_voltage", a.RegulatedVoltage.Range)
	n := derive.Compute("current into "+lint.Quote(b.Source), "I", max(0, reg.Value-volts.Empty.Value)/(low.Value+k.ohms.Value), "A",
		"I = (Vreg - Vempty) / (Rlow + Rw)", reg, volts.Empty, low, k.ohms)
	return n, nil
}

// link is the way of least resistance between two ports, there and back.
type link struct {
	edges []int
	live  explore.Path
	ohms  derive.Number
}

func linkOf(p *lint.Pass, view *explore.View, a, b network.Port) link {
	cost := func(e int) float64 {
		n, _ := p.Circuit.Ohms(e, circuit.Operating)
		return n.Value + 1e-9
	}
	k := link{live: view.Reach(a.Hot, nil, cost).To(b.Hot)}
	k.edges = append(k.live.Edges(), view.Reach(b.Ret, nil, cost).To(a.Ret).Edges()...)
	k.ohms, _ = p.Circuit.Loop(k.edges, circuit.Operating)
	return k
}

// converters judges what the inputs of converters draw together, in the state in which it is most.
func converters(p *lint.Pass, views []*explore.View, alt int) (lint.Verdict, bool) {
	a := &p.Net.Sources[alt]
	v := lint.Verdict{Subject: a.Source, Outcome: lint.Holds, Word: lint.Warning, Cause: "converters"}
	var most derive.Number
	found := false
	for _, view := range views {
		if !view.HasSource(alt) {
			continue
		}
		n, related, lacks, any := drawn(p, view, a)
		found = found || any
		for _, m := range lacks { // what is unknown in another state may be more
			if !slices.Contains(v.Missing, m) {
				v.Missing = append(v.Missing, m)
			}
		}
		if any && (n.Value > most.Value || len(v.Related) == 0) {
			most, v.Related = n, related
			v.State = view.State(view.Zone.Vars)
		}
	}
	if !found {
		return v, false
	}
	rated, lacks := p.Circuit.SourceGives(a.Source)
	half := derive.Compute("half of what it is rated for", "Ih", share*rated.N.Value, "A", "Ih = 0.5 x rated", rated.N)
	switch v.Missing = append(lacks, v.Missing...); {
	case len(lacks) == 0 && most.Value > half.Value:
		v.Outcome, v.Missing = lint.Violated, nil
		v.Message = fmt.Sprintf("Converters draw up to %s from %s together; half its rating is %s.", most.Text(), lint.Quote(a.Source), half.Text())
	case len(v.Missing) > 0:
		v.Outcome = lint.NotProven
		v.Message = fmt.Sprintf("Whether converters draw more than half of what %s is rated for is not known: %s is missing.", lint.Quote(a.Source), lint.Lacking(v.Missing[0], true))
	}
	if len(lacks) == 0 {
		v.Numbers = lint.Known(v.Missing, half, most)
	}
	return v, true
}

// drawn sums the inputs that an alternator feeds in a view.
func drawn(p *lint.Pass, view *explore.View, a *network.Source) (n derive.Number, related []string, lacks []lint.Missing, any bool) {
	var parts []derive.Number
	sum := 0.0
	for _, i := range view.Zone.Inputs {
		x := &p.Net.Converters[i]
		if !view.HasConverter(i) || !view.Joined(a.Hot, x.In.Hot) {
			continue
		}
		any, related = true, append(related, x.Addr)
		d, m := p.Circuit.InputCurrent(i)
		lacks = append(lacks, m...)
		if d.Kind != 0 {
			sum += d.Value
			parts = append(parts, d)
		}
	}
	return derive.Compute("what converters draw together", "I", sum, "A", "sum of their inputs", parts...), related, lacks, any
}
