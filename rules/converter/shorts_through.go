package converter

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

var shortsThrough = &lint.Rule{
	ID:      "converter/shorts-through",
	Claim:   "One failed transistor puts the high input voltage of a step-down on all that hangs on its output.",
	Words:   []lint.Severity{lint.Warning},
	Harm:    true,
	Subject: "dc-dc converter; solar tracker",
	When: "A dc-dc converter, or a tracker that something other than a panel feeds, is not isolated; in some state its input is above 1.5 times the `voltage_max` of what is on its output, " +
		"behind diodes too: a load that draws more than 1 A or that lives depend on, or another converter's input.",
	Why: "One part fails short and every low-voltage thing aboard is over-voltage at once, through fuses that may not be able to break it. No switch position warns of it.",
	Numbers: "The input counts a battery at its end of charge, a converter at the highest of its setpoints. An input up to 1.5 times the output's own voltage passes, since no load " +
		"there can be made for less.",
	Not: "Arrays behind a tracker, and sources of limited current that a battery on the output holds down. A cut-off or a clamp of the converter's own: a plan cannot say it. A small battery on the " +
		"output does not make it safe, and does not clear it. States passed for a moment.",
	Offer:  "An isolated converter; a clamp on the output that blows a fuse in the input.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "review of single faults"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.Isolated},
	Since:  "0.1",
	Run:    shortingThrough,
}

const (
	overTimes = 1.5 // a load bears this many times its highest volts for the moment a fault needs
	smallAmps = 1.0 // up to which a load counts only where lives depend on it
)

func shortingThrough(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Converters {
		if k := p.Net.Converters[i].Kind.Value; k == "dc-dc" || k == "mppt" {
			out = append(out, shorting(p, i))
		}
	}
	return out
}

func shorting(p *lint.Pass, i int) lint.Verdict {
	c := &p.Net.Converters[i]
	best := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds}
	if c.Isolated.True() {
		return best
	}
	zones, _ := p.Net.Onward(c.Out.Hot)
	views, complete := p.Space.Views(p.Net.JoinFed(append(zones, p.Net.ZoneOf(c.In.Hot))...), p.Space.Closed(explore.All()))
	for _, v := range views {
		if v.Transit != nil || !v.HasConverter(i) {
			continue
		}
		live := v.Live(nil, nil)
		for _, s := range throughDiodes(p.Net, live, c.In, 0) {
			best = worseOf(best, behind(p, v, live, c, s))
		}
	}
	if best.Outcome == lint.Holds && !complete {
		return lint.Unfinished(c.Converter, lint.Warning)
	}
	return best
}

// behind judges what one supply of the input does to the output's loads once the converter has failed.
func behind(p *lint.Pass, v *explore.View, live *explore.Energy, c *network.Converter, s explore.Supply) lint.Verdict {
	out := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds}
	on, high := v.Onward(c.Out), pushes(p, v, s, c.In)
	panel := s.Source >= 0 && p.Net.Sources[s.Source].Kind.Value == "solar"
	if limited := panel || high.amps.Kind != 0; limited && on.Held(-1) || panel && c.Kind.Value == "mppt" {
		return out // a battery holds it down, or the tracker has one to work on
	}
	low, known := outputVolts(p, c)
	if known && high.volts.Kind != 0 && high.volts.Value <= overTimes*low.Value {
		out.Numbers = []derive.Number{low, high.volts}
		return out
	}
	for _, x := range bearers(p, v, c, on) {
		out = worseOf(out, overVolted(p, v, live, c, s, high, x))
	}
	return out
}

// bearer is a part on a converter's output, with the most volts that it takes.
type bearer struct {
	block     schema.Block
	way       []int // to its live side
	port      network.Port
	most      schema.Quantity
	attribute string
}

// bearers lists what counts on a converter's output: loads that matter, and inputs of other converters.
func bearers(p *lint.Pass, v *explore.View, c *network.Converter, on *explore.Onward) (out []bearer) {
	for k := range p.Net.Loads {
		if l := &p.Net.Loads[k]; v.HasLoad(k) && on.Across(l.Port) && matters(p, k) {
			out = append(out, bearer{l.Load, on.To(l.Hot), l.Port, l.VoltageMax, "voltage_max"})
		}
	}
	for k := range p.Net.Converters {
		x := &p.Net.Converters[k]
		if x.Converter == c.Converter || x.Kind.Value == "diode" || !v.HasConverter(k) || !on.Across(x.In) {
			continue
		}
		var most schema.Quantity
		if x.Input != nil {
			most = x.Input.VoltageMax
		}
		out = append(out, bearer{x.Converter, on.To(x.In.Hot), x.In, most, "input voltage_max"})
	}
	return out
}

