package backfeed

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var reverseThroughConverter = &lint.Rule{
	ID:      "backfeed/reverse-through-converter",
	Claim:   "Current can run backwards through a converter or isolator that nobody thinks of as a wire.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Harm:    true,
	Subject: "converter",
	When: "A converter that does not block reverse current has its output energised by something else in some state in which its input has no supply of its own, " +
		"or a lower one, and something is wired to its input.",
	Why: "A slow drain by itself, hence caution. Warning where it makes contacts live that can be touched on a plug that is apart, or feeds a wire on the " +
		"dead-looking side past the practice's distance without a device that guards it.",
	Numbers: "Both sides are compared at their resting volts: a battery rested full, a regulated source or converter at what it holds. A plug whose `exposed` is left " +
		"out counts as one that can be touched. A wire is guarded where the smallest device on every way from what feeds the output, or what that can give, is within its ampacity.",
	Not: "How large the current is: an idle drain is not told from a short. A converter that `charges` a source on its own input side is taken to be meant to run " +
		"both ways, and is reported only for live contacts or an unguarded wire. Diodes, chargers, load centers and inverters are taken to block unless the plan says otherwise.",
	Offer:  "A converter that blocks reverse current; a diode or relay in its output; a device at the input end where it is meant to run both ways.",
	Meter:  "With the input side disconnected at its source: volts at the input terminals must be 0.",
	Cites:  []lint.Citation{{Ref: "common practice", Standing: lint.CommonPractice, Note: "every end that can feed is treated as a source"}},
	Remedy: true,
	Offers: []lint.Offer{remedy.BlocksReverse},
	Folds:  []string{"connector/live-contacts-exposed"},
	Since:  "0.1",
	Run:    reverseFlows,
}

func reverseFlows(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	wires := newRuns(p)
	for i := range p.Net.Converters {
		out = append(out, reverseFlow(p, wires, i))
	}
	return out
}

// blockingKinds block reverse current unless the plan says otherwise.
var blockingKinds = []string{"charger", "diode", "inverter", "load-center"}

func reverseFlow(p *lint.Pass, wires *runs, converter int) lint.Verdict {
	c := &p.Net.Converters[converter]
	v := lint.Verdict{Subject: c.Converter, Outcome: lint.Holds}
	if c.BlocksReverse.True() {
		return v
	}
	if !c.BlocksReverse.Set && slices.Contains(blockingKinds, c.Kind.Value) {
		v.Numbers = []derive.Number{derive.Assume("reverse current through "+lint.Quote(c.Converter), "", 0, "A", c.Addr, "blocks_reverse", "a "+c.Kind.Value+" is taken to block it")}
		return v
	}
	views, complete := p.Space.Views(aroundConverter(p.Net, converter), p.Space.Closed(explore.All()))
	var worst *flow
	for _, view := range views {
		f := flowIn(p, wires, view, converter)
		if f == nil || !f.graver(worst) {
			continue
		}
		if worst = f; f.word() == lint.Warning && f.lacks == nil {
			break
		}
	}
	switch {
	case worst != nil:
		return worst.verdict(p, v)
	case !complete:
		return lint.Unfinished(c.Converter, lint.Warning)
	}
	return v
}

// flow is reverse current through a converter in one state.
type flow struct {
	view      *explore.View
	live      *explore.Energy
	converter *network.Converter
	from      supply
	inVolts   float64 // of what supplies the input; 0 where it is dead
	dead      bool
	touch     []string // plugs whose contacts it makes live
	bare      *schema.Conductor
	lacks     []lint.Missing // what leaves it open whether it flows, or whether it does harm
}

// graver says whether a flow says worse than another: a sure one before a doubtful one.
func (f *flow) graver(o *flow) bool {
	if o == nil || (f.lacks == nil) != (o.lacks == nil) {
		return o == nil || f.lacks == nil
	}
	return f.word() > o.word()
}

func (f *flow) word() lint.Severity {
	if len(f.touch) > 0 || f.bare != nil {
		return lint.Warning
	}
	return lint.Caution
}

