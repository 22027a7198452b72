package converter

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
)

var inrush = &lint.Rule{
	ID:      "converter/inrush",
	Claim:   "Closing this switch dumps the battery into empty capacitors.",
	Words:   []lint.Severity{lint.Caution},
	Subject: "converter",
	When: "In some position a switch, relay or plug, or a battery's own cut-off, puts a battery onto a converter that it was not joined to before, and the peak that runs is above " +
		"4 times the `rating` of a contact, above the `rating` of a plug, above 10 times the rating of a device on the way, or above the current at which the cut-off opens.",
	Why: "The capacitors are a short for some milliseconds: a spark, pitted contacts, and one day contacts that are welded and do not open when they should.",
	Numbers: "The peak is `inrush`, and no more than volts over resistance: full batteries at their low resistance, each through the way of least " +
		"resistance at 20 C, joints left out, all of them together. At 12 V a converter up to 1 kW without `inrush` passes, as an assumption.",
	Not: "Sources other than batteries, which limit. A position in which the converter is joined already, such as one that charges it through a resistor first: what " +
		"follows it makes nothing. A cut-off whose current is not written. Breakers as switches. Alternating current.",
	Offer: "A position, or a contactor, that charges the capacitors through a resistor first; a converter with a soft start, and its `inrush` written down.",
	Meter: "Volts across the open contact after charging through the resistor: below a tenth of the battery's.",
	Cites: []lint.Citation{
		{Ref: "IEC 60947-4-1, making conditions of DC-3 and DC-5", Standing: lint.FromMemory, Note: "4 times the rated current is made; no category is made for capacitors"},
		{Ref: "builders' accounts of pre-charge", Standing: lint.Read, Note: "12 V over 5 mohm are 2 400 A"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "10 times a device's rating; harmless up to 1 kW at 12 V"},
	},
	Remedy: true,
	Since:  "0.1",
	Run:    inrushes,
}

const (
	makesTimes   = 4    // a contact makes this many times its rating
	deviceTimes  = 10   // a device bears this many times its rating for milliseconds
	smallWatts   = 1000 // up to which a converter at less than 24 V is harmless without a figure
	smallVoltage = 24
)

func inrushes(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i := range p.Net.Converters {
		x := &p.Net.Converters[i]
		g := &rush{p: p, x: x, port: x.In, complete: true}
		if x.Kind.Value == "mppt" { // a controller's capacitors stand where the battery is
			g.port = x.Out
		}
		if z := p.Net.ZoneOf(g.port.Hot); z != nil && !z.AC && x.Kind.Value != "diode" {
			g.look(p.Net.Stack(z), i)
		}
		out = append(out, g.verdict())
	}
	return out
}

func (g *rush) verdict() lint.Verdict {
	v := lint.Verdict{Subject: g.x.Converter, Outcome: lint.Holds, Word: lint.Caution}
	w := &g.worst
	v.Numbers = lint.Known(nil, w.limit, w.peak)
	over := w.peak.Kind != 0 && w.times > 1+1e-9
	small, power := g.small()
	switch {
	case !g.found:
		if !g.complete {
			return lint.Unfinished(g.x.Converter, lint.Caution)
		}
	case over && g.x.Inrush.Set:
		v.Outcome, v.State = lint.Violated, w.view.Witness(w.edges, w.from...)
		v.Path, v.Related = w.view.Places(g.p.Net.Sources[w.from[0]].Hot, w.live), []string{w.part.Header().Addr}
		v.Message = fmt.Sprintf("%s takes a peak of %s when it is joined to %s, and %s bears %s.", lint.Quote(g.x.Converter), w.peak.Text(),
			lint.Quote(g.p.Net.Sources[w.from[0]].Source), lint.Quote(w.part), w.limit.Text())
	case !g.x.Inrush.Set && small:
		v.Numbers = power
	case !g.x.Inrush.Set && (over || w.peak.Kind == 0):
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: g.x.Addr, Attribute: "inrush"}}
		v.Message = fmt.Sprintf("What %s takes in the moment it is joined to a battery is not written.", lint.Quote(g.x.Converter))
		if over {
			v.Message = fmt.Sprintf("Nothing but wire limits what %s takes in the moment it is joined to a battery, up to %s; %s bears %s.", lint.Quote(g.x.Converter), w.peak.Text(), lint.Quote(w.part), w.limit.Text())
		}
	case len(g.lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, g.lacks
		v.Message = fmt.Sprintf("Whether contacts bear what %s takes in the moment it is joined to a battery is not known: %s is missing.", lint.Quote(g.x.Converter), lint.Lacking(g.lacks[0], true))
	case !g.complete:
		return lint.Unfinished(g.x.Converter, lint.Caution)
	}
	return v
}

// small says whether a converter is harmless without a figure, and by which numbers.
func (g *rush) small() (bool, []derive.Number) {
	vn, ok := g.p.Circuit.Nominal(g.port.Hot)
	if !ok || vn.Value >= smallVoltage {
		return false, nil
	}
	watts := derive.Number{}
	if g.x.Rated.Set {
		watts = derive.Read("rated power of "+lint.Quote(g.x.Converter), "P", g.x.Rated.Value, "W", g.x.Addr, "rated", g.x.Rated.Range)
	} else if o := g.x.Output; o != nil && o.CurrentMax.Set && o.Voltage.Set {
		watts = derive.Compute("output power of "+lint.Quote(g.x.Converter), "P", o.CurrentMax.Value*o.Voltage.Value, "W", "P = Iout x Vout")
	}
	usual := derive.Assume("power up to which empty capacitors do no harm at 12 V", "Ps", smallWatts, "W", g.x.Addr, "inrush", "common practice")
	return watts.Kind != 0 && watts.Value <= smallWatts, []derive.Number{vn, usual, watts}
}