// outputVolts is what a converter holds, or else the voltage of the circuit it feeds.
func outputVolts(p *lint.Pass, c *network.Converter) (derive.Number, bool) {
	if c.Output != nil && c.Output.Voltage.Set {
		return derive.Read("output voltage of "+lint.Quote(c.Converter), "Vout", c.Output.Voltage.Value, "V", c.Addr, "output voltage", c.Output.Voltage.Range), true
	}
	return p.Circuit.Nominal(c.Out.Hot)
}

// matters says whether a load counts: more than a trifle, of unknown draw, or one lives depend on.
func matters(p *lint.Pass, load int) bool {
	l := p.Net.Loads[load].Load
	if l.Critical.Value == "life-safety" || !l.Critical.Set && slices.Contains([]string{"alarm", "bilge-pump", "brake"}, l.Kind.Value) {
		return true
	}
	amps, lacks := p.Circuit.LoadCurrent(load)
	return lacks != nil || amps.Value > smallAmps
}

func overVolted(p *lint.Pass, v *explore.View, live *explore.Energy, c *network.Converter, s explore.Supply, high pushed, l bearer) lint.Verdict {
	addr := l.block.Header().Addr
	out := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds, Word: lint.Warning, Related: []string{addr}}
	edges, sources := stiffWay(p.Net, v, live, c.In, s)
	edges = append(append(edges, l.way...), v.Between(c.Out.Ret, l.port.Ret).Edges()...)
	state := v.Witness(edges, sources...)
	out.State = lint.SortState(append(slices.Clone(state), lint.Position{Addr: "after", Position: c.Addr + ": shorts through"}))
	var most derive.Number
	if l.most.Set {
		most = derive.Read("highest volts of "+lint.Quote(l.block), "Vmax", l.most.Value, "V", addr, l.attribute, l.most.Range)
	} else {
		out.Missing = append(out.Missing, lint.Missing{Subject: addr, Attribute: l.attribute})
	}
	if high.volts.Kind == 0 {
		out.Missing = append(out.Missing, high.lacks...)
	}
	out.Numbers = lint.Known(nil, most, high.volts)
	if out.Missing == nil && high.volts.Value <= overTimes*most.Value {
		return lint.Verdict{Subject: c.Converter, Outcome: lint.Holds, Numbers: out.Numbers}
	}
	if !c.Isolated.Set {
		out.Missing = append([]lint.Missing{{Subject: c.Addr, Attribute: "isolated"}}, out.Missing...)
	}
	with := ""
	if len(state) > 0 {
		with = ", with " + lint.Positions(p.Plan, state)
	}
	out.Outcome = lint.Violated
	out.Message = fmt.Sprintf("Once %s has failed short%s, what feeds it lies on %s", lint.Quote(c.Converter), with, lint.Quote(l.block))
	if most.Kind != 0 && high.volts.Kind != 0 {
		out.Message += fmt.Sprintf(": %s, and that bears %s", high.volts.Text(), most.Text())
	}
	out.Message += "."
	if out.Missing != nil {
		out.Outcome = lint.NotProven
		out.Message += fmt.Sprintf(" Whether that can be is not shown: %s is not written.", lint.Lacking(out.Missing[0], true))
		return out
	}
	if weak := weakDevices(p, v, c, high.volts.Value); len(weak) > 0 {
		out.Related = append(out.Related, weak...)
		out.Message += fmt.Sprintf(" Devices there, such as %s, are rated for less than they would have to break.", lint.Quote(p.Plan.Block(weak[0])))
	}
	return out
}

// weakDevices lists the devices joined to the output that are rated for less than a voltage.
func weakDevices(p *lint.Pass, v *explore.View, c *network.Converter, volts float64) (out []string) {
	for i := range p.Net.Edges {
		e := &p.Net.Edges[i]
		if e.Kind != network.Element || !v.Joined(e.A, c.Out.Hot) && !v.Joined(e.B, c.Out.Hot) {
			continue
		}
		rated := e.Fuse.VoltageRating.List
		if len(rated) > 0 && !slices.Contains(out, e.Addr) && !slices.ContainsFunc(rated, func(q schema.Quantity) bool { return q.Value >= volts }) {
			out = append(out, e.Addr)
		}
	}
	return out
}
