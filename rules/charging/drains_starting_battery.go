package charging

import (
	"cmp"
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var drainsStartingBattery = &lint.Rule{
	ID:      "charging/drains-starting-battery",
	Claim:   "With the engine off the house goes on drinking from the starting battery.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "starting battery",
	When: "In some state in which no alternator runs, a starting battery feeds, through diodes too, a house load of more than 50 mA, one that a house battery can feed too, or a converter " +
		"that can run then and whose output goes to a house battery or to such a load, through further converters too. Of an alternator's own battery without `role` it is asked whether it starts the engine.",
	Why: "The engine does not start in the morning. Caution ashore; warning in a boat, where that is the loss of its engine.",
	Numbers: "Loads and converters at their largest current. A contact that senses voltage counts as open where it opens at the battery's rested volts or above. A voltage that starts a " +
		"converter is reached by the battery rested full, or by the setpoint of a converter on its input.",
	Not: "Loads that no plug, isolator or relay parts from the starting battery: they are the engine's own, unless a house battery stands on the same wires. What flows between two batteries at rest. Plugs whose pin the vehicle " +
		"switches: draw that relay, with `follows`. Positions passed for a moment.",
	Offer:  "A relay that follows the engine, or a charging converter that the ignition starts.",
	Meter:  "Engine off for 10 minutes: a clamp on the feed of the house reads less than 0.05 A.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "an owner's manual that warns of draining both batteries, and cut-out volts of relays, were read"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.RelayFollows, remedy.IgnitionBetween, remedy.WithoutPosition},
	Since:  "0.1",
	Run:    drainsStarting,
}

const trickle = 0.05 // A below which nothing counts

func drainsStarting(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		s := &p.Net.Sources[i]
		if s.Kind.Value != "battery" || s.Role.Set && s.Role.Value != "starting" {
			continue
		}
		d := &drain{p: p, battery: i}
		switch cranks := d.engine(); {
		case s.Role.Set:
			out = append(out, d.verdict())
		case cranks:
			out = append(out, d.unsaid(d.verdict()))
		}
	}
	return out
}

// unsaid is the verdict on an alternator's own battery of which it is not written that it starts the engine.
func (d *drain) unsaid(v lint.Verdict) lint.Verdict {
	if v.Outcome == lint.Holds {
		return v
	}
	v.Outcome = lint.NotProven
	v.Missing = append([]lint.Missing{{Subject: d.subject().Header().Addr, Attribute: "role"}}, v.Missing...)
	v.Message += fmt.Sprintf(" Whether %s has to start the engine is not written.", lint.Quote(d.subject()))
	return v
}

func (d *drain) verdict() lint.Verdict {
	s := &d.p.Net.Sources[d.battery]
	best := lint.Verdict{Subject: s.Source, Outcome: lint.Holds}
	views, complete := d.p.Space.Views(d.p.Net.Together(d.downstream()...), d.p.Space.Closed(explore.All()))
	for _, v := range views {
		best = plainer(best, d.drinks(v))
	}
	if d.held = true; best.Outcome == lint.Holds {
		for _, v := range views {
			best = plainer(best, d.drinks(v))
		}
	}
	if best.Outcome == lint.Holds && !complete {
		return lint.Unfinished(s.Source, d.word())
	}
	return best
}

// downstream lists a live node of each zone that the battery can drive current into, through converters too.
func (d *drain) downstream() []network.NodeID {
	n := d.p.Net
	nodes := []network.NodeID{n.Sources[d.battery].Hot}
	seen := map[*network.Zone]bool{}
	for i := 0; i < len(nodes); i++ {
		z := n.ZoneOf(nodes[i])
		if z == nil || seen[z] {
			continue
		}
		seen[z] = true
		for _, k := range z.Inputs {
			nodes = append(nodes, n.Converters[k].Out.Hot)
		}
	}
	return nodes
}

// drinks is the plainest that drinks from the battery in a view.
func (d *drain) drinks(v *explore.View) lint.Verdict {
	best := lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	if v.Transit != nil || !v.HasSource(d.battery) || engineOn(d.p.Net, v) {
		return best
	}
	d.reach = v.Onward(d.p.Net.Sources[d.battery].Port)
	for _, k := range v.Zone.Loads {
		best = plainer(best, d.load(v, k))
	}
	for _, k := range v.Zone.Inputs {
		best = plainer(best, d.converter(v, k))
	}
	return best
}