// flowIn finds reverse current in a view; nil where there is none, or where it is meant and guarded.
func flowIn(p *lint.Pass, wires *runs, v *explore.View, converter int) *flow {
	c := &p.Net.Converters[converter]
	if !v.HasConverter(converter) || !wired(p.Net, v, c.In.Hot) {
		return nil
	}
	live := v.Live(func(o *network.Converter) bool { return o.Converter != c.Converter && o.BlocksReverse.False() }, nil)
	behind := suppliesOf(p, v, live, c.Out, converter)
	out, ok := strongest(behind)
	if !ok {
		return nil
	}
	f := &flow{view: v, live: live, converter: c, from: out, dead: !live.Feeds(c.In)}
	if !f.dead {
		in, fed := strongest(suppliesOf(p, v, live, c.In, converter))
		f.inVolts = in.volts.Value
		known := in.volts.Unit != "" && out.volts.Unit != ""
		if !fed || p.Net.Nodes[c.In.Hot].AC || p.Net.Nodes[c.Out.Hot].AC || known && out.volts.Value <= in.volts.Value {
			return nil
		}
		f.lacks = slices.Concat(in.unknown(p), out.unknown(p))
	}
	f.touch = touchable(p.Net, v, c.In.Hot)
	amps := 0.0
	for _, s := range behind {
		amps = max(amps, min(s.most, v.Guards(s.port.Hot).At(c.Out.Hot).Rating))
	}
	open := wires.unguarded(v, c.In.Hot, amps)
	if open != nil && open.missing == nil {
		f.bare = open.wire
	}
	switch {
	case f.word() == lint.Warning || !meantBothWays(p.Net, c):
		return f
	case open == nil:
		return nil
	}
	f.bare, f.lacks = open.wire, append(f.lacks, open.missing...)
	return f
}

// meantBothWays says whether a converter charges something on its own input side.
func meantBothWays(n *network.Network, c *network.Converter) bool {
	for i := range n.Sources {
		if s := &n.Sources[i]; c.Charges.Has(s.Addr) && n.ZoneOf(s.Hot) != nil && n.ZoneOf(s.Hot) == n.ZoneOf(c.In.Hot) {
			return true
		}
	}
	return false
}

func (f *flow) verdict(p *lint.Pass, v lint.Verdict) lint.Verdict {
	c := f.converter
	v.Outcome, v.Word = lint.Violated, f.word()
	v.State = f.state(p)
	way := f.view.Between(f.from.port.Hot, c.Out.Hot)
	v.Path = append(f.view.Places(f.from.port.Hot, way), p.Net.Nodes[c.In.Hot].Place())
	v.Related = []string{f.from.block.Header().Addr}
	with := ""
	if len(v.State) > 0 {
		with = "with " + lint.Positions(p.Plan, v.State) + ", "
	}
	what := fmt.Sprintf("%s keeps its dead input live", lint.Quote(f.from.block))
	switch {
	case f.dead:
	case f.from.volts.Unit == "" || f.inVolts == 0:
		what = fmt.Sprintf("%s runs down into a live input, if it is at more volts", lint.Quote(f.from.block))
	default:
		what = fmt.Sprintf("%s, at %s, runs down into an input at %s", lint.Quote(f.from.block), f.from.volts.Text(), derive.Text(f.inVolts, "V"))
		v.Numbers = append(v.Numbers, f.from.volts)
	}
	v.Message = fmt.Sprintf("Current can run backwards through %s: %s%s.", lint.Quote(c.Converter), with, what)
	if f.lacks != nil {
		v.Outcome, v.Missing = lint.NotProven, f.lacks
		v.Message = fmt.Sprintf("Whether current runs backwards through %s and does harm is not shown: %s%s, and %s is not written.",
			lint.Quote(c.Converter), with, what, lint.Lacking(f.lacks[0], true))
	}
	if !c.BlocksReverse.Set {
		v.Outcome, v.Missing = lint.NotProven, append([]lint.Missing{{Subject: c.Addr, Attribute: "blocks_reverse"}}, f.lacks...)
		v.Message = fmt.Sprintf("Whether %s blocks reverse current is not written: %s%s if it does not.", lint.Quote(c.Converter), with, what)
	}
	if len(f.touch) > 0 {
		v.Message += fmt.Sprintf(" Contacts of %s are live then.", lint.And(f.touch...))
	}
	if f.bare != nil {
		v.Message += fmt.Sprintf(" %s is then fed with no device that guards it.", lint.Quote(f.bare))
	}
	return v
}

// state is the positions that make the flow: what feeds the output, and what leaves the input dead.
func (f *flow) state(p *lint.Pass) []lint.Position {
	edges := f.view.Between(f.from.port.Hot, f.converter.Out.Hot).Edges()
	more, sources := f.live.Way(f.from.behind)
	positions := f.view.Witness(append(edges, more...), append(sources, f.from.sources...)...)
	kept := f.view.Keep(f.view.Zone.Vars, func(v *explore.View) bool {
		live := v.Live(nil, nil)
		if f.dead {
			return !live.Feeds(f.converter.In)
		}
		in, ok := strongest(suppliesOf(p, v, live, f.converter.In, -1))
		return ok && in.volts.Unit != "" && in.volts.Value < f.from.volts.Value
	})
	return lint.SortState(append(positions, f.view.State(kept)...))
}
