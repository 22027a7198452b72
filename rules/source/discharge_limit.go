package source

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

var dischargeLimit = &lint.Rule{
	ID:      "source/discharge-limit",
	Claim:   "The loads ask more of a battery than it, or the cut-off inside it, will give.",
	Words:   []lint.Severity{lint.Notice, lint.Caution, lint.Warning},
	Subject: "battery",
	When: "In some state what can run together draws more from a battery than its `discharge_limit`, or than the current at which its `bms` opens; or what one load adds on starting takes it " +
		"above its `surge_limit`; or a lead-acid battery without a figure gives more than its capacity in one hour.",
	Why: "The battery's own cut-off opens and everything on it goes dark at once. Parked that is a nuisance: notice. Caution where a life-safety load without a battery of its own hangs on it, " +
		"warning where running lights or another load for navigation does.",
	Numbers: "The sum of all loads and converter inputs on the battery's pair of wires, each at the voltage at which it draws most, with no help from a charger or an engine. Batteries " +
		"side by side share by resistance, their own and that of the wire to where they meet, all at their low or all at their high figure. What lies behind a device counts for no " +
		"more than its rating. A load with `runs_in` counts in its modes. Figures are for one unit and count for each string in parallel. A lead-acid battery without a figure is taken to give its capacity in " +
		"one hour (1 C), an assumption.",
	Not: "Loads that no allowed state lets run together: an interlock says so. A starter behind a conductor with `cranking = true` counts as a starting current, and lead-acid is not asked about those. " +
		"The filling of a converter's capacitors. How long a surge lasts. What is left to a battery when another one beside it cuts itself off.",
	Offer: "A second battery; a smaller inverter; 24 or 48 V; an interlock between two large loads; loads moved to another source.",
	Meter: "Clamp meter at the battery with everything on, and the battery's volts at that moment.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-13", Standing: lint.Read, For: []string{"us-boat"}, Note: "the maker states the limits, and the system warns before the cut-off opens; read in a summary, which is disputed"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a battery is used within its maker's discharge current"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.OneMore},
	Since:  "0.1",
	Run:    dischargeLimits,
}

func dischargeLimits(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "battery" {
			limit, missing := steadyLimit(p, p.Net.Sources[i].Source)
			out = append(out, seek(p, i, limit, surgeLimit(p.Net.Sources[i].Source, limit)).judge(missing))
		}
	}
	return out
}

func steadyLimit(p *lint.Pass, s *schema.Source) (derive.Number, []lint.Missing) {
	var best derive.Number
	if s.DischargeLimit.Set {
		best = perString(s, "discharge limit", "Idis", "discharge_limit", s.DischargeLimit)
	}
	if n := opensAt(s); n.Kind != 0 && (best.Kind == 0 || n.Value < best.Value) {
		best = n
	}
	if best.Kind != 0 {
		return best, nil
	}
	lacks := []lint.Missing{{Subject: s.Addr, Attribute: "discharge_limit"}}
	ah, m := p.Circuit.Capacity(s)
	if !tables.LeadAcid(s.Chemistry.Value) || m != nil {
		return best, lacks
	}
	rate := derive.Assume("current that lead-acid gives, for each Ah", "c", 1, "A/Ah", s.Addr, "discharge_limit", "common practice, 1 C")
	return derive.Compute("current that "+lint.Quote(s)+" gives", "Idis", rate.Value*ah.Value*float64(s.Parallel.Or(1)), "A", "Idis = c x C x strings", rate, ah), nil
}

func opensAt(s *schema.Source) derive.Number {
	if s.BMS == nil || !s.BMS.OpensAbove.Set || s.BMS.OpensAbove.Dim != quantity.Current {
		return derive.Number{}
	}
	return perString(s, "current at which the cut-off opens", "Iopen", "bms opens_above", s.BMS.OpensAbove)
}

// surgeLimit is what a battery gives for seconds: lead-acid is not asked; without a figure, what it
// gives for long is all that is known.
func surgeLimit(s *schema.Source, steady derive.Number) derive.Number {
	best := opensAt(s)
	if s.SurgeLimit.Set {
		if n := perString(s, "surge limit", "Isurge", "surge_limit", s.SurgeLimit); best.Kind == 0 || n.Value < best.Value {
			best = n
		}
	}
	if best.Kind == 0 && !tables.LeadAcid(s.Chemistry.Value) {
		return steady
	}
	return best
}

