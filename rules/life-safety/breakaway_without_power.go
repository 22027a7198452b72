package lifesafety

import (
	"fmt"
	"strings"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var breakawayWithoutPower = &lint.Rule{
	ID:      "life-safety/breakaway-without-power",
	Claim:   "When the trailer comes off, its brakes have no battery, or too little of one.",
	Words:   []lint.Severity{lint.Danger, lint.Caution},
	Harm:    true,
	Subject: "brake or other life-safety load behind a breakaway switch; breakaway switch",
	When: "With the tow plug apart and the breakaway switch pulled, in some state of a mode in which the load is needed (in any state, where it names " +
		"none): no battery of the trailer that is there feeds it; or what feeds it holds less than twice the charge of fifteen minutes of all brakes; or the volts at it are " +
		"below the limits; or a device on the way can open while it is needed.",
	Why: "A loose trailer in traffic has nothing else to stop it, and others are on the road: danger. A device that resets itself, or is near the brakes' current, is a caution.",
	Numbers: "Full current is the sum of all brakes behind the switch, as the plan states it. Fifteen minutes by 49 CFR 393.43(d); the factor of two stands for cold and age. " +
		"At the magnets at least 11.5 V from a full battery and 10.5 V after the fifteen minutes (per 12 V): rested volts, less the battery's high resistance and the " +
		"conductors and joints of both poles at full current; a battery's volts fall evenly from full to empty as it is used. Of several batteries the best one alone is counted. Where only " +
		"an assumed resistance breaks it, it is not proven. " +
		"A device is too small under the full current, and near it under 1.5 times.",
	Not: "Trailers without electric brakes; whether the brakes hold. Power from the tow vehicle never counts: the plug parts too. A starting battery, an alternator, the sun and " +
		"shore power do not count. How full the battery is when it happens. The blink of a selector that is thrown just then. Ways that run in parallel are counted as one. Whether " +
		"the device on the way also feeds others.",
	Offer: "A small fixed breakaway battery with its own charger from the tow feed; a feed ahead of the disconnect.",
	Meter: "Tow plug out, switches as they stand on the road, pin pulled for seconds: volts and amps at the magnets; the wheel must not turn.",
	Cites: []lint.Citation{
		{Ref: "49 CFR 393.43(d)", Standing: lint.Read, Note: "brakes apply by themselves in a breakaway and stay on for at least 15 minutes; the text was read as quoted; it binds commercial vehicles and is good practice elsewhere"},
		{Ref: "SDCL 32-18-17; D.C. rule 18-721", Standing: lint.Read, Note: "the same fifteen minutes for trailers above 3 000 lb"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "volts at the magnets; the brake feed has no device, or one manual-reset breaker of at least 1.5 times its current"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.LargerDevice, remedy.OtherFeed, remedy.SmallBattery},
	Folds:  []string{"life-safety/one-cutoff-takes-all", "switching/off-but-live", "conductor/voltage-drop"},
	Since:  "0.1",
	Run:    looseTrailers,
}

func looseTrailers(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	behind := map[string]bool{}
	for i := range p.Net.Loads {
		l := &p.Net.Loads[i]
		by := breakawaysOf(p.Net, l)
		switch {
		case brakes(l) && len(by) > 0:
			for _, s := range by {
				behind[s] = true
			}
			out = append(out, newBrake(p, i, by).verdicts()...)
		case l.Kind.Value == "brake":
			out = append(out, unproven(l.Load, "path", fmt.Sprintf("No breakaway switch is written in the plan that feeds %s, so nothing is known of a breakaway.", lint.Quote(l.Load)), "breakaway switch"))
		}
	}
	for _, s := range p.Plan.Switches {
		if s.Kind.Value == "breakaway" && !behind[s.Addr] {
			out = append(out, unproven(s, "path", fmt.Sprintf("Behind the breakaway switch %s no brakes are written, so nothing is known of what it feeds.", lint.Quote(s)), "brake load"))
		}
	}
	return out
}

// brakes says whether a load behind a breakaway switch is one that must work when it is pulled.
func brakes(l *network.Load) bool {
	return l.Kind.Value == "brake" || l.Critical.Value == "life-safety" || !l.Kind.Set && !l.Critical.Set
}

func unproven(b schema.Block, cause, message string, attributes ...string) lint.Verdict {
	v := lint.Verdict{Subject: b, Outcome: lint.NotProven, Word: lint.Danger, Cause: cause, Message: message}
	for _, a := range attributes {
		v.Missing = append(v.Missing, lint.Missing{Subject: b.Header().Addr, Attribute: a})
	}
	return v
}

// brake is one load behind breakaway switches, with what was found of it.
type brake struct {
	p        *lint.Pass
	l        *network.Load
	pulled   []int // variables of its breakaway switches
	all      []int // every brake behind any of them
	group    string
	dark     []*explore.View
	fed      []*explore.View
	mode     map[*explore.View]*schema.Mode
	complete bool
	empty    bool // a mode that no allowed state belongs to
}

func newBrake(p *lint.Pass, load int, by []string) *brake {
	b := &brake{p: p, l: &p.Net.Loads[load], group: strings.Join(by, " "), mode: map[*explore.View]*schema.Mode{}, complete: true}
	for _, s := range by {
		b.pulled = append(b.pulled, p.Net.Var(s))
	}
	for i := range p.Net.Loads {
		if l := &p.Net.Loads[i]; brakes(l) && shares(breakawaysOf(p.Net, l), by) {
			b.all = append(b.all, i)
		}
	}
	zone := supplyOf(p.Net, b.l)
	modes := modesOf(p.Plan, b.l.Load)
	for _, m := range modes {
		views, complete := p.Space.Views(zone, p.Space.About(p.Space.Closed(p.Space.Parted(m), b.nodes()...), b.nodes()...))
		b.complete = b.complete && complete
		b.empty = b.empty || len(views) == 0 && complete
		for _, v := range views {
			if v.Transit == nil && v.HasLoad(load) {
				b.sort(v, m)
			}
		}
	}
	return b
}

// nodes are the magnets' own: switches before them are looked at in every position.
func (b *brake) nodes() []network.NodeID {
	var out []network.NodeID
	for _, i := range b.all {
		out = append(out, b.p.Net.Loads[i].Hot, b.p.Net.Loads[i].Ret)
	}
	return append(out, b.l.Hot, b.l.Ret)
}

func shares(a, b []string) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}

// modesOf lists the modes that a load is needed in; one nil mode, every state, where it names none.
func modesOf(plan *schema.Plan, l *schema.Load) []*schema.Mode {
	var out []*schema.Mode
	for _, r := range l.NeededIn.List {
		if m, ok := schema.Lookup[*schema.Mode](plan, r.Addr); ok {
			out = append(out, m)
		}
	}
	if len(out) == 0 {
		out = append(out, nil)
	}
	return out
}

// sort pulls the breakaway switch in a state and notes whether the load is fed.
func (b *brake) sort(v *explore.View, m *schema.Mode) {
	v = v.Loosen(b.pulled...)
	b.mode[v] = m
	if b.live(v).Feeds(b.l.Port) {
		b.fed = append(b.fed, v)
	} else {
		b.dark = append(b.dark, v)
	}
}

// live is what the trailer's own batteries energise.
func (b *brake) live(v *explore.View) *explore.Energy {
	return v.Live(nil, func(s *network.Source) bool { return s.Kind.Value != "battery" || s.Role.Value == "starting" })
}

func (b *brake) verdicts() []lint.Verdict {
	if b.l.OwnBattery.True() {
		return []lint.Verdict{ownHoldUp(b.l.Load)}
	}
	path := b.path()
	if path.Outcome != lint.Holds {
		return []lint.Verdict{path}
	}
	m := newMagnets(b)
	return []lint.Verdict{path, m.energy(), m.volts(), m.devices()}
}

// ownHoldUp asks fifteen minutes of a load's own battery.
func ownHoldUp(l *schema.Load) lint.Verdict {
	v := lint.Verdict{Subject: l, Outcome: lint.Holds, Word: lint.Danger, Cause: "hold-up"}
	if !l.HoldUp.Set {
		return unproven(l, "hold-up", lint.Quote(l)+" has a battery of its own; that it lasts for fifteen minutes is not written.", "hold_up")
	}
	v.Numbers = []derive.Number{derive.Read("hold-up of "+lint.Quote(l), "t", l.HoldUp.Value, "s", l.Addr, "hold_up", l.HoldUp.Range)}
	if l.HoldUp.Value < holdFor {
		v.Outcome, v.Message = lint.Violated, fmt.Sprintf("The battery of %s lasts %s; brakes must stay on for fifteen minutes.", lint.Quote(l), v.Numbers[0].Text())
	}
	return v
}

// path asks whether a battery feeds the load in every state.
func (b *brake) path() lint.Verdict {
	v := lint.Verdict{Subject: b.l.Load, Outcome: lint.Holds, Word: lint.Danger, Cause: "path"}
	name := lint.Quote(b.l.Load)
	switch {
	case len(b.dark) > 0:
		w := smallest(b.p.Net, b.dark, b.fed, func(x *explore.View) bool { return !b.live(x).Feeds(b.l.Port) })
		v.Outcome, v.State = lint.Violated, w.view.State(w.kept)
		v.Message = fmt.Sprintf("In a breakaway%s, no battery of the trailer feeds %s", b.while(w.view), name)
		if len(w.turned) > 0 && len(b.fed) > 0 {
			v.Message += " " + w.ways(b.p)
		}
		v.Message += "."
	case b.empty:
		return unproven(b.l.Load, "path", "No state that the plan allows belongs to a mode in which "+name+" is needed, so there was nothing to look at.", "needed_in")
	case !b.complete:
		return lint.Unfinished(b.l.Load, lint.Danger)
	default:
		if x, attribute := unpartedPlug(b.p.Plan); x != nil {
			v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.Header().Addr, Attribute: attribute}}
			v.Message = fmt.Sprintf("Whether %s is left without power in a breakaway cannot be told: %s is not written as the tow plug that parts.", name, lint.Quote(x))
		}
	}
	return v
}

func (b *brake) while(v *explore.View) string {
	if m := b.mode[v]; m != nil {
		return " in mode " + lint.Quote(m)
	}
	return ""
}

// unpartedPlug finds what leaves it open where the trailer ends: a tow plug that never comes apart,
// or, where a vehicle is drawn and no tow plug is, the first plug of the plan.
func unpartedPlug(p *schema.Plan) (x schema.Block, attribute string) {
	vehicle := false
	for _, s := range p.Sources {
		vehicle = vehicle || s.Kind.Value == "alternator" || s.Role.Value == "starting"
	}
	for _, c := range p.Connectors {
		switch {
		case c.Tow.True() && c.Mated.Value == "always":
			return c, "mated"
		case c.Tow.True():
			vehicle = false
		}
	}
	if vehicle && len(p.Connectors) > 0 {
		return p.Connectors[0], "tow"
	}
	return nil, ""
}
