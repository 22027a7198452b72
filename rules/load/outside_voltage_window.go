package load

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
)

var outsideVoltageWindow = &lint.Rule{
	ID:      "load/outside-voltage-window",
	Claim:   "In some state a load or converter sees less or more volts than it accepts.",
	Words:   []lint.Severity{lint.Warning, lint.Caution, lint.Notice},
	Subject: "load; converter",
	When: "In a resting state in which it may run its volts are below `voltage_min`, with everything on or while one load starts, and, unless safety or the way home hangs on it, more than a " +
		"tenth is lost on the way or batteries are full; or in some state the highest volts of its circuit are above `voltage_max`. Each side is asked on its own.",
	Why: "Too few volts stop things: notice, and warning where what stops is there for somebody's safety or for the way home. Too many burn them: caution, and warning where " +
		"they go into heat or take out something that safety hangs on.",
	Numbers: "Low: the operating point of the whole circuit by Kirchhoff's laws, both runs, joints at their usual resistance; batteries empty at high resistance, running alternators down to " +
		"12.4 V, nothing charging, no sun. A start adds its `surge`. Engines are cranked on batteries that are rested full. High: what chargers hold, equalising too, batteries full, arrays cold, " +
		"nothing drawn. Gear at 12 V without a written window: 10.5 V and 15.0 V as an assumption, on alternating current a tenth either way; either may show that the window is " +
		"left, on full batteries too, never that it is kept. What safety hangs on needs its own figures.",
	Not: "What stops because the battery itself is empty, as long as nothing critical does. Dips of less than a second on lamps; what cranking does to gear without a written least. A state without a battery in which more is asked for than chargers and supplies give. An array with " +
		"no battery across it, which solar/cold-voltage asks about. What somebody plugs into a socket, beyond the assumption. A diode.",
	Offer: "Thicker wire; a regulator; another charge profile; another feed for what starts hard.",
	Meter: "Least and most volts at the part, caught by the meter while the hardest load starts and while everything charges.",
	Cites: []lint.Citation{
		{Ref: "makers' instructions", Standing: lint.CommonPractice, Note: "the window is the maker's"},
		{Ref: "owners' accounts of inverters that trip on thin cable", Standing: lint.Read, Note: "low volts at the start of a load"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.ThickerWire, remedy.LowerSetpoint},
	Since:  "0.1",
	Run:    windows,
}

func windows(p *lint.Pass) []lint.Verdict {
	s := newSurvey(p)
	for _, z := range p.Net.Zones {
		if low := p.Circuit.LowZone(z); !s.done[low] {
			s.done[low] = true
			s.zone(low)
		}
	}
	var out []lint.Verdict
	for _, g := range s.gear {
		out = append(out, g.lowVerdict(), g.highVerdict())
	}
	return out
}

func (g *gear) lowVerdict() lint.Verdict {
	v := lint.Verdict{Subject: g.block, Outcome: lint.Holds, Word: lint.Notice, Cause: "low"}
	if g.critical && !g.ownBattery {
		v.Word = lint.Warning
	}
	w, least, written := g.steady, g.least(), g.min.Set
	if g.starting.below(least) && !w.below(least) {
		w = g.starting
	}
	if written && g.cranking.below(least) && !w.below(least) {
		w, v.Word = g.cranking, lint.Notice
	}
	if w.low != nil {
		v.Numbers = lint.Known(nil, least, w.number(g))
	}
	switch {
	case w.below(least) && (g.critical && written || written && w.lossy(g) || w.fullToo(g, least)):
		v.Outcome, v.State = lint.Violated, w.state(g, least)
		if way, ok := w.low.Way(g.port); ok {
			v.Path = w.low.View.Places(way.From.Hot, way.Live)
		}
		v.Message = fmt.Sprintf("%s gets no more than %s%s, and %s %s.", lint.Quote(g.block), derive.Text(w.volts, "V"), w.when(), g.works(written), least.Text())
	case w.low == nil && len(g.lacks) == 0 && g.complete: // nothing feeds it
	case w.low != nil && !written && !g.socket:
		v.Outcome, v.Missing, v.Group = lint.NotProven, []lint.Missing{{Subject: g.block.Header().Addr, Attribute: g.attribute("voltage_min")}}, "no least volts"
		v.Numbers = lint.Known(nil, w.number(g))
		v.Message = fmt.Sprintf("%s gets as little as %s, and the least it works at is not written.", lint.Quote(g.block), derive.Text(w.volts, "V"))
	case len(g.lacks) > 0:
		v.Outcome, v.Missing, v.Numbers = lint.NotProven, g.lacks, nil
		v.Message = fmt.Sprintf("How few volts %s gets is not known: %s is missing.", lint.Quote(g.block), lint.Lacking(g.lacks[0], true))
	case !g.complete:
		u := lint.Unfinished(g.block, v.Word)
		u.Cause = v.Cause
		return u
	}
	return v
}

// works says whose least the least is.
func (g *gear) works(written bool) string {
	if written {
		return "works from"
	}
	return "gear of its kind works from"
}

func (g *gear) highVerdict() lint.Verdict {
	v := lint.Verdict{Subject: g.block, Outcome: lint.Holds, Word: lint.Caution, Cause: "high"}
	if g.critical || g.heats {
		v.Word = lint.Warning
	}
	n, at, lacks := g.highest()
	most, written := g.most(), g.max.Set
	v.Numbers = lint.Known(nil, most, n)
	switch {
	case n.Kind != 0 && most.Kind != 0 && n.Value > most.Value*(1+1e-9) && (written || !g.critical):
		v.Outcome, v.State = lint.Violated, g.highState(at, n.Value)
		takes := "takes"
		if !written {
			takes = "gear of its kind takes"
		}
		v.Message = fmt.Sprintf("%s gets up to %s, and %s %s.", lint.Quote(g.block), n.Text(), takes, most.Text())
	case n.Kind == 0 && len(lacks) == 0: // nothing feeds it
	case !written && !g.socket:
		v.Outcome, v.Missing, v.Group = lint.NotProven, []lint.Missing{{Subject: g.block.Header().Addr, Attribute: g.attribute("voltage_max")}}, "no most volts"
		v.Numbers = lint.Known(nil, n)
		v.Message = fmt.Sprintf("%s gets up to %s, and the most it takes is not written.", lint.Quote(g.block), n.Text())
		if n.Kind == 0 {
			v.Missing = append(v.Missing, lacks...)
			v.Message = fmt.Sprintf("Neither how many volts %s gets is known nor how many it takes.", lint.Quote(g.block))
		}
	case len(lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("How many volts %s gets is not known: %s is missing.", lint.Quote(g.block), lint.Lacking(lacks[0], true))
	}
	return v
}
