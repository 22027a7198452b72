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

var trackerOnStiffSource = &lint.Rule{
	ID:      "converter/tracker-on-stiff-source",
	Claim:   "A solar tracker's input is fed from a battery or a converter instead of a panel.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "solar tracker",
	When: "In some state, or while a switch is thrown, a battery, an alternator, a supply or a converter's output lies across the input of a tracker, and it can exceed the input's " +
		"volts or current, or nothing limits its current and the tracker is not said to take direct current and to limit itself.",
	Why: "A tracker looks for its most power by drawing more and more; a panel gives way, a battery does not. Warning where the input can be overloaded; caution where the " +
		"limits, or what the input accepts, are not written.",
	Numbers: "A battery counts at its end of charge, a converter at the highest of its setpoints. A converter that limits gives `output current_max`, an alternator or supply 1.25 " +
		"times its rating.",
	Not:    "Whether the tracker hunts up and down on a source that limits: measure it. Devices at both ends of the run, which other rules ask for.",
	Offer:  "A converter of constant current, set to at most 80 % of the input's current and 90 % of its volts; a charging input that is made for direct current.",
	Meter:  "Volts and amperes at the input at the start and after 30 minutes: hunting by more than 10 % is a stop.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "a boost that limits its current into a tracker is ordinary for charging while towing"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.MeantForDC},
	Since:  "0.1",
	Run:    stiffTrackers,
}

func stiffTrackers(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Converters {
		if p.Net.Converters[i].Kind.Value == "mppt" {
			out = append(out, stiffTracker(p, i))
		}
	}
	return out
}

func stiffTracker(p *lint.Pass, i int) lint.Verdict {
	c := &p.Net.Converters[i]
	best := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds}
	z := p.Net.ZoneOf(c.In.Hot)
	if z == nil {
		return best
	}
	views, complete := p.Space.Views(p.Net.Upstream(z), p.Space.Closed(explore.All(), c.In.Hot))
	for _, v := range views {
		if !v.HasConverter(i) {
			continue
		}
		live := v.Live(nil, nil)
		for _, s := range stiffOn(p.Net, live, c.In, 0) {
			if s.Converter != i {
				best = worseOf(best, fedBy(p, v, live, c, s))
			}
		}
	}
	if best.Outcome == lint.Holds && !complete {
		return lint.Unfinished(c.Converter, lint.Warning)
	}
	return best
}

// stiffOn lists what feeds a port and is no panel, through diodes too.
func stiffOn(n *network.Network, live *explore.Energy, port network.Port, depth int) (out []explore.Supply) {
	for _, s := range live.By(port) {
		switch {
		case s.Source >= 0 && n.Sources[s.Source].Kind.Value == "solar":
		case s.Source < 0 && n.Converters[s.Converter].Kind.Value == "diode":
			if depth < len(n.Converters) {
				out = append(out, stiffOn(n, live, n.Converters[s.Converter].In, depth+1)...)
			}
		default:
			out = append(out, s)
		}
	}
	return out
}

// worseOf keeps the graver verdict: violated before not proven before holds, then the higher word, then
// the state with fewer positions.
func worseOf(a, b lint.Verdict) lint.Verdict {
	rank := func(v lint.Verdict) int {
		switch v.Outcome {
		case lint.Violated:
			return 20 + int(v.Word)
		case lint.NotProven:
			return 10 + int(v.Word)
		}
		return 0
	}
	if x, y := rank(a), rank(b); y > x || y == x && (y == 0 && len(b.Numbers) > len(a.Numbers) || y > 0 && len(b.State) < len(a.State)) {
		return b
	}
	return a
}

// stiffWay is how a supply comes to a port: its edges, and the sources it rests on.
func stiffWay(n *network.Network, v *explore.View, live *explore.Energy, port network.Port, s explore.Supply) ([]int, []int) {
	if s.Source >= 0 {
		if way := v.Series(s.Source).Way(port); way != nil || v.Series(s.Source).Across(port) {
			return way, []int{s.Source}
		}
		return live.Way(port) // through a diode
	}
	x := &n.Converters[s.Converter]
	if !v.Across(x.Out, port) {
		return live.Way(port)
	}
	edges, sources := live.Way(x.In)
	edges = append(edges, v.Reach(x.Out.Hot, nil, nil).To(port.Hot).Edges()...)
	return append(edges, v.Reach(x.Out.Ret, nil, nil).To(port.Ret).Edges()...), sources
}

