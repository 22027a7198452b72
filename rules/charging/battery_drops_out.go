package charging

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
)

var batteryDropsOut = &lint.Rule{
	ID:      "charging/battery-drops-out",
	Claim:   "The battery leaves, the charger goes on alone and the bus goes wild.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "source that charges; converter",
	When: "Something that does not hold its own volts charges, and after the BMS of one battery has opened no other battery is across it; or, other than for an alternator, an allowed state " +
		"leaves it running without a battery. For anything but an alternator, something else must be on the same wires then: a load, or a converter's input.",
	Why: "The current that the battery took has nowhere to go. All that is on the bus sees the spike in one instant, alarms and lights included, or goes dark when the charger trips. Warning.",
	Numbers: "Does not hold its own volts: an alternator; an array with no controller; a converter with `needs_battery = true`. A regulated supply does, and a converter with " +
		"`needs_battery = false`. A battery has a BMS where it has a `bms` block or `cold_charge_cutoff = true`; lithium without either is asked for it. An array's cold open-circuit volts are " +
		"compared with each `voltage_max`.",
	Not: "How high the volts go behind an alternator or a converter. Two batteries that open for the same reason at the same time, such as two packs in one cold place: one opens at a time. " +
		"A switch, plug or fuse that takes the battery from an alternator. What an array does on a controller's input.",
	Offer: "A lead-acid battery that stays on the alternator, with a converter to the lithium one; a controller made to run without a battery; the charger on the battery's side of the " +
		"disconnect; a BMS that stops the charger first.",
	Meter: "On the bench only: never by opening a battery under charge.",
	Cites: []lint.Citation{
		{Ref: "owners' measurements of controllers without a battery", Standing: lint.Read, Note: "the output rises to 23 to 25 V on a 12 V bus"},
		{Ref: "makers' instructions of load centres", Standing: lint.Read, Note: "as quoted: not to be run without a battery"},
		{Ref: "ABYC E-13", Standing: lint.FromMemory, For: []string{"us-boat"}},
		{Ref: "common practice", Standing: lint.CommonPractice},
	},
	Remedy: true,
	Folds:  []string{"switching/opens-charging-source bms"},
	Offers: []lint.Offer{remedy.NoBatteryNeeded},
	Since:  "0.1",
	Run:    dropsOut,
}

func dropsOut(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	at := &places{p: p, zones: map[string]*network.Zone{}}
	asked := map[int]bool{}
	for _, z := range p.Net.Zones {
		for _, c := range chargersOf(p.Net, z) {
			if z.AC || c.reverse || c.converter >= 0 && p.Net.Converters[c.converter].Kind.Value == "diode" {
				continue
			}
			if out = append(out, newLone(at, c).verdicts()...); c.converter >= 0 {
				asked[c.converter] = true
			}
		}
	}
	for i := range p.Net.Converters {
		if !asked[i] { // it charges nothing by itself
			out = append(out, lint.Verdict{Subject: p.Net.Converters[i].Converter, Outcome: lint.Holds})
		}
	}
	return out
}

// verdicts tells everything that breaks the rule at a charger; of what is not proven the first.
func (l *lone) verdicts() []lint.Verdict {
	holds := lint.Verdict{Subject: l.block, Outcome: lint.Holds}
	if l.wild == no {
		return []lint.Verdict{holds}
	}
	var sure, open []lint.Verdict
	complete := l.look()
	for _, e := range l.events {
		switch v, broken := e.verdict(l); {
		case !broken:
			holds.Numbers = v.Numbers
		case v.Outcome == lint.Violated:
			sure = append(sure, v)
		default:
			open = append(open, v)
		}
	}
	switch {
	case len(sure) > 0:
		return sure
	case len(open) > 0:
		return open[:1]
	case !complete:
		return []lint.Verdict{lint.Unfinished(l.block, lint.Warning)}
	}
	return []lint.Verdict{holds}
}

