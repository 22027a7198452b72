package charging

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
)

var tooMuchCurrent = &lint.Rule{
	ID:      "charging/too-much-current",
	Claim:   "Chargers together push more current than the battery accepts.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "battery",
	When:    "In some state all that can charge a battery at once (sun, shore, engine) gives more than its `charge_limit`; where that is left out, more than such a battery usually takes.",
	Why: "The battery heats and gasses, and only its own cut-off stops that, if it has one: caution. Warning for a lithium pack, or one of unwritten chemistry, whose cut-off the plan does not show " +
		"(no `bms` block).",
	Numbers: "The sum of the chargers' `current_max`, alternators and supplies at `rated`, arrays at 1.25 times their short-circuit current; nothing is taken off for loads. A tracker gives no more than 1.25 " +
		"times its arrays' power into an empty battery. Batteries side by side share by resistance, their own and that of the wire to where they meet. What lies behind a device counts for no more than its " +
		"rating. Usual figures, as an assumption: flooded and gel 0.2 A for each Ah, AGM 0.3 A, lithium 0.5 A; they can show that it is too much, never that it is not.",
	Not: "Chargers that back off as volts rise: in bulk they give all. An alternator on a lead-acid starting battery, which is made for that. What comes backwards through a converter. " +
		"A charger that this battery itself feeds. What a battery gets when another one beside it cuts itself off.",
	Offer: "The limit of one charger set lower; an interlock or priority between chargers; a larger battery.",
	Meter: "Clamp meter at the battery, half empty, with every charger on and the loads off.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-10, E-13", Standing: lint.FromMemory, For: []string{"us-boat"}, Note: "charging within the battery maker's limits"},
		{Ref: "battery makers' sheets", Standing: lint.FromMemory, Note: "usual charge currents by chemistry"},
		{Ref: "common practice", Standing: lint.CommonPractice},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerOutput},
	Since:  "0.1",
	Run:    overcharges,
}

func overcharges(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "battery" {
			out = append(out, newBulk(p, i).judge())
		}
	}
	return out
}

// usualCharge is what a battery takes in A for each Ah, from memory of makers' sheets.
var usualCharge = map[string]float64{"flooded": 0.2, "gel": 0.2, "agm": 0.3, "lifepo4": 0.5, "li-ion": 0.5}

// takes is the most that a battery accepts; stated says that the plan writes it.
func takes(p *lint.Pass, s *schema.Source) (n derive.Number, stated bool) {
	strings := float64(s.Parallel.Or(1))
	if s.ChargeLimit.Set {
		n = derive.Read("charge limit of "+lint.Quote(s), "Ichg", s.ChargeLimit.Value, "A", s.Addr, "charge_limit", s.ChargeLimit.Range)
		if strings > 1 {
			n = derive.Compute("charge limit of the bank "+lint.Quote(s), "Ichg", n.Value*strings, "A", "strings x figure of one", n)
		}
		return n, true
	}
	ah, lacks := p.Circuit.Capacity(s)
	k, ok := usualCharge[s.Chemistry.Value]
	if len(lacks) > 0 || !ok {
		return derive.Number{}, false
	}
	share := derive.Assume("usual charge current for each Ah", "a", k, "A/Ah", s.Addr, "charge_limit", "battery makers' sheets (from memory)")
	return derive.Compute("usual charge current of "+lint.Quote(s), "Ichg", k*ah.Value*strings, "A", "Ichg = a x C x strings", share, ah), false
}

// mostShared is how many times the share of one battery is worked out.
const mostShared = 512

// bulk looks for the most that can run into one battery.
type bulk struct {
	p        *lint.Pass
	battery  int
	source   *schema.Source
	limit    derive.Number // Kind 0 where not known
	stated   bool
	most     *intake
	unsure   *intake // one in which something without a figure decides
	engine   bool    // it may be a starting battery that an alternator keeps
	shared   int
	complete bool
}

func newBulk(p *lint.Pass, battery int) *bulk {
	s := p.Net.Sources[battery].Source
	b := &bulk{p: p, battery: battery, source: s}
	b.limit, b.stated = takes(p, s)
	lead := tables.LeadAcid(s.Chemistry.Value)
	b.engine = lead && !s.Role.Set
	zone := p.Net.Series(battery)
	all := chargersOf(p.Net, zone)
	views, complete := p.Space.Views(zone, p.Space.About(p.Space.Closed(explore.All())))
	b.complete = complete
	for _, v := range views {
		if v.HasSource(battery) {
			b.look(intakeOf(p, v, battery, all, func(c *charger) bool { return c.alternator(p) && lead && s.Role.Value == "starting" }))
		}
	}
	return b
}

func (c *charger) alternator(p *lint.Pass) bool {
	return c.source >= 0 && p.Net.Sources[c.source].Kind.Value == "alternator"
}