// engineOn says whether an alternator is there; one that never goes away says nothing of the engine.
func engineOn(n *network.Network, v *explore.View) bool {
	return slices.ContainsFunc(v.Zone.Sources, func(i int) bool {
		return n.Sources[i].Kind.Value == "alternator" && n.Sources[i].Present >= 0 && v.HasSource(i)
	})
}

// engine finds the nodes that nothing but light switches parts from the battery: what lies between two of
// them is the engine's own, unless a house battery does too. It says whether an alternator is among it.
func (d *drain) engine() (cranks bool) {
	n := d.p.Net
	from := n.Sources[d.battery].Port
	d.own = map[network.NodeID]bool{from.Hot: true, from.Ret: true}
	for queue := []network.NodeID{from.Hot, from.Ret}; len(queue) > 0; queue = queue[1:] {
		for _, i := range n.At(queue[0]) {
			e := &n.Edges[i]
			to := e.Other(queue[0])
			parts := slices.ContainsFunc(e.When, func(l network.Literal) bool { return !d.p.Space.Leaf(l.Var) })
			if !d.own[to] && !parts {
				d.own[to] = true
				queue = append(queue, to)
			}
		}
	}
	shared := false
	for i := range n.Sources {
		s := &n.Sources[i]
		cranks = cranks || s.Kind.Value == "alternator" && d.engines(s.Port)
		shared = shared || i != d.battery && houseBattery(s) && d.engines(s.Port)
	}
	if shared { // they are one
		d.own = nil
	}
	return cranks
}

// engines says whether a port is the engine's own. One with a return that is drawn nowhere is, by its live side.
func (d *drain) engines(p network.Port) bool {
	return d.own[p.Hot] && (d.own[p.Ret] || len(d.p.Net.At(p.Ret)) == 0)
}

func houseBattery(s *network.Source) bool {
	return s.Kind.Value == "battery" && s.Role.Value != "starting"
}

// plainer keeps violated before not proven before holds, then the state with fewer positions, then what draws more.
func plainer(a, b lint.Verdict) lint.Verdict {
	rank := map[lint.Outcome]int{lint.Holds: 1, lint.NotProven: 2, lint.Violated: 3}
	amps := func(v lint.Verdict) float64 {
		if len(v.Numbers) == 0 {
			return 0
		}
		return v.Numbers[0].Value
	}
	if x := cmp.Or(rank[b.Outcome]-rank[a.Outcome], len(a.State)-len(b.State), cmp.Compare(amps(b), amps(a))); b.Outcome != lint.Holds && x > 0 {
		return b
	}
	return a
}

// drain asks what drinks from one starting battery.
type drain struct {
	p       *lint.Pass
	battery int
	own     map[network.NodeID]bool
	reach   *explore.Onward // of the battery in the view in question
	held    bool            // what something has started goes on, else all starts cold
	edges   []int           // of what starts the converter in question, and of where its output goes
	sources []int
}

func (d *drain) word() lint.Severity {
	if d.p.Plan.Graded("us-boat") || d.p.Plan.Graded("iso-boat") {
		return lint.Warning
	}
	return lint.Caution
}

// woken says whether something on a converter's input, and not the converter itself, can hold the
// voltage that starts it.
func (d *drain) woken(v *explore.View, k int, seen map[int]bool) (bool, []lint.Missing) {
	c := &d.p.Net.Converters[k]
	var lacks []lint.Missing
	live := v.Live(nil, nil)
	seen[k] = true
	for _, s := range live.By(c.In) {
		var volts derive.Number
		var open []lint.Missing
		switch {
		case s.Source >= 0 && d.p.Net.Sources[s.Source].Kind.Value == "battery":
			b, m := d.p.Circuit.BatteryVolts(d.p.Net.Sources[s.Source].Source)
			volts, open = b.Rested, m
		case s.Source < 0 && s.Converter != k:
			volts, open = d.p.Circuit.HighOutput(d.p.Net.Converters[s.Converter].Converter)
			if runs, m := d.lifts(v, s.Converter, seen); !runs {
				continue
			} else if m != nil {
				open = append(slices.Clone(open), m...)
			}
		default:
			continue
		}
		if open == nil && volts.Value >= c.Trigger.Volts {
			d.because(v, live, s, c.In)
			return true, nil
		}
		if open != nil {
			lacks = open
		}
	}
	return lacks != nil, slices.Clone(lacks)
}