// fedBy judges one supply on a tracker's input in a state.
func fedBy(p *lint.Pass, v *explore.View, live *explore.Energy, c *network.Converter, s explore.Supply) lint.Verdict {
	x := pushes(p, v, s, c.In)
	edges, sources := stiffWay(p.Net, v, live, c.In, s)
	out := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds, Word: lint.Warning, State: v.Witness(edges, sources...), Related: []string{x.block.Header().Addr}, Cause: x.block.Header().Addr}
	volts, amps := limitsOf(c.Converter)
	out.Numbers = lint.Known(nil, volts, amps, x.amps, x.volts)
	with := ""
	if len(out.State) > 0 {
		with = ", with " + lint.Positions(p.Plan, out.State)
	}
	out.Message = fmt.Sprintf("%s feeds the input of the tracker %s%s", lint.Quote(x.block), lint.Quote(c.Converter), with)
	takes := c.Input != nil && slices.ContainsFunc(c.Input.Accepts.List, func(x schema.Text) bool { return x.Value == "dc" })
	stiff := x.amps.Kind == 0 && len(x.lacks) == 0
	switch {
	case volts.Kind != 0 && x.volts.Kind != 0 && x.volts.Value > volts.Value:
		out.Outcome = lint.Violated
		out.Message += fmt.Sprintf(": %s, and the input takes %s.", x.volts.Text(), volts.Text())
	case amps.Kind != 0 && x.amps.Kind != 0 && x.amps.Value > amps.Value && !(takes && limitsItself(c.Converter)):
		out.Outcome = lint.Violated
		out.Message += fmt.Sprintf(": up to %s, and the input takes %s.", x.amps.Text(), amps.Text())
	case stiff && (!takes || c.LimitsCurrent.False()):
		out.Outcome = lint.Violated
		out.Message += ": nothing limits its current."
	default:
		return unsaid(out, c.Converter, x, volts, amps, takes)
	}
	return out
}

func limitsItself(c *schema.Converter) bool {
	return c.LimitsCurrent.True() && c.Output != nil && c.Output.CurrentMax.Set
}

// limitsOf is what a tracker's input bears.
func limitsOf(c *schema.Converter) (volts, amps derive.Number) {
	if c.Input != nil && c.Input.VoltageMax.Set {
		volts = derive.Read("most input volts of "+lint.Quote(c), "Vmax", c.Input.VoltageMax.Value, "V", c.Addr, "input voltage_max", c.Input.VoltageMax.Range)
	}
	if c.Input != nil && c.Input.CurrentMax.Set {
		amps = derive.Read("most input current of "+lint.Quote(c), "Imax", c.Input.CurrentMax.Value, "A", c.Addr, "input current_max", c.Input.CurrentMax.Range)
	}
	return volts, amps
}

// unsaid is the verdict where nothing known is exceeded: it holds unless something is not written.
func unsaid(out lint.Verdict, c *schema.Converter, x pushed, volts, amps derive.Number, takes bool) lint.Verdict {
	lacks := slices.Clone(x.lacks)
	lack := func(when bool, attribute string) {
		if when {
			lacks = append(lacks, lint.Missing{Subject: c.Addr, Attribute: attribute})
		}
	}
	own := takes && limitsItself(c)
	lack(volts.Kind == 0, "input voltage_max")
	lack(amps.Kind == 0 && !own, "input current_max")
	lack(c.Input == nil || !c.Input.Accepts.Set, "input accepts")
	if stiff := x.amps.Kind == 0 && len(x.lacks) == 0; stiff {
		lack(!c.LimitsCurrent.Set, "limits_current")
		lack(c.Output == nil || !c.Output.CurrentMax.Set, "output current_max")
	}
	if len(lacks) == 0 {
		return lint.Verdict{Subject: c, Outcome: lint.Holds, Numbers: out.Numbers}
	}
	out.Outcome, out.Word, out.Missing = lint.NotProven, lint.Caution, lacks
	out.Message += fmt.Sprintf(". Whether the input bears that is not shown: %s is not written.", lint.Lacking(lacks[0], true))
	return out
}
