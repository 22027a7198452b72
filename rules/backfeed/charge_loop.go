package backfeed

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

var chargeLoop = &lint.Rule{
	ID:      "backfeed/charge-loop",
	Claim:   "Energy goes round: a charger is fed by what it charges.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "converter",
	When: "In some state the output of a converter lies across the input of the next, and so on back to the first, all of them can run, and a battery lies across one of the inputs: " +
		"an inverter that feeds the charger of its own battery, or two converters nose to tail.",
	Why: "Each turn loses a part as heat, while every display says charging: the batteries are flat in the morning, hence caution. Warning where a life-safety load hangs on them.",
	Numbers: "What comes back is the product of the efficiencies; 0.85 is assumed for one without. What is lost is taken with every charger at its output limit, an inverter at " +
		"what the next draws. A voltage that starts a converter can be reached where a battery rested full, or the setpoint of a converter that runs, is at it or above.",
	Not: "States in which shore, a generator, a supply or a running engine feeds the ring: it then flattens nothing. Positions passed for a moment. What runs backwards through a " +
		"converter. A converter that the ignition starts is taken to run with the engine only.",
	Offer: "The charger on the shore side of the transfer switch, where the inverter cannot reach it; converters whose start signals exclude each other, such as one that " +
		"follows the ignition.",
	Meter:  "Shore away and inverter on: the charger's input must be dead. Engine off: no current in the charging converter's input.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "owners' advice to switch the charger off when inverting was read"}},
	Remedy: true,
	Since:  "0.1",
	Run:    chargeLoops,
}

func chargeLoops(p *lint.Pass) []lint.Verdict {
	out := make([]lint.Verdict, len(p.Net.Converters))
	rings := around(p.Net)
	for i, members := range rings {
		v := &out[i]
		v.Subject, v.Outcome = p.Net.Converters[i].Converter, lint.Holds
		if len(members) > 0 && members[0] == i {
			loopsAmong(p, members, out)
		}
	}
	return out
}

// loopsAmong asks converters that can be in rings with each other.
func loopsAmong(p *lint.Pass, members []int, out []lint.Verdict) {
	views, complete := p.Space.Views(ringZone(p.Net, members), p.Space.About(p.Space.Closed(explore.All()), savers(p.Net)...))
	worst := map[int]*ring{}
	for _, v := range views {
		if v.Transit != nil {
			continue
		}
		for _, held := range []bool{false, true} {
			r := run(p, v, held)
			for _, i := range members {
				if x := r.through(i, members, held); x != nil && (worst[i] == nil || x.rank() > worst[i].rank()) {
					worst[i] = x
				}
			}
		}
	}
	for _, i := range members {
		switch x := worst[i]; {
		case x != nil:
			out[i] = x.verdict(members)
		case !complete:
			out[i] = lint.Unfinished(p.Net.Converters[i].Converter, lint.Warning)
		default:
			out[i] = lint.Verdict{Subject: p.Net.Converters[i].Converter, Outcome: lint.Holds}
		}
	}
}

func (x *ring) verdict(members []int) lint.Verdict {
	n := x.p.Net
	v := lint.Verdict{Subject: n.Converters[x.list[0]].Converter, Outcome: lint.Violated, Word: x.word, State: x.state(members), Related: []string{n.Sources[x.battery].Addr}}
	var addrs, names []string
	for _, i := range x.list {
		addrs, names = append(addrs, n.Converters[i].Addr), append(names, lint.Quote(n.Converters[i].Converter))
	}
	v.Related = append(v.Related, addrs[1:]...)
	slices.Sort(addrs)
	v.Group = strings.Join(addrs, " ")
	back := x.back()
	v.Numbers = []derive.Number{back}
	with := ""
	if len(v.State) > 0 {
		with = "With " + lint.Positions(x.p.Plan, v.State) + ", "
	}
	what := fmt.Sprintf("%senergy goes round through %s, at the cost of %s: of what leaves, %.0f %% comes back.", with, lint.And(names...), lint.Quote(n.Sources[x.battery].Source), 100*back.Value)
	v.Message = strings.ToUpper(what[:1]) + what[1:]
	if x.held {
		v.Message = strings.TrimSuffix(v.Message, ".") + ", once something has started it."
	}
	if lost, ok := x.lost(); ok {
		v.Numbers = append(v.Numbers, lost)
		v.Message += fmt.Sprintf(" %s becomes heat.", lost.Text())
	}
	if x.open != nil {
		v.Outcome, v.Missing = lint.NotProven, x.open
		v.Message += fmt.Sprintf(" Whether all of them run then is not shown: %s is not written.", lint.Lacking(x.open[0], true))
	}
	return v
}