// lifts says whether a converter on the input of another can run with the engine off.
func (d *drain) lifts(v *explore.View, k int, seen map[int]bool) (bool, []lint.Missing) {
	c := &d.p.Net.Converters[k]
	switch {
	case c.Trigger.Ignition:
		return false, nil
	case !c.Trigger.Set:
		return true, nil
	case d.held: // if anything can have started it
		most, _, lacks := d.p.Circuit.Highest(c.In.Hot)
		return len(lacks) > 0 || most.Value >= c.Trigger.Volts*(1-1e-9), nil
	case seen[k]:
		return false, nil
	}
	return d.woken(v, k, seen)
}

// because notes what holds a voltage on a port.
func (d *drain) because(v *explore.View, live *explore.Energy, s explore.Supply, port network.Port) {
	if s.Source >= 0 {
		d.edges, d.sources = append(d.edges, v.Series(s.Source).Way(port)...), append(d.sources, s.Source)
		return
	}
	x := &d.p.Net.Converters[s.Converter]
	edges, sources := live.Way(x.In)
	edges = append(edges, v.Between(x.Out.Hot, port.Hot).Edges()...)
	edges = append(edges, v.Between(x.Out.Ret, port.Ret).Edges()...)
	d.edges, d.sources = append(d.edges, edges...), append(d.sources, sources...)
}

func (d *drain) judge(v *explore.View, b schema.Block, at network.Port, amps derive.Number, lacks []lint.Missing) lint.Verdict {
	s := d.p.Net.Sources[d.battery].Source
	out := lint.Verdict{Subject: s, Outcome: lint.Holds, Word: d.word(), Related: []string{b.Header().Addr}, Numbers: lint.Known(nil, amps)}
	if len(lacks) == 0 && amps.Value <= trickle {
		return out
	}
	edges := d.way(v, at)
	open, unsaid := d.senses(edges)
	if lacks = append(lacks, unsaid...); open {
		return out
	}
	out.Outcome = lint.Violated
	out.State = d.state(v, edges)
	with := ""
	if len(out.State) > 0 {
		with = ", with " + lint.Positions(d.p.Plan, out.State)
	}
	out.Message = fmt.Sprintf("With the engine off %s goes on drinking from %s%s", lint.Quote(b), lint.Quote(s), with)
	if amps.Kind != 0 {
		out.Message += ": " + amps.Text()
	}
	out.Message += "."
	if len(lacks) > 0 {
		out.Outcome, out.Missing = lint.NotProven, lacks
		out.Message += fmt.Sprintf(" Whether that can be is not shown: %s is not written.", lint.Lacking(lacks[0], true))
	}
	return out
}

// senses says whether a contact on the way opens by itself at the battery's rested volts, and what is
// not written of those that sense.
func (d *drain) senses(edges []int) (open bool, lacks []lint.Missing) {
	volts, m := d.p.Circuit.BatteryVolts(d.p.Net.Sources[d.battery].Source)
	for _, e := range edges {
		x, ok := schema.Lookup[*schema.Switch](d.p.Net.Plan, d.p.Net.Edges[e].Addr)
		switch {
		case !ok || d.p.Net.Edges[e].Kind != network.Contact || x.Kind.Value != "isolator" && !x.CutIn.Set && !x.CutOut.Set || len(x.Follows.List) > 0:
		case !x.CutOut.Set:
			lacks = append(lacks, lint.Missing{Subject: x.Addr, Attribute: "cut_out"})
		case m != nil:
			lacks = append(lacks, m...)
		case x.CutOut.Value >= volts.Rested.Value*(1-1e-9):
			return true, nil
		}
	}
	return false, lacks
}

// state is the positions on the way, and the alternators that are away.
func (d *drain) state(v *explore.View, edges []int) []lint.Position {
	sources := append(slices.Clone(d.sources), d.battery)
	for _, i := range v.Zone.Sources {
		if s := &d.p.Net.Sources[i]; s.Kind.Value == "alternator" && s.Present >= 0 {
			sources = append(sources, i)
		}
	}
	return v.Witness(append(slices.Clone(edges), d.edges...), sources...)
}