// verdict tells of an event, by the state with the fewest positions; false where nothing comes of it.
func (e *event) verdict(l *lone) (lint.Verdict, bool) {
	x := e.best
	if x == nil {
		return lint.Verdict{}, false
	}
	v := lint.Verdict{Subject: l.block, Outcome: lint.Violated, Word: lint.Warning, State: x.state, Cause: "no battery", Missing: l.lacks}
	v.Related = append(v.Related, x.addrs()...)
	volts, kept := l.volts(x)
	v.Numbers = volts
	if kept {
		return v, false
	}
	if e.gone >= 0 {
		s := l.p.Net.Sources[e.gone].Source
		v.Cause, v.Related = s.Addr, append(v.Related, s.Addr)
		v.State = append(v.State, lint.Position{Addr: "after", Position: s.Addr + ": bms opens"})
		v.Missing = append(v.Missing[:len(v.Missing):len(v.Missing)], bmsLacks(s)...)
	}
	if x.assumed != nil {
		v.Missing = append(v.Missing[:len(v.Missing):len(v.Missing)], *x.assumed)
	}
	v.State = lint.SortState(v.State)
	v.Message = l.opening(e, x) + l.sees(x, volts)
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
		v.Message += fmt.Sprintf(" Whether that can be turns on %s, which is not written.", lint.Lacking(v.Missing[0], true))
	}
	return v, true
}

// opening tells what happens.
func (l *lone) opening(e *event, x *bare) string {
	with := lint.Positions(l.p.Plan, x.state)
	if e.gone >= 0 {
		if with != "" {
			with = ", with " + with
		}
		return fmt.Sprintf("If the BMS of %s opens while %s charges it%s, no battery is left to hold the volts.", lint.Quote(l.p.Net.Sources[e.gone].Source), lint.Quote(l.block), with)
	}
	if with != "" {
		return fmt.Sprintf("With %s, %s runs and no battery is across it.", with, lint.Quote(l.block))
	}
	return lint.Quote(l.block) + " runs and no battery is across it."
}

// listed is how many parts are named in a sentence.
const listed = 3

// sees tells what is on the wires then.
func (l *lone) sees(x *bare, volts []derive.Number) string {
	var names []string
	for _, b := range x.on {
		names = append(names, lint.Quote(b))
	}
	if n := len(names); n > listed+1 {
		names = append(names[:listed], fmt.Sprintf("%d more", n-listed))
	}
	what := "what it puts out"
	if l.array() && len(volts) > 0 {
		what = "up to " + volts[0].Text()
	}
	if len(names) == 0 {
		return " It takes the spike itself."
	}
	verb := "see"
	if len(x.on) == 1 {
		verb = "sees"
	}
	return fmt.Sprintf(" %s %s %s.", lint.And(names...), verb, what)
}

// volts is what an array can put on the wires and what each part there takes; kept where they all take it.
func (l *lone) volts(x *bare) (out []derive.Number, kept bool) {
	if !l.array() {
		return l.rated(), false
	}
	cold, lacks := l.p.Circuit.ColdVoc(l.p.Net.Sources[l.source].Source)
	if len(lacks) > 0 {
		return nil, false
	}
	out, kept = []derive.Number{cold}, true
	for _, b := range x.on {
		n := endures(b)
		if n.Kind != 0 {
			out = append(out, n)
		}
		kept = kept && n.Kind != 0 && n.Value >= cold.Value
	}
	return out, kept
}

func (l *lone) array() bool { return l.source >= 0 && l.p.Net.Sources[l.source].Kind.Value == "solar" }

// rated is the current that the battery took at most.
func (l *lone) rated() []derive.Number {
	if l.source < 0 {
		g, lacks := l.p.Circuit.OutputGives(l.p.Net.Converters[l.converter].Converter)
		return lint.Known(lacks, g.N)
	}
	g, lacks := l.p.Circuit.SourceGives(l.p.Net.Sources[l.source].Source)
	return lint.Known(lacks, g.N)
}

// addrs are the parts on the wires.
func (x *bare) addrs() []string {
	var out []string
	for _, b := range x.on {
		out = append(out, b.Header().Addr)
	}
	return out
}

// fewest is how many states are weighed for the one with the fewest positions.
const fewest = 16

// look asks every state of the charger's wires; false where the search met its bound.
func (l *lone) look() bool {
	views, complete := l.p.Space.Views(l.home, l.p.Space.Closed(explore.All()))
	held := l.wild == yes && l.converter >= 0 && l.p.Net.Converters[l.converter].NeedsBattery.True()
	for _, v := range views {
		held = held || l.there(v) && v.Onward(l.at).Held(-1)
	}
	if !held { // no battery is ever across it
		return complete
	}
	for _, v := range views {
		if !l.there(v) {
			continue
		}
		on := v.Onward(l.at)
		for _, e := range l.events {
			if e.seen < fewest && l.loses(on, v, e.gone) {
				l.note(e, v, on)
			}
		}
	}
	return complete && !l.unknown
}
