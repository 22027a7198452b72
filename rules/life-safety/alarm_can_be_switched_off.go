package lifesafety

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var alarmCanBeSwitchedOff = &lint.Rule{
	ID:      "life-safety/alarm-can-be-switched-off",
	Claim:   "The gas, smoke or carbon monoxide alarm goes dark in a state in which people are aboard.",
	Words:   []lint.Severity{lint.Danger},
	Harm:    true,
	Subject: "load marked life-safety (brakes excepted); compartment with gas",
	When: "A load marked `critical = \"life-safety\"` has no battery of its own and no power in some resting state that belongs to an " +
		"occupied mode, or to an occupied one of the modes it is needed in; without modes, in any state. A load whose `control` switch is open is " +
		"not dark: that is a choice. Also asked: is there any alarm where gas is burnt or kept and people stay.",
	Why: "It fails silently while people sleep, and what it would have reported kills: the expected outcome is death, hence danger.",
	Numbers: "None: any time without power counts. The positions that are named are as few as were found to make it dark whatever everything else does; of " +
		"more than three, the sentence names those that differ from the nearest state in which it has power.",
	Not: "Whether the alarm works, sits in the right place or is too old; blown devices and a battery that cuts off by itself; the blink while " +
		"a selector is thrown. A brake fed through a breakaway switch has its own rule. An alarm that belongs to a lift-out pack is not missed " +
		"while the pack is away. An alarm anywhere in the plan answers for every compartment with gas.",
	Offer: "Feed it from the battery's side of the disconnect through a small device of its own; add an alarm with its own battery as a second layer; " +
		"keep a small fixed battery aboard where the pack lifts out.",
	Meter: "Throw each switch to off and lift the pack: read the volts at the alarm, and press its test button, in each state.",
	Cites: []lint.Citation{
		{Ref: "NFPA 1192 6.4.6 and 6.4.8 (older numbering)", Standing: lint.Read, For: []string{"us-rv"},
			Note: "carbon monoxide and propane detectors; read as quoted in two motorhome owners' manuals, editions differ"},
		{Ref: "owner's manual of a motorhome, 2018", Standing: lint.Read, For: []string{"us-rv"},
			Note: "the alarm has no other supply: with the battery disconnected it is dead"},
		{Ref: "ABYC E-11 11.6.1.2.1", Standing: lint.Read, For: []string{"us-boat"},
			Note: "carbon monoxide detectors may bypass the battery switch; read as quoted in an article"},
		{Ref: "ABYC A-24", Standing: lint.FromMemory, For: []string{"us-boat"}, Note: "carbon monoxide detection on boats"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "alarms are fed ahead of every switch"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.OtherFeed, remedy.OwnBattery},
	Folds:  []string{"life-safety/bilge-pump-behind-switch", "life-safety/one-cutoff-takes-all", "switching/off-but-live", "conductor/voltage-drop"},
	Since:  "0.1",
	Run:    darkAlarms,
}

func darkAlarms(p *lint.Pass) []lint.Verdict {
	var groups []*alarms
	at := map[string]*alarms{}
	for i := range p.Net.Loads {
		l := &p.Net.Loads[i]
		if !isAlarm(l) || len(breakawaysOf(p.Net, l)) > 0 {
			continue
		}
		key := fmt.Sprint(zoneID(p.Net, l), addresses(l.NeededIn))
		if at[key] == nil {
			at[key] = &alarms{}
			groups = append(groups, at[key])
		}
		at[key].loads = append(at[key].loads, &alarm{load: i})
	}
	var out []lint.Verdict
	for _, g := range groups {
		g.look(p)
		for _, a := range g.loads {
			out = append(out, g.verdict(p, a))
		}
	}
	return append(out, unwrittenAlarms(p)...)
}

// isAlarm says whether a load is the rule's subject. An alarm that is not marked is asked too, since
// leaving out the mark must not leave out the question.
func isAlarm(l *network.Load) bool {
	switch l.Kind.Value {
	case "brake":
		return false
	case "alarm":
		return !l.Critical.Set || l.Critical.Value == "life-safety"
	}
	return l.Critical.Value == "life-safety"
}

// whenNeeded keeps the states that an alarm must have power in: the occupied ones among the modes it
// is needed in. Where it is needed in unoccupied modes only, the plan's own word counts.
func whenNeeded(p *lint.Pass, l *schema.Load) explore.Filter {
	if len(l.NeededIn.List) == 0 {
		return p.Space.Occupied()
	}
	var aboard schema.Refs
	for _, r := range l.NeededIn.List {
		if m, ok := schema.Lookup[*schema.Mode](p.Plan, r.Addr); ok && p.Space.Aboard(m) {
			aboard.List = append(aboard.List, r)
		}
	}
	if len(aboard.List) == 0 {
		aboard = l.NeededIn
	}
	return p.Space.OneOf(aboard)
}

// alarms are the alarms of one circuit that are needed in the same modes.
type alarms struct {
	loads    []*alarm
	looked   int // states
	complete bool
}

// alarm is one of them, with the states in which it is dark and in which it has power.
type alarm struct {
	load      int
	dark, fed []*explore.View
}

// look sorts the resting states of the circuit.
func (g *alarms) look(p *lint.Pass) {
	first := &p.Net.Loads[g.loads[0].load]
	var own []network.NodeID // switches before the alarms themselves are looked at in every position
	for _, a := range g.loads {
		own = append(own, p.Net.Loads[a.load].Hot, p.Net.Loads[a.load].Ret)
	}
	views, complete := p.Space.Views(supplyOf(p.Net, first), p.Space.About(p.Space.Closed(whenNeeded(p, first.Load), own...), own...))
	g.complete = complete
	for _, v := range views {
		if v.Transit != nil {
			continue
		}
		g.looked++
		live := v.Live(nil, nil)
		for _, a := range g.loads {
			l := &p.Net.Loads[a.load]
			switch {
			case !v.HasLoad(a.load) || choice(p.Net, v, l.Load):
			case live.Feeds(l.Port):
				a.fed = append(a.fed, v)
			default:
				a.dark = append(a.dark, v)
			}
		}
	}
}

func (g *alarms) verdict(p *lint.Pass, a *alarm) lint.Verdict {
	l := &p.Net.Loads[a.load]
	switch {
	case l.OwnBattery.True():
	case g.looked == 0 && g.complete:
		return noState(l.Load)
	case len(a.dark) > 0:
		return darkVerdict(p, l, a.dark, a.fed, g.complete)
	case !g.complete:
		return sought(p, a)
	}
	return lint.Verdict{Subject: l.Load, Outcome: lint.Holds}
}

// wanted keeps the states in which an alarm is there and its own control is on.
func wanted(p *lint.Pass, l *network.Load) explore.Filter {
	f := whenNeeded(p, l.Load)
	if l.Present >= 0 {
		f = p.Space.With(f, l.Present, func(at int) bool { return p.Net.Vars[l.Present].Positions[at] == "present" })
	}
	x, ok := schema.Lookup[*schema.Switch](p.Plan, l.Control.Addr)
	own := p.Net.Var(l.Control.Addr)
	if !ok || own < 0 || x.Kind.Set && x.Kind.Value != "manual" || p.Net.Vars[own].Follower {
		return f
	}
	return p.Space.With(f, own, func(at int) bool {
		return slices.ContainsFunc(p.Net.EdgesOf(x.Addr), func(e int) bool {
			k := &p.Net.Edges[e]
			return k.Kind == network.Contact && slices.ContainsFunc(k.When, func(l network.Literal) bool { return l.Var == own && l.At[at] })
		})
	})
}

// sought asks for one dark state where there are too many to look at each.
func sought(p *lint.Pass, a *alarm) lint.Verdict {
	l := &p.Net.Loads[a.load]
	found := p.Space.Cut(supplyOf(p.Net, l), wanted(p, l), l.Port, nil, nil)
	switch v := found.View; {
	case found.Found == explore.No:
		return lint.Verdict{Subject: l.Load, Outcome: lint.Holds}
	case v == nil || v.Transit != nil || !v.HasLoad(a.load) || choice(p.Net, v, l.Load):
		return lint.Unfinished(l.Load, lint.Danger)
	default:
		return darkVerdict(p, l, []*explore.View{v}, a.fed, false)
	}
}

// choice says whether the load's own control switch is open in the view. A switch without contacts
// opens nothing, and only a hand or float switch is a choice: a disconnect is thrown for other reasons.
func choice(n *network.Network, v *explore.View, l *schema.Load) bool {
	x, ok := schema.Lookup[*schema.Switch](n.Plan, l.Control.Addr)
	if !ok || x.Kind.Set && x.Kind.Value != "manual" {
		return false
	}
	open := false
	for _, e := range n.EdgesOf(l.Control.Addr) {
		if n.Edges[e].Kind != network.Contact {
			continue
		}
		if v.Conducts(e) {
			return false
		}
		open = true
	}
	return open
}

// darkVerdict tells of dark states; complete says that those and the fed ones are all.
func darkVerdict(p *lint.Pass, l *network.Load, dark, fed []*explore.View, complete bool) lint.Verdict {
	w := smallest(p.Net, dark, fed, func(v *explore.View) bool { return !v.Live(nil, nil).Feeds(l.Port) })
	out := lint.Verdict{Subject: l.Load, Outcome: lint.Violated, Word: lint.Danger, State: w.view.State(w.kept)}
	out.Message = lint.Quote(l.Load) + " has no power in any state in which it is needed"
	if len(fed) > 0 || !complete {
		out.Message = lint.Quote(l.Load) + " goes dark " + w.ways(p)
	}
	switch {
	case !l.OwnBattery.Set:
		out.Outcome, out.Missing = lint.NotProven, []lint.Missing{{Subject: l.Addr, Attribute: "own_battery"}}
		out.Message += ", and whether it has a battery of its own is not written."
	case !l.Critical.Set:
		out.Outcome, out.Missing = lint.NotProven, []lint.Missing{{Subject: l.Addr, Attribute: "critical"}}
		out.Message += ", and what depends on it is not written."
	default:
		out.Message += ", and it has no battery of its own."
	}
	return out
}

// noState is the verdict on a load whose modes no allowed state belongs to.
func noState(l *schema.Load) lint.Verdict {
	return lint.Verdict{
		Subject: l, Outcome: lint.NotProven, Word: lint.Danger, Missing: []lint.Missing{{Subject: l.Addr, Attribute: "needed_in"}},
		Message: "No state that the plan allows belongs to the modes in which " + lint.Quote(l) + " is needed, so there was nothing to look at.",
	}
}

// unwrittenAlarms asks of every compartment with gas in which people may stay whether the plan has an alarm at all.
func unwrittenAlarms(p *lint.Pass) []lint.Verdict {
	written := false
	for i := range p.Net.Loads {
		l := &p.Net.Loads[i]
		written = written || isAlarm(l) && l.Kind.Value != "bilge-pump"
	}
	var out []lint.Verdict
	for _, c := range p.Plan.Compartments {
		if !c.FuelVapor.True() && !c.GasAppliance.True() || c.Occupied.False() {
			continue
		}
		v := lint.Verdict{Subject: c, Outcome: lint.Holds, Word: lint.Danger}
		if !written {
			v.Outcome, v.Group = lint.NotProven, "no alarm"
			v.Message = fmt.Sprintf("No alarm is written in the plan, and %s holds gas, gasoline or a flame where people stay.", lint.Quote(c))
			v.Missing = []lint.Missing{{Subject: c.Addr, Attribute: "alarm"}}
			if !c.Occupied.Set {
				v.Message = fmt.Sprintf("No alarm is written in the plan, and %s holds gas, gasoline or a flame; whether people stay there is not written.", lint.Quote(c))
				v.Missing = append([]lint.Missing{{Subject: c.Addr, Attribute: "occupied"}}, v.Missing...)
			}
		}
		out = append(out, v)
	}
	return out
}
