package converter

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var constantPowerCollapse = &lint.Rule{
	ID:      "converter/constant-power-collapse",
	Claim:   "On this wire the converter's power point is unstable or absent; it hunts, trips, or overheats the run.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "converter; load of constant power",
	When: "In a resting state, batteries empty and alternators regulated down, there is no operating point at which what draws a constant power gets it; or there is " +
		"one and its volts are below `voltage_min` of the converter's input with more than a tenth lost on the way, or below 0.7 of those with nothing drawn; or a converter without an input limit draws more " +
		"than 0.8 of a device or more than the ampacity of a wire on its way.",
	Why: "The less it gets the more it draws: past half the volts there is nothing more to draw, and it falls out, recovers and pulls again. Mostly a charger that " +
		"will not run, hence caution; warning where the current passes what a wire on the way sheds and no device there holds it.",
	Numbers: "The operating point of the whole circuit by Kirchhoff's laws, returns, joints, plugs and source resistance included, followed from no power at all. " +
		"Power is the most that the output can give over `efficiency`, else over 0.85. Empty volts and high resistance by chemistry where not written; a running " +
		"alternator is taken down to 12.4 V, but not under the volts that start the converter. Chargers are off. The last current before the point is lost stands for the one that there is not.",
	Not: "A bus that limited sources alone feed, asked for more than they give: it browns out, and no wire is to blame. A tracker on an array, which takes what there is. " +
		"An input with `current_max` folds back there, and counts so. A converter that falls out because the battery is empty. Alternating current. Loads of any other behavior.",
	Offer: "A limit on the input current; wire two sizes up; the converter at the source's end and the long run on its output.",
	Meter: "Volts at the input while the load is raised in steps; stop at 90 % of those at the source.",
	Cites: []lint.Citation{
		{Ref: "maximum power transfer", Standing: lint.FromMemory, Note: "circuit theory: a source behind a resistance gives most at half its volts"},
		{Ref: "accounts of regulators that let the volts down under way", Standing: lint.Read, Note: "a running engine is no promise of 14 V"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "devices carry 0.8 of their rating for long; a third of the volts is margin enough"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.ThickerWire, remedy.SmallerInput, remedy.ShorterRun},
	Folds:  []string{"conductor/voltage-drop", "load/outside-voltage-window low", "overcurrent/undersize-device"},
	Since:  "0.1",
	Run:    collapses,
}

func collapses(p *lint.Pass) []lint.Verdict {
	s := newSurvey(p)
	for _, z := range p.Net.Zones {
		if low := p.Circuit.LowZone(z); !z.AC && !s.done[low] {
			s.done[low] = true
			s.zone(low)
		}
	}
	var out []lint.Verdict
	for _, q := range s.pullers {
		if q.asks() {
			out = append(out, q.verdict())
		}
	}
	return out
}

// asks says whether the rule is about it: every converter, and a load that draws a constant power.
func (q *puller) asks() bool {
	l, ok := q.block.(*schema.Load)
	return !ok || l.Behavior.Value == "constant-power" || !l.Behavior.Set && l.Kind.Value == "electronics"
}

func (q *puller) verdict() lint.Verdict {
	v := lint.Verdict{Subject: q.block, Outcome: lint.Holds, Word: lint.Caution}
	if q.worst.low != nil {
		v.Numbers = q.numbers()
	}
	switch {
	case q.worst.trouble != nothing:
		v.Outcome, v.State, v.Message = lint.Violated, q.state(), q.message()
		v.Path = q.worst.low.View.Places(q.worst.way.From.Hot, q.worst.way.Live)
		v.Related, v.Group = q.worst.related(q.p), q.block.Header().Addr
		if b := q.worst.leader(q.p); b != nil {
			v.Group = b.Header().Addr
		}
		if q.worst.hot {
			v.Word = lint.Warning
		}
	case len(q.lacks) > 0:
		v.Outcome, v.Word, v.Missing = lint.NotProven, lint.Warning, q.lacks
		v.Numbers = nil
		v.Message = fmt.Sprintf("Whether %s has a current at which it runs is not known: %s is missing.", lint.Quote(q.block), lint.Lacking(q.lacks[0], true))
	case !q.complete:
		return lint.Unfinished(q.block, lint.Warning)
	}
	return v
}

func (q *puller) message() string {
	w := &q.worst
	name, volts, amps := lint.Quote(q.block), derive.Text(w.pull.Volts, "V"), derive.Text(w.pull.Amps, "A")
	from := "its supply"
	if b := q.p.Plan.Block(q.p.Net.Nodes[w.way.From.Hot].Addr); b != nil {
		from = lint.Quote(b)
	}
	if b := w.leader(q.p); b != nil && w.pull.Watts < w.low.Beside(w.pull.Port).Watts/10 {
		return fmt.Sprintf("%s hangs on the wire on which there is no current at which %s runs, and goes down with it.", name, lint.Quote(b))
	}
	switch w.trouble {
	case folds:
		return fmt.Sprintf("%s asks for %s, and what lies between %s and it lets no more than %s through: there is no current at which it runs. It falls out, recovers and pulls again.",
			name, derive.Text(w.pull.Watts, "W"), from, derive.Text(w.pull.Share*w.pull.Watts, "W"))
	case belowMin:
		return fmt.Sprintf("%s pulls its own input down to %s, drawing %s, and works from %s: it falls out, recovers and pulls again.", name, volts, amps, derive.Text(w.limit.Value, "V"))
	case steep:
		return fmt.Sprintf("%s pulls %s down to %s, drawing %s; at half there is nothing more to be had.", name, derive.Text(w.low.Open(w.pull.Port), "V"), volts, amps)
	}
	return fmt.Sprintf("%s draws %s at the %s that are left for it, and %s bears %s for long.", name, amps, volts, lint.Quote(w.weak), w.limit.Text())
}

// numbers are what a stand rests on, most important last.
func (q *puller) numbers() []derive.Number {
	w := &q.worst
	name := lint.Quote(q.block)
	open := w.low.VoltsOf("volts at "+name+" with nothing drawn", "V0", w.low.Open(w.pull.Port), w.pull.Port)
	if w.trouble == folds {
		most := derive.Compute("most power that "+name+" can be given", "Pmax", w.pull.Share*w.pull.Watts, "W", "where the operating point is lost, all powers scaled together", open)
		return lint.Known(nil, open, w.limit, most)
	}
	volts := w.low.VoltsOf("volts at "+name+" while it draws", "Vin", w.pull.Volts, w.pull.Port)
	amps := derive.Compute("current of "+name, "Iin", w.pull.Amps, "A", "Iin = P / Vin, no more than the input's limit", volts)
	return lint.Known(nil, open, w.limit, volts, amps)
}