// look notes a state in which more runs in than in those before.
func (b *bulk) look(x *intake) {
	if len(x.on) == 0 {
		return
	}
	if over := b.limit.Kind != 0 && x.sum > b.limit.Value; over && (b.most == nil || x.sum > b.most.amps) {
		x.amps = min(x.sum, b.p.Circuit.Passed(x.view, b.battery, x.parts(false)))
		if x.amps > b.limit.Value && (b.most == nil || x.amps > b.most.amps) {
			if !b.share(x) {
				return
			}
		}
	}
	if b.most == nil || x.amps > b.most.amps {
		b.most = x
	}
	if x.doubt && b.unsure == nil && (b.limit.Kind == 0 || b.p.Circuit.Passed(x.view, b.battery, x.parts(true)) > b.limit.Value) {
		b.unsure = x
	}
}

// share takes off what batteries beside it take; false where the bound is met.
func (b *bulk) share(x *intake) bool {
	if b.shared++; b.shared > mostShared {
		b.complete = false
		return false
	}
	x.own = b.p.Circuit.ShareOf(x.view, b.battery, x.parts(false))
	x.amps = min(x.amps, x.own.Amps)
	return true
}

func (b *bulk) word() lint.Severity {
	if b.source.BMS == nil && !tables.LeadAcid(b.source.Chemistry.Value) {
		return lint.Warning
	}
	return lint.Caution
}

func (b *bulk) judge() lint.Verdict {
	v := lint.Verdict{Subject: b.source, Outcome: lint.Holds, Word: b.word()}
	switch {
	case b.most == nil && b.complete:
		return v
	case b.most == nil:
		return lint.Unfinished(b.source, v.Word)
	}
	current := b.number()
	v.Numbers = lint.Known(nil, b.limit, current)
	switch {
	case b.limit.Kind != 0 && b.most.amps > b.limit.Value*(1+1e-9):
		return b.tooMuch(v, current)
	case b.unsure != nil:
		v.Outcome = lint.NotProven
		for _, f := range b.unsure.on {
			v.Missing = append(v.Missing, f.lacks...)
		}
		v.Numbers = lint.Known(v.Missing, b.limit, current)
		v.Message = fmt.Sprintf("How much is pushed into %s is not known: %s is missing.", lint.Quote(b.source), lint.Lacking(v.Missing[0], true))
	case !b.stated && b.most.amps > 0:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.source.Addr, Attribute: "charge_limit"}}
		v.Message = fmt.Sprintf("Up to %s are pushed into %s, and what it takes is not written.", current.Text(), lint.Quote(b.source))
	case !b.complete:
		return lint.Unfinished(b.source, v.Word)
	}
	return v
}

// number is the most that runs in, with what it is made of.
func (b *bulk) number() derive.Number {
	var from []derive.Number
	for _, f := range b.most.largest() {
		if f.gives.Kind != 0 {
			from = append(from, f.gives)
		}
	}
	formula := "sum of what can charge at once"
	switch {
	case len(b.most.own.Numbers) > 0:
		formula += ", shared by resistance with the batteries beside it"
		from = append(from, b.most.own.Numbers...)
	case b.most.amps < b.most.sum:
		formula += ", no more than the devices on the way let pass"
		for _, f := range b.most.on {
			from = append(from, b.p.Circuit.Devices(b.most.row.Way(f.port), b.most.sum)...)
		}
	}
	return derive.Compute("largest current pushed into "+lint.Quote(b.source), "Ib", b.most.amps, "A", formula, from...)
}

// tooMuch says that the limit is passed, unless what decides it is not written.
func (b *bulk) tooMuch(v lint.Verdict, current derive.Number) lint.Verdict {
	v.Outcome, v.State = lint.Violated, b.most.state(b.battery, b.limit.Value)
	var names []string
	others := 0.0
	for _, f := range b.most.largest() {
		names = append(names, lint.Quote(f.block))
		v.Related = append(v.Related, f.block.Header().Addr)
		if !f.alternator(b.p) {
			others += f.gives.Value
		}
	}
	verb := " push"
	if len(names) == 1 {
		verb = " pushes"
	}
	v.Message = fmt.Sprintf("%s%s up to %s into %s, and it takes %s.", lint.And(names...), verb, current.Text(), lint.Quote(b.source), b.limit.Text())
	if !b.stated {
		v.Message = fmt.Sprintf("%s%s up to %s into %s; it does not say what it takes, and usual for its kind is %s.", lint.And(names...), verb, current.Text(), lint.Quote(b.source), b.limit.Text())
	}
	switch {
	case len(b.most.own.Lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, b.most.own.Lacks
		v.Message += fmt.Sprintf(" How much of that a battery beside it takes turns on %s, which is not written.", lint.Lacking(v.Missing[0], true))
	case b.engine && others <= b.limit.Value:
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: b.source.Addr, Attribute: "role"}}
		v.Message += " A starting battery is made for that; what this one is for is not written."
	}
	return v
}
