package conductor

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
)

var voltageDrop = &lint.Rule{
	ID:      "conductor/voltage-drop",
	Claim:   "Too many volts are lost on the way to a load or to a panel.",
	Words:   []lint.Severity{lint.Caution, lint.Notice},
	Subject: "load; wire that ends at a bus",
	When: "In a resting state in which the load may run or is needed, the volts lost on both runs between it and the nearest battery, source or converter " +
		"output that feeds it, as a share of nominal volts, are above the limit; and likewise for the bus at the end of a wire.",
	Why: "Lights dim, pumps slow, radios and controllers drop out, and each blames something else. Caution where somebody's safety hangs on the load, notice otherwise.",
	Numbers: "3 % for loads marked critical, for alarms and brakes that are not marked, and for wires that end at a bus; bilge pumps 3 %, and 10 % under us-boat; 10 % for all others. " +
		"Wires at their ambient, studs 0.5 mohm, blade holders 2 mohm, connector contacts 5 mohm unless written. Each state " +
		"is solved with everything on that may run in one mode: with batteries empty, where constant powers draw most, and at the end of charge, where resistances do. Of several supplies " +
		"the one with the least loss counts. Where a limited supply alone is asked for more than it gives, nothing is said.",
	Not: "A resistive heater, which only warms less. A load marked neither way counts as any other. On alternating current the 3 % and 5 % of the code are advice; the limits here are those " +
		"of any other load. The 1 % that charging likes is not asked. A wire with a single pole that ends at a bus of one polarity is counted without its return. Starting currents.",
	Offer: "The next size of wire; a shorter run; the converter nearer to the load.",
	Meter: "Volts at both ends at the same time, the load running.",
	Cites: []lint.Citation{
		{Ref: "ISO 10133 4.7 and Annex C", Standing: lint.Read, For: []string{"iso-boat"}, Note: "the circuits held to 3 %; preview text"},
		{Ref: "ABYC E-11 11.14.2.6", Standing: lint.Read, For: []string{"us-boat"}, Note: "3 % for panel feeders, blowers, electronics and navigation lights, 10 % for others; read as quoted in two texts"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "boat figures carried over to vehicles and cabins"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.ThickerOwnWire, remedy.ShorterRun},
	Since:  "0.1",
	Run:    drops,
}

func drops(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Loads {
		out = append(out, loadDrop(p, i))
	}
	for _, x := range p.Plan.Conductors {
		if v, ok := feederDrop(p, x); ok {
			out = append(out, v)
		}
	}
	return out
}

// lossy is a place that is asked how much is lost on the way to it.
type lossy struct {
	p     *lint.Pass
	block schema.Block
	class string
	word  lint.Severity
	// last is the wire that must be the last of the way; nil for any.
	last *schema.Conductor

	worst    circuit.Drop
	found    bool
	open     *circuit.Drop // the worst of those that may be worse still, since something is missing
	complete bool
}

func loadDrop(p *lint.Pass, i int) lint.Verdict {
	l := &p.Net.Loads[i]
	q := &lossy{p: p, block: l.Load, class: classOf(l.Load), word: lint.Notice}
	if q.class == "critical" || l.Critical.Set && l.Critical.Value != "none" {
		q.word = lint.Caution
	}
	q.look(p.Circuit.LowZone(p.Net.ZoneOf(l.Hot)), whenOn(p, l.Load), func(v *explore.View) []network.Port {
		if !v.HasLoad(i) {
			return nil
		}
		return []network.Port{l.Port}
	})
	v := q.verdict()
	if l.Kind.Value == "heater" && l.Behavior.Value == "resistive" && v.Outcome != lint.Holds {
		return lint.Verdict{Subject: l.Load, Outcome: lint.Holds, Numbers: v.Numbers}
	}
	return v
}

// classOf sorts a load by how little it may lose.
func classOf(l *schema.Load) string {
	switch {
	case l.Kind.Value == "bilge-pump":
		return "bilge-pump"
	case l.Critical.Set && l.Critical.Value != "none",
		!l.Critical.Set && (l.Kind.Value == "alarm" || l.Kind.Value == "brake"):
		return "critical"
	}
	return "other"
}

// whenOn keeps the states in which a load may run or is needed.
func whenOn(p *lint.Pass, l *schema.Load) explore.Filter {
	if len(l.RunsIn.List) == 0 {
		return p.Space.Closed(p.Space.OneOf(l.NeededIn))
	}
	return p.Space.Closed(p.Space.OneOf(schema.Refs{Attr: l.RunsIn.Attr, List: append(append([]schema.Ref{}, l.RunsIn.List...), l.NeededIn.List...)}))
}

// feederDrop asks of a wire that ends at a bus; ok is false where it does not.
func feederDrop(p *lint.Pass, x *schema.Conductor) (lint.Verdict, bool) {
	hot, ret := ends(p, x)
	if len(hot) == 0 {
		return lint.Verdict{}, false
	}
	z := p.Circuit.LowZone(p.Net.ZoneOf(hot[0]))
	q := &lossy{p: p, block: x, class: "feeder", word: lint.Notice, last: x}
	q.look(z, p.Space.Closed(explore.All()), func(v *explore.View) []network.Port {
		var out []network.Port
		for i, h := range hot {
			if ret[i] != network.None {
				out = append(out, network.Port{Hot: h, Ret: ret[i]})
				continue
			}
			for _, s := range z.Sources {
				out = append(out, network.Port{Hot: h, Ret: p.Net.Sources[s].Ret})
			}
			for _, o := range z.Outputs {
				out = append(out, network.Port{Hot: h, Ret: p.Net.Converters[o].Out.Ret})
			}
		}
		return out
	})
	return q.verdict(), true
}

// ends lists the live ends of a wire at buses, and the return of each, None where it has none.
func ends(p *lint.Pass, x *schema.Conductor) (hot, ret []network.NodeID) {
	returnAt := map[string]network.NodeID{}
	edges := p.Net.EdgesOf(x.Addr)
	for _, e := range edges {
		for _, id := range []network.NodeID{p.Net.Edges[e].A, p.Net.Edges[e].B} {
			if p.Net.ZoneOf(id) == nil && p.Net.Nodes[id].Pole != schema.Ground {
				returnAt[p.Net.Nodes[id].Place()] = id
			}
		}
	}
	for _, e := range edges {
		for _, id := range []network.NodeID{p.Net.Edges[e].A, p.Net.Edges[e].B} {
			if _, bus := p.Plan.Block(p.Net.Nodes[id].Addr).(*schema.Bus); !bus || p.Net.ZoneOf(id) == nil {
				continue
			}
			r, ok := returnAt[p.Net.Nodes[id].Place()]
			if !ok {
				r = network.None
			}
			hot, ret = append(hot, id), append(ret, r)
		}
	}
	return hot, ret
}

// look finds the worst drop over the resting states of a zone. States that differ only in what is
// not joined to the place are one.
func (q *lossy) look(z *network.Zone, f explore.Filter, ports func(*explore.View) []network.Port) {
	q.complete = true
	if z == nil {
		return
	}
	views, complete := q.p.Space.Views(z, f)
	q.complete = complete
	seen := map[string]bool{}
	for _, v := range views {
		list := ports(v)
		if v.Transit != nil || len(list) == 0 {
			continue
		}
		if k := joinedKey(q.p.Net, v, list[0].Hot); seen[k] {
			continue
		} else {
			seen[k] = true
		}
		for _, port := range list {
			if d, ok := q.p.Circuit.DropTo(v, port, q.worst.Volts.Value); ok && q.ours(d) {
				d.Lacks = bearing(q.p.Circuit, d)
				q.take(d)
			}
		}
	}
}

// take keeps a drop if it is the worst, or the worst of those that are not known whole: that one may be the
// larger of the two in truth.
func (q *lossy) take(d circuit.Drop) {
	if !q.found || graver(d, q.worst) {
		q.worst, q.found = d, true
	}
	if len(d.Lacks) > 0 && (q.open == nil || graver(d, *q.open)) {
		q.open = &d
	}
}

// joinedKey tells apart the networks that a place is part of: where batteries in series or diodes join
// other zones to its own, or a converter has both sides in it, all that is there.
func joinedKey(n *network.Network, v *explore.View, at network.NodeID) string {
	both := func(i int) bool { return slices.Contains(v.Zone.Outputs, i) }
	whole := v.Zone != n.ZoneOf(at) || slices.ContainsFunc(v.Zone.Inputs, both)
	var key []byte
	mark := func(on bool) {
		b := byte(0)
		if on {
			b = 1
		}
		key = append(key, b)
	}
	for _, e := range v.Zone.Edges {
		mark(v.Conducts(e) && (whole || v.Joined(n.Edges[e].A, at)))
	}
	for _, e := range v.Zone.Returns {
		mark(v.Conducts(e))
	}
	for _, i := range v.Zone.Sources {
		mark(v.HasSource(i) && (whole || v.Joined(n.Sources[i].Hot, at)))
	}
	for _, i := range v.Zone.Outputs {
		mark(v.HasConverter(i) && (whole || v.Joined(n.Converters[i].Out.Hot, at)))
	}
	for _, i := range v.Zone.Loads {
		mark(v.HasLoad(i) && (whole || v.Joined(n.Loads[i].Hot, at)))
	}
	for _, i := range v.Zone.Inputs {
		mark(v.HasConverter(i) && (whole || v.Joined(n.Converters[i].In.Hot, at)))
	}
	return string(key)
}

func (q *lossy) ours(d circuit.Drop) bool {
	if q.last == nil {
		return true
	}
	return len(d.Path) > 0 && q.p.Net.Edges[d.Path[len(d.Path)-1].Edge].Wire == q.last
}

// alike is how far apart, as a share, two drops may be that are the same but for how they were solved.
const alike = 1e-9

func graver(a, b circuit.Drop) bool {
	if math.Abs(a.Ratio.Value-b.Ratio.Value) > alike*max(a.Ratio.Value, b.Ratio.Value) {
		return a.Ratio.Value > b.Ratio.Value
	}
	return len(a.Lacks) > len(b.Lacks)
}

// bearing drops from what a loss lacks the loads that draw nothing through its way.
func bearing(c *circuit.Circuit, d circuit.Drop) []lint.Missing {
	bears := map[lint.Missing]bool{}
	for _, h := range d.Path {
		for _, m := range c.LacksAt(h.Edge) {
			bears[m] = true
		}
	}
	var out []lint.Missing
	for _, m := range d.Lacks {
		_, load := c.Net.Plan.Block(m.Subject).(*schema.Load)
		if !load || bears[m] || m.Attribute == "rated_voltage" || m.Attribute == circuit.NoPoint {
			out = append(out, m)
		}
	}
	return out
}

func (q *lossy) verdict() lint.Verdict {
	v := lint.Verdict{Subject: q.block, Outcome: lint.Holds, Word: q.word}
	if !q.found {
		if !q.complete {
			return lint.Unfinished(q.block, q.word)
		}
		return v // nothing feeds it, so nothing is lost
	}
	limit := limitOf(q.p.Plan, q.class)
	d := q.worst
	if d.Ratio.Value <= limit.Value && q.open != nil {
		d = *q.open
	}
	v.Numbers = lint.Known(d.Lacks, d.Volts, limit, d.Ratio)
	from := "its supply"
	if b := q.p.Plan.Block(q.p.Net.Nodes[d.From.Hot].Addr); b != nil {
		from = lint.Quote(b)
	}
	what := fmt.Sprintf("Between %s and %s", from, lint.Quote(q.block))
	if q.last != nil {
		what = fmt.Sprintf("Between %s and the bus at the end of %s", from, lint.Quote(q.block))
	}
	switch {
	case d.Ratio.Value > limit.Value:
		v.Outcome = lint.Violated
		v.State, v.Path = d.State, d.View.Places(d.From.Hot, d.Path)
		if d.Home >= 0 { // the path is the way there
			v.Related = []string{q.p.Net.Edges[d.Home].Addr}
		}
		v.Message = fmt.Sprintf("%s %s is lost with everything on, %s of nominal; the limit is %s.", what, d.Volts.Text(), percent(d.Ratio.Value), percent(limit.Value))
	case len(d.Lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, d.Lacks
		v.Message = fmt.Sprintf("%s at least %s is lost, and how much more is not known: %s is missing.", what, d.Volts.Text(), attribute(d.Lacks))
		if d.Volts.Value == 0 {
			v.Message = fmt.Sprintf("%s what is lost is not known: %s is missing.", what, attribute(d.Lacks))
		}
	case !q.complete:
		return lint.Unfinished(q.block, q.word)
	}
	return v
}

func percent(x float64) string { return fmt.Sprintf("%.2g %%", 100*x) }

// limitOf is the strictest share of nominal volts that the plan's practices allow.
func limitOf(plan *schema.Plan, class string) derive.Number {
	var all []derive.Number
	practices := []string{"general"}
	if len(plan.System.Practice.List) > 0 {
		practices = nil
		for _, t := range plan.System.Practice.List {
			practices = append(practices, t.Value)
		}
	}
	for _, name := range practices {
		t := tables.DropLimit(name, class)
		all = append(all, derive.LookUp("largest share lost", "limit", t.V, "", t.Cite.String()))
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Value < all[j].Value })
	return all[0]
}