func efficiency(c *network.Converter) derive.Number {
	name := "efficiency of " + lint.Quote(c.Converter)
	if c.Efficiency.Set {
		return derive.Read(name, "eta", c.Efficiency.Value, "", c.Addr, "efficiency", c.Efficiency.Range)
	}
	return derive.Assume(name, "eta", 0.85, "", c.Addr, "efficiency", "common practice")
}

// back is the part that comes back after one turn.
func (x *ring) back() derive.Number {
	product := 1.0
	var parts []derive.Number
	for _, i := range x.list {
		if c := &x.p.Net.Converters[i]; c.Kind.Value != "diode" {
			eta := efficiency(c)
			parts, product = append(parts, eta), product*eta.Value
		}
	}
	return derive.Compute("part that comes back", "eta", product, "", "product of the efficiencies", parts...)
}

// lost is the power that becomes heat; ok is false where a limit is not written.
func (x *ring) lost() (derive.Number, bool) {
	sum := 0.0
	var parts []derive.Number
	for k, i := range x.list {
		c := &x.p.Net.Converters[i]
		next := &x.p.Net.Converters[x.list[(k+1)%len(x.list)]]
		if c.Kind.Value == "diode" {
			continue
		}
		eta := efficiency(c).Value
		power, from, ok := x.gives(c)
		if c.Kind.Value == "inverter" && next.Kind.Value != "inverter" {
			of, more, known := x.gives(next)
			if of /= efficiency(next).Value; known && (!ok || of < power) {
				power, from, ok = of, more, true
			}
		}
		if !ok {
			return derive.Number{}, false
		}
		parts, sum = append(parts, from...), sum+power*(1/eta-1)
	}
	return derive.Compute("power lost in the ring", "P", sum, "W", "sum of output x (1 / eta - 1)", append(parts, x.back())...), true
}

// gives is what a converter puts out at its limit, in W.
func (x *ring) gives(c *network.Converter) (float64, []derive.Number, bool) {
	s, lacks := x.p.Circuit.OutputGives(c.Converter)
	if lacks != nil || s.Unlimited || c.Output == nil || !c.Output.Voltage.Set {
		return 0, nil, false
	}
	v := derive.Read("output voltage of "+lint.Quote(c.Converter), "V", c.Output.Voltage.Value, "V", c.Addr, "output voltage", c.Output.Voltage.Range)
	power := s.N.Value * v.Value
	if c.Rated.Set {
		power = min(power, c.Rated.Value)
	}
	return power, []derive.Number{s.N, v}, true
}

// state is the positions that close the ring, start it, and keep away what would pay for it.
func (x *ring) state(members []int) []lint.Position {
	n, v := x.p.Net, x.view
	var edges, sources []int
	join := func(a, b network.Port) {
		edges = append(edges, v.Between(a.Hot, b.Hot).Edges()...)
		edges = append(edges, v.Between(a.Ret, b.Ret).Edges()...)
	}
	for k, i := range x.list {
		c := &n.Converters[i]
		join(c.Out, n.Converters[x.list[(k+1)%len(x.list)]].In)
		if v.Series(x.battery).Across(c.In) {
			edges, sources = append(edges, v.Series(x.battery).Way(c.In)...), append(sources, x.battery)
		}
		if by, ok := x.by[i]; ok && by.Source >= 0 {
			edges, sources = append(edges, v.Series(by.Source).Way(c.In)...), append(sources, by.Source)
		} else if ok && !slices.Contains(x.list, by.Converter) {
			join(n.Converters[by.Converter].Out, c.In)
			more, from := x.live.Way(n.Converters[by.Converter].In)
			edges, sources = append(edges, more...), append(sources, from...)
		}
	}
	told := v.Witness(edges, sources...)
	rest := slices.DeleteFunc(slices.Clone(v.Zone.Vars), func(i int) bool {
		return slices.ContainsFunc(told, func(p lint.Position) bool { return p.Addr == n.Vars[i].Addr })
	})
	kept := v.Keep(rest, func(o *explore.View) bool {
		y := run(x.p, o, x.held).through(x.list[0], members, x.held)
		return y != nil && (y.open == nil) == (x.open == nil)
	})
	return lint.SortState(append(told, v.State(kept)...))
}
