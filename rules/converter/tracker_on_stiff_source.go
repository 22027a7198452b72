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
	views, complete := p.Space.Views(p.Net.JoinFed(backOn(p.Net, z)...), p.Space.About(p.Space.Closed(explore.All(), c.In.Hot), c.In.Hot))
	for _, v := range views {
		if !v.HasConverter(i) {
			continue
		}
		for _, back := range []func(*network.Converter) bool{lets, mayLet} {
			live := v.Live(back, nil)
			list := stiffOn(p.Net, v, live, c.In, i)
			together := derive.Number{}
			if len(list) > 1 {
				together = sumOf(p, v, list, c)
			}
			for _, s := range list {
				best = worseOf(best, fedBy(p, v, live, c, s, together))
			}
		}
	}
	if best.Outcome == lint.Holds && !complete {
		return lint.Unfinished(c.Converter, lint.Warning)
	}
	return best
}

// lets and mayLet say whether current comes back out of a converter's input: for certain, and where the
// plan does not say.
func lets(c *network.Converter) bool { return c.BlocksReverse.False() }

func mayLet(c *network.Converter) bool {
	return lets(c) || !c.BlocksReverse.Set && (c.Kind.Value == "dc-dc" || c.Kind.Value == "mppt")
}

// backOn lists a zone with those from which current may come back through converters on it.
func backOn(n *network.Network, z *network.Zone) []*network.Zone {
	out := []*network.Zone{z}
	for i := 0; i < len(out); i++ {
		for _, k := range out[i].Inputs {
			if behind := n.ZoneOf(n.Converters[k].Out.Hot); behind != nil && mayLet(&n.Converters[k]) && !slices.Contains(out, behind) {
				out = append(out, behind)
			}
		}
	}
	return out
}

// stiff is something on a tracker's input that is no panel.
type stiff struct {
	explore.Supply
	at   network.Port        // where it lies across
	back []*schema.Converter // through which it comes back
	way  []int               // from at to the input
}

// stiffOn lists what feeds a tracker's input and is no panel, through diodes and backwards through other
// converters too.
func stiffOn(n *network.Network, v *explore.View, live *explore.Energy, port network.Port, tracker int) []stiff {
	var out []stiff
	seen := map[int]bool{tracker: true}
	var look func(x stiff)
	look = func(x stiff) {
		for _, s := range live.By(x.at) {
			if s.Source >= 0 {
				if n.Sources[s.Source].Kind.Value != "solar" {
					out = append(out, stiff{s, x.at, x.back, x.way})
				}
				continue
			}
			c := &n.Converters[s.Converter]
			through := stiff{back: x.back}
			from := c.Out
			switch {
			case seen[s.Converter]:
				continue
			case !v.Across(c.Out, x.at):
				through.at, through.back, from = c.Out, append(slices.Clone(x.back), c.Converter), c.In
			case c.Kind.Value == "diode":
				through.at = c.In
			default:
				out = append(out, stiff{s, x.at, x.back, x.way})
				continue
			}
			seen[s.Converter] = true
			through.way = append(slices.Clone(x.way), v.Between(from.Hot, x.at.Hot).Edges()...)
			look(through)
		}
	}
	look(stiff{at: port})
	return out
}

// sumOf is what several supplies that limit give a tracker's input together; of no kind where one does
// not limit or does not say.
func sumOf(p *lint.Pass, v *explore.View, list []stiff, c *network.Converter) derive.Number {
	sum := 0.0
	var parts []derive.Number
	for _, s := range list {
		x := pushes(p, v, s.Supply, s.at)
		if x.amps.Kind == 0 {
			return derive.Number{}
		}
		parts, sum = append(parts, x.amps), sum+x.amps.Value
	}
	return derive.Compute("what feeds the input of "+lint.Quote(c.Converter)+" together", "I", sum, "A", "sum of the limits", parts...)
}

// throughDiodes lists what feeds a port, with what feeds a diode in the diode's place.
func throughDiodes(n *network.Network, live *explore.Energy, port network.Port, depth int) (out []explore.Supply) {
	for _, s := range live.By(port) {
		switch {
		case s.Source >= 0 || n.Converters[s.Converter].Kind.Value != "diode":
			out = append(out, s)
		case depth < len(n.Converters):
			out = append(out, throughDiodes(n, live, n.Converters[s.Converter].In, depth+1)...)
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
	edges = append(edges, v.Between(x.Out.Hot, port.Hot).Edges()...)
	return append(edges, v.Between(x.Out.Ret, port.Ret).Edges()...), sources
}

// fedBy judges one supply on a tracker's input in a state; together is what all there give at most.
func fedBy(p *lint.Pass, v *explore.View, live *explore.Energy, c *network.Converter, s stiff, together derive.Number) lint.Verdict {
	x := pushes(p, v, s.Supply, s.at)
	edges, sources := stiffWay(p.Net, v, live, s.at, s.Supply)
	out := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds, Word: lint.Warning, State: v.Witness(append(edges, s.way...), sources...), Related: []string{x.block.Header().Addr}, Cause: x.block.Header().Addr}
	volts, amps := limitsOf(c.Converter)
	out.Numbers = lint.Known(nil, volts, amps, x.amps, x.volts)
	out.Message = fmt.Sprintf("%s feeds the input of the tracker %s", lint.Quote(x.block), lint.Quote(c.Converter))
	if len(s.back) > 0 {
		out.Message += ", backwards through " + lint.Quote(s.back[0])
	}
	if len(out.State) > 0 {
		out.Message += ", with " + lint.Positions(p.Plan, out.State)
	}
	takes := c.Input != nil && slices.ContainsFunc(c.Input.Accepts.List, func(x schema.Text) bool { return x.Value == "dc" })
	free := x.amps.Kind == 0 && len(x.lacks) == 0
	own := takes && limitsItself(c.Converter)
	switch {
	case volts.Kind != 0 && x.volts.Kind != 0 && x.volts.Value > volts.Value:
		out.Message += fmt.Sprintf(": %s, and the input takes %s.", x.volts.Text(), volts.Text())
	case amps.Kind != 0 && x.amps.Kind != 0 && x.amps.Value > amps.Value && !own:
		out.Message += fmt.Sprintf(": up to %s, and the input takes %s.", x.amps.Text(), amps.Text())
	case amps.Kind != 0 && together.Kind != 0 && together.Value > amps.Value && !own:
		out.Numbers = append(out.Numbers, together)
		out.Message += fmt.Sprintf(": up to %s with what else feeds it, and the input takes %s.", together.Text(), amps.Text())
	case free && (!takes || c.LimitsCurrent.False()):
		out.Message += ": nothing limits its current."
	default:
		return unsaid(out, c.Converter, x, volts, amps, takes)
	}
	return proven(p, out, v, s)
}

// proven is a violation, unless it rests on what is not written.
func proven(p *lint.Pass, out lint.Verdict, v *explore.View, s stiff) lint.Verdict {
	out.Outcome = lint.Violated
	for _, c := range s.back {
		if !c.BlocksReverse.Set {
			out.Missing = append(out.Missing, lint.Missing{Subject: c.Addr, Attribute: "blocks_reverse"})
		}
	}
	if t := v.Transit; t != nil && t.Throw.Assumed {
		out.Missing = append(out.Missing, lint.Missing{Subject: p.Net.Vars[t.Var].Addr, Attribute: "transition"})
	}
	if len(out.Missing) > 0 {
		out.Outcome = lint.NotProven
		out.Message += fmt.Sprintf(" Whether that can be turns on %s, which is not written.", lint.Lacking(out.Missing[0], true))
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