func (d *draw) judge(missing []lint.Missing) lint.Verdict {
	v := lint.Verdict{Subject: d.source, Outcome: lint.Holds, Word: d.word}
	if d.steady == nil && d.start == nil {
		if !d.complete {
			return lint.Unfinished(d.source, d.word)
		}
		return v
	}
	current := d.number(d.steady, false)
	v.Numbers = lint.Known(nil, d.limit, current)
	over := func(x *asked, limit derive.Number) bool {
		return x != nil && limit.Kind != 0 && x.amps > limit.Value*(1+1e-9)
	}
	switch {
	case over(d.steady, d.limit):
		return d.tooMuch(v, d.steady, d.limit, current, "")
	case over(d.start, d.surge):
		peak := d.number(d.start, true)
		v.Numbers = lint.Known(nil, d.surge, peak)
		v = d.tooMuch(v, d.start, d.surge, peak, " while "+lint.Quote(d.start.extra.block)+" starts")
		if d.surge.Symbol == "Idis" {
			v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: d.source.Addr, Attribute: "surge_limit"}}
			v.Message = fmt.Sprintf("%s is asked for up to %s while %s starts, more than the %s it gives for long; what it gives for seconds is not written.",
				lint.Quote(d.source), peak.Text(), lint.Quote(d.start.extra.block), d.surge.Text())
		}
	case len(missing) > 0 && (d.steady.amps > 0 || d.unsure != nil):
		v.Outcome, v.Missing = lint.NotProven, missing
		v.Message = fmt.Sprintf("%s is asked for up to %s, and what it gives is not written.", lint.Quote(d.source), current.Text())
		if d.steady.amps == 0 {
			v.Message = fmt.Sprintf("Neither what %s gives is written nor all that it is asked for.", lint.Quote(d.source))
			v.Numbers = nil
		}
	case d.unsure != nil:
		v.Outcome, v.Missing = lint.NotProven, d.unsure.lacks()
		v.Numbers = lint.Known(v.Missing, d.limit, current)
		v.Message = fmt.Sprintf("What %s is asked for is not known: %s is missing.", lint.Quote(d.source), lint.Lacking(v.Missing[0], true))
	case !d.complete:
		return lint.Unfinished(d.source, d.word)
	}
	return v
}

// tooMuch says that a limit is passed; when tells on what occasion.
func (d *draw) tooMuch(v lint.Verdict, x *asked, limit, current derive.Number, when string) lint.Verdict {
	v.Outcome, v.Word, v.State = lint.Violated, darkens(x.ask), x.state(d.battery, limit.Value)
	on := x.largest()
	var words []string
	for k, y := range on {
		v.Related = append(v.Related, y.block.Header().Addr)
		if n := y.takes(x.ask); k < 3 && n > 0 {
			words = append(words, lint.Quote(y.block)+" "+derive.Text(n, "A"))
		}
	}
	if n := len(on) - len(words); n > 0 {
		words = append(words, fmt.Sprintf("%d more", n))
	}
	asked := lint.And(words...)
	switch {
	case len(x.own.Numbers) > 0:
		asked += ", of which batteries beside it give a part"
	case x.amps < x.sum*(1-1e-9):
		asked += ", as far as devices let that pass"
	}
	v.Message = fmt.Sprintf("%s is asked for up to %s%s (%s), and gives %s.", lint.Quote(d.source), current.Text(), when, asked, limit.Text())
	if limit.Symbol == "Iopen" {
		v.Message = fmt.Sprintf("%s is asked for up to %s%s (%s), and its own cut-off opens at %s.", lint.Quote(d.source), current.Text(), when, asked, limit.Text())
	}
	if len(x.own.Lacks) > 0 {
		v.Outcome, v.Missing = lint.NotProven, x.own.Lacks
		v.Message += fmt.Sprintf(" How much of that a battery beside it takes turns on %s, which is not written.", lint.Lacking(x.own.Lacks[0], true))
	}
	return v
}
