package charging

import (
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
	When: "In some state in which no alternator runs, a starting battery feeds a house load of more than 50 mA, one that a house battery can feed too, or a converter that can " +
		"run then and whose output a house battery shares.",
	Why: "The engine does not start in the morning. Caution ashore; warning in a boat, where that is the loss of its engine.",
	Numbers: "Loads and converters at their largest current. A contact that senses voltage counts as open where it opens at the battery's rested volts or above. A voltage that starts a " +
		"converter is reached by the battery rested full, or by the setpoint of a converter on its input.",
	Not: "Loads that no plug, isolator or relay parts from the starting battery: they are the engine's own. What flows between two batteries at rest. Plugs whose pin the vehicle " +
		"switches: draw that relay, with `follows`. Positions passed for a moment.",
	Offer:  "A relay that follows the engine, or a charging converter that the ignition starts.",
	Meter:  "Engine off for 10 minutes: a clamp on the feed of the house reads less than 0.05 A.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "an owner's manual that warns of draining both batteries, and cut-out volts of relays, were read"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.IgnitionBetween, remedy.WithoutPosition},
	Since:  "0.1",
	Run:    drainsStarting,
}

const trickle = 0.05 // A below which nothing counts

func drainsStarting(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if s := &p.Net.Sources[i]; s.Kind.Value == "battery" && s.Role.Value == "starting" {
			out = append(out, drained(p, i))
		}
	}
	return out
}

func drained(p *lint.Pass, battery int) lint.Verdict {
	s := &p.Net.Sources[battery]
	best := lint.Verdict{Subject: s.Source, Outcome: lint.Holds}
	z := p.Net.ZoneOf(s.Hot)
	if z == nil {
		return best
	}
	nodes := []network.NodeID{s.Hot}
	for _, i := range z.Inputs {
		nodes = append(nodes, p.Net.Converters[i].Out.Hot)
	}
	d := &drain{p: p, battery: battery, own: engineNodes(p, s.Hot)}
	views, complete := p.Space.Views(p.Net.Together(nodes...), p.Space.Closed(explore.All()))
	for _, v := range views {
		best = plainer(best, d.drinks(v, z))
	}
	if d.held = true; best.Outcome == lint.Holds {
		for _, v := range views {
			best = plainer(best, d.drinks(v, z))
		}
	}
	if best.Outcome == lint.Holds && !complete {
		return lint.Unfinished(s.Source, d.word())
	}
	return best
}

// drinks is the plainest that drinks from the battery in a view.
func (d *drain) drinks(v *explore.View, z *network.Zone) lint.Verdict {
	best := lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	if v.Transit != nil || !v.HasSource(d.battery) || engineOn(d.p.Net, v) {
		return best
	}
	for _, k := range z.Loads {
		best = plainer(best, d.load(v, k))
	}
	for _, k := range z.Inputs {
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

// engineNodes lists the live nodes that nothing but light switches parts from the battery.
func engineNodes(p *lint.Pass, from network.NodeID) map[network.NodeID]bool {
	n := p.Net
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, i := range n.At(queue[0]) {
			e := &n.Edges[i]
			to := e.Other(queue[0])
			parts := slices.ContainsFunc(e.When, func(l network.Literal) bool { return !p.Space.Leaf(l.Var) })
			if !seen[to] && !parts && !n.Nodes[to].Return {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}

// plainer keeps violated before not proven before holds, then the state with fewer positions.
func plainer(a, b lint.Verdict) lint.Verdict {
	rank := map[lint.Outcome]int{lint.Holds: 1, lint.NotProven: 2, lint.Violated: 3}
	x, y := rank[a.Outcome], rank[b.Outcome]
	if y > x || y == x && y > 1 && len(b.State) < len(a.State) {
		return b
	}
	return a
}

// drain asks what drinks from one starting battery.
type drain struct {
	p       *lint.Pass
	battery int
	own     map[network.NodeID]bool
	held    bool  // what something has started goes on, else all starts cold
	edges   []int // of what holds the voltage that starts the converter in question
	sources []int
}

func (d *drain) word() lint.Severity {
	if d.p.Plan.Graded("us-boat") || d.p.Plan.Graded("iso-boat") {
		return lint.Warning
	}
	return lint.Caution
}

// house says whether a battery other than a starting one can be joined to a node.
func (d *drain) house(id network.NodeID) bool {
	z := d.p.Net.ZoneOf(id)
	return z != nil && slices.ContainsFunc(d.p.Net.Upstream(z).Sources, func(i int) bool {
		s := &d.p.Net.Sources[i]
		return s.Kind.Value == "battery" && s.Role.Value != "starting"
	})
}

func (d *drain) load(v *explore.View, k int) lint.Verdict {
	l := &d.p.Net.Loads[k]
	if d.own[l.Hot] || !v.HasLoad(k) || !v.Series(d.battery).Across(l.Port) || !d.house(l.Hot) {
		return lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	}
	d.edges, d.sources = nil, nil
	amps, lacks := d.p.Circuit.LoadCurrent(k)
	return d.judge(v, l.Load, l.Port, amps, slices.Clone(lacks))
}

func (d *drain) subject() schema.Block { return d.p.Net.Sources[d.battery].Source }

func (d *drain) converter(v *explore.View, k int) lint.Verdict {
	c := &d.p.Net.Converters[k]
	holds := lint.Verdict{Subject: d.subject(), Outcome: lint.Holds}
	if !v.HasConverter(k) || c.Trigger.Ignition || c.Kind.Value == "diode" || !v.Series(d.battery).Across(c.In) || !d.shared(v, c) {
		return holds
	}
	var lacks []lint.Missing
	d.edges, d.sources = nil, nil
	if c.Trigger.Set {
		var woken bool
		if woken, lacks = d.woken(v, k, map[int]bool{}); !woken {
			return holds
		}
	} else if c.Kind.Value == "dc-dc" {
		lacks = []lint.Missing{{Subject: c.Addr, Attribute: "trigger"}}
	}
	amps, more := d.p.Circuit.InputCurrent(k)
	if amps.Kind == 0 {
		lacks = append(lacks, more...)
	}
	return d.judge(v, c.Converter, c.In, amps, lacks)
}

// shared says whether a house battery lies across a converter's output.
func (d *drain) shared(v *explore.View, c *network.Converter) bool {
	return slices.ContainsFunc(v.Zone.Sources, func(i int) bool {
		s := &d.p.Net.Sources[i]
		return s.Kind.Value == "battery" && s.Role.Value != "starting" && v.HasSource(i) && v.Series(i).Across(c.Out)
	})
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
	case d.held || !c.Trigger.Set:
		return true, nil
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
	edges = append(edges, v.Reach(x.Out.Hot, nil, nil).To(port.Hot).Edges()...)
	edges = append(edges, v.Reach(x.Out.Ret, nil, nil).To(port.Ret).Edges()...)
	d.edges, d.sources = append(d.edges, edges...), append(d.sources, sources...)
}

func (d *drain) judge(v *explore.View, b schema.Block, at network.Port, amps derive.Number, lacks []lint.Missing) lint.Verdict {
	s := d.p.Net.Sources[d.battery].Source
	out := lint.Verdict{Subject: s, Outcome: lint.Holds, Word: d.word(), Related: []string{b.Header().Addr}, Numbers: lint.Known(nil, amps)}
	if len(lacks) == 0 && amps.Value <= trickle {
		return out
	}
	edges := v.Series(d.battery).Way(at)
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
		case !ok || x.Kind.Value != "isolator" && !x.CutIn.Set && !x.CutOut.Set || len(x.Follows.List) > 0:
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
