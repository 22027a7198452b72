package lifesafety

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/schema"
)

var oneCutoffTakesAll = &lint.Rule{
	ID:      "life-safety/one-cutoff-takes-all",
	Claim:   "One BMS, one fuse or one connector darkens everything that must not go dark.",
	Words:   []lint.Severity{lint.Danger, lint.Warning, lint.Notice},
	Harm:    true,
	Subject: "battery that cuts off by itself; automatic breaker, relay and connector; a battery's main device and disconnect",
	When: "After one part has opened, in some state at rest of a mode in which they are needed, two or more loads with `critical` set to something else than none go dark together, or a " +
		"life-safety load does. A battery whose BMS warns before it cuts off is left out. Loads behind a breakaway switch are asked with the tow plug apart.",
	Why: "One decision, made by electronics to save a battery or by somebody who pulls a plug, ends all warning and light. Warning for what opens by itself or is pulled: BMS, automatic " +
		"breaker, relay, connector; danger in a mode named offshore of a boat; notice for a battery's own main device or its disconnect.",
	Numbers: "None: one part at a time, told as `after` in the state.",
	Not: "A load's own device, and a part behind which a single load hangs. Loads with a battery of their own. What another supply covers, through a one-way device too, even where " +
		"that one starts at a voltage of its own. Hand switches, and a disconnect with loads or converters on the battery's side of it. Of a plug before a gas or smoke alarm: life-safety/alarm-can-be-switched-off. Devices further down than a battery's first.",
	Offer: "A second small battery for alarms, lights and radio; two packs, each on a way of its own; a battery that warns before it cuts off.",
	Meter: "With the loads light: pull it, and list what died.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-13", Standing: lint.Read, For: []string{"us-boat"}, Note: "a warning before a lithium battery shuts down, a second supply for critical gear advised, from 600 Wh; read in " +
			"summaries, and whether the warning is required is disputed"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "what must not go dark does not hang on one part"},
	},
	Remedy: true,
	Since:  "0.1",
	Run:    cutoffs,
}

func cutoffs(p *lint.Pass) []lint.Verdict {
	openers := openersOf(p)
	complete := true
	for _, q := range questions(p) {
		complete = q.ask(p, openers) && complete
	}
	var out []lint.Verdict
	for _, o := range openers {
		out = append(out, o.verdict(p, complete))
	}
	return out
}

// opener is a part that may open, with the gravest that was found to happen then.
type opener struct {
	block  schema.Block
	how    string // what it does: "bms opens"
	says   string // the same in a sentence
	word   lint.Severity
	lacks  []lint.Missing // what leaves open whether it counts
	source int            // a battery; -1 for other parts
	after  *outcome
}

// outcome is what goes dark after a part has opened.
type outcome struct {
	question *question
	view     *explore.View
	dark     []int // loads
	word     lint.Severity
	unsure   []lint.Missing // of an alarm among them: whether it has a battery of its own
}

func openersOf(p *lint.Pass) []*opener {
	var out []*opener
	for i := range p.Net.Sources {
		if s := p.Net.Sources[i].Source; s.Kind.Value == "battery" && (s.BMS != nil || lithium(s)) {
			o := &opener{block: s, how: "bms opens", says: "If the BMS of " + lint.Quote(s) + " opens", word: lint.Warning, source: i}
			switch {
			case s.BMS == nil:
				o.lacks = []lint.Missing{{Subject: s.Addr, Attribute: "bms"}}
			case s.BMS.WarnsBeforeCutoff.True():
				o.word = 0
			case !s.BMS.WarnsBeforeCutoff.Set:
				o.lacks = []lint.Missing{{Subject: s.Addr, Attribute: "warns_before_cutoff"}}
			}
			out = append(out, o)
		}
	}
	for _, x := range p.Plan.Fuses {
		o := &opener{block: x, how: "opens", says: "If " + lint.Quote(x) + " opens", source: -1}
		main := first(p.Net, x)
		switch {
		case x.Reset.Value == "automatic":
			o.word = lint.Warning
		case main:
			o.word = lint.Notice
		case x.Kind.Value == "breaker" && !x.Reset.Set:
			o.word, o.lacks = lint.Warning, []lint.Missing{{Subject: x.Addr, Attribute: "reset"}}
		default:
			continue
		}
		out = append(out, o)
	}
	for _, x := range p.Plan.Switches {
		o := &opener{block: x, how: "opens", says: "If " + lint.Quote(x) + " opens", word: lint.Warning, source: -1}
		switch {
		case x.Kind.Value == "relay", x.Kind.Value == "isolator", x.Follows.Set, x.CutIn.Set, x.CutOut.Set:
		case x.Kind.Value == "disconnect" && own(p.Net, x):
			o.word = lint.Notice
		default:
			continue
		}
		out = append(out, o)
	}
	for _, x := range p.Plan.Connectors {
		if p.Net.Var(x.Addr) >= 0 {
			out = append(out, &opener{block: x, how: "is pulled", says: "If " + lint.Quote(x) + " is pulled", word: lint.Warning, source: -1})
		}
	}
	return out
}

func lithium(s *schema.Source) bool {
	return s.Chemistry.Value == "lifepo4" || s.Chemistry.Value == "li-ion"
}

// verdict is what was found of a part.
func (o *opener) verdict(p *lint.Pass, complete bool) lint.Verdict {
	v := lint.Verdict{Subject: o.block, Outcome: lint.Holds, Word: max(o.word, lint.Notice)}
	switch {
	case o.word == 0:
		return v
	case o.after == nil && !complete:
		return lint.Unfinished(o.block, o.word)
	case o.after == nil:
		return v
	}
	a := o.after
	v.Outcome, v.Word, v.Missing = lint.Violated, a.word, slices.Concat(o.lacks, a.unsure)
	v.State = append(o.positions(a), lint.Position{Addr: "after", Position: o.block.Header().Addr + ": " + o.how})
	slices.SortFunc(v.State, func(x, y lint.Position) int { return strings.Compare(x.Addr, y.Addr) })
	var names []string
	for _, i := range a.dark {
		l := p.Net.Loads[i].Load
		v.Related = append(v.Related, l.Addr)
		names = append(names, lint.Quote(l))
	}
	if n := len(names); n > listed+1 {
		names = append(names[:listed], fmt.Sprintf("%d more", n-listed))
	}
	verb := " go dark together"
	if len(a.dark) == 1 {
		verb = " goes dark"
	}
	v.Message = o.says + a.question.while() + with(p, v.State) + ", " + lint.And(names...) + verb + "."
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
		v.Message += " Whether it counts is open: " + lint.Lacking(v.Missing[0], false) + " is not written."
	}
	return v
}

// with tells the positions of a state in a sentence, what has opened left out.
func with(p *lint.Pass, state []lint.Position) string {
	if at := lint.Positions(p.Plan, state); at != "" {
		return ", with " + at
	}
	return ""
}

// positions are those that make it dark whatever everything else does.
func (o *opener) positions(a *outcome) []lint.Position {
	dark := func(v *explore.View) bool {
		e := o.opened(a.question, v)
		return !slices.ContainsFunc(a.dark, func(i int) bool { return e.Feeds(a.question.p.Net.Loads[i].Port) })
	}
	v := a.view
	if o.source < 0 {
		v = v.Opened(o.block.Header().Addr)
	}
	return v.State(v.Keep(v.Zone.Vars, dark))
}
