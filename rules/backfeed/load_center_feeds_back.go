package backfeed

import (
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var loadCenterFeedsBack = &lint.Rule{
	ID:      "backfeed/load-center-feeds-back",
	Claim:   "Plugged in, the trailer's load center charges what lies upstream of it: the tow vehicle, a spare pack.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Harm:    true,
	Subject: "load center; the wires its output feeds",
	When: "With its input live, a load center's output reaches a battery other than its own through less than 1 ohm, or a wire past the practice's distance " +
		"that carries less than its `current_max` with no device small enough before it.",
	Why: "It feeds what nobody meant it to, through wiring made for less. Caution; warning where the battery is of another chemistry than its own, or where " +
		"a wire on the way is too thin for what it gives.",
	Numbers: "Its own batteries are those it `charges`. Where that is left out: the only battery on its side of the tow plug that is no starting battery, or else " +
		"every fixed one that it reaches without a plug; a starting battery and one behind the tow plug never are. A battery wired to one of its own without a switch belongs " +
		"with it. Of any other it is not known. The loop is the sum of conductors and joints on the shortest way, both poles; what is not known of it counts as nothing. A chemistry " +
		"that is left out counts as another one. A load center without a drawn input is taken to be live.",
	Not:   "Maintenance charge that is meant, through a converter that limits it: a converter on the way ends the way. Currents in ways that run in parallel.",
	Offer: "A one-way dc-dc converter between the two; a relay that follows the engine; a device at the load center's output.",
	Meter: "Shore power on, engine off: clamp on the tow feed.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(a)", Standing: lint.Read, Note: "a device for each ungrounded conductor; good practice from it outside the boats it binds"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a charger reaches its own battery and no other"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.BlocksReverse},
	Since:  "0.1",
	Run:    feedsBack,
}

// loopLimit is the resistance in ohm above which what feeds back is a trickle.
const loopLimit = 1.0

func feedsBack(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	wires, bank := newRuns(p), banks(p.Net)
	for i := range p.Net.Converters {
		if c := &p.Net.Converters[i]; c.Kind.Value == "load-center" {
			out = append(out, newCenter(p, wires, bank, i).verdicts()...)
		}
	}
	return out
}

// center is one load center with the worst that was found of it.
type center struct {
	*runs
	c       *network.Converter
	claims  map[int]claim
	amps    derive.Number // current_max; no unit where left out
	backs   map[int]*back // by battery
	wire    *bare
	wireAt  *explore.View
	partial bool
}

// back is a battery that the load center reaches, in the state with the heaviest word.
type back struct {
	view *explore.View
	way  explore.Path
	edge []int // all edges of the loop
	thin *bare
	word lint.Severity
}

func newCenter(p *lint.Pass, wires *runs, bank []int, converter int) *center {
	c := &p.Net.Converters[converter]
	x := &center{runs: wires, c: c, claims: claimsOf(p.Net, bank, c), backs: map[int]*back{}}
	if c.Output != nil && c.Output.CurrentMax.Set {
		q := c.Output.CurrentMax
		x.amps = derive.Read("output limit of "+lint.Quote(c.Converter), "Imax", q.Value, "A", c.Addr, "output current_max", q.Range)
	}
	z := p.Net.ZoneOf(c.Out.Hot)
	if z == nil {
		return x
	}
	views, complete := p.Space.Views(p.Net.Upstream(z), p.Space.Closed(explore.All()))
	x.partial = !complete
	for _, v := range views {
		if v.HasConverter(converter) && (len(p.Net.At(c.In.Hot)) == 0 || v.Live(nil, nil).Feeds(c.In)) {
			x.look(v)
		}
	}
	return x
}

// look takes in one state in which the load center runs.
func (x *center) look(v *explore.View) {
	if x.wire == nil || x.wire.missing != nil {
		amps := math.Inf(1)
		if x.amps.Unit != "" {
			amps = x.amps.Value
		}
		if b := x.unguarded(v, x.c.Out.Hot, amps); b != nil && (x.wire == nil || b.missing == nil) {
			x.wire, x.wireAt = b, v
		}
	}
	for _, i := range v.Zone.Sources {
		old := x.backs[i]
		if x.p.Net.Sources[i].Kind.Value != "battery" || x.claims[i] == own || !v.HasSource(i) || old != nil && old.word == lint.Warning {
			continue
		}
		if row := v.Series(i); row.Across(x.c.Out) {
			if b := x.backTo(v, i, row); b != nil && (old == nil || b.word > old.word) {
				x.backs[i] = b
			}
		}
	}
}

// backTo is the way to a battery in a view; nil where it lets no more than a trickle through.
func (x *center) backTo(v *explore.View, battery int, row explore.Series) *back {
	b := &back{view: v, edge: row.Way(x.c.Out), word: lint.Caution}
	ohms := 0.0
	for _, e := range b.edge {
		ohms += x.ohm(e)
	}
	if ohms >= loopLimit {
		return nil
	}
	b.way = v.Reach(x.c.Out.Hot, nil, x.ohm).To(x.p.Net.Sources[battery].Hot)
	b.thin = x.thinOn(v, b.edge)
	if b.thin != nil || x.otherChemistry(x.p.Net.Sources[battery].Source) {
		b.word = lint.Warning
	}
	return b
}

// thinOn finds a wire among edges that carries less than the load center gives, with no device before
// it that is small enough.
func (x *center) thinOn(v *explore.View, edges []int) *bare {
	if x.amps.Unit == "" {
		return nil
	}
	guards := v.Guards(x.c.Out.Hot)
	for _, i := range edges {
		e := &x.p.Net.Edges[i]
		if e.Kind != network.Wire {
			continue
		}
		g := guards.Of(i)
		if iz, _ := x.ampacity(e.Wire); iz.Kind != 0 && iz.Value < x.amps.Value && (!g.Reached || g.Rating > iz.Value) {
			return &bare{e.Wire, i, iz, nil}
		}
	}
	return nil
}

// chemistries lists what the load center is there to charge, as far as the plan tells.
func (x *center) chemistries() []string {
	var out []string
	if x.c.Output != nil && x.c.Output.Profile.Set {
		out = append(out, x.c.Output.Profile.Value)
	}
	for i := range x.p.Net.Sources {
		if s := &x.p.Net.Sources[i]; x.claims[i] == own && s.Chemistry.Set {
			out = append(out, s.Chemistry.Value)
		}
	}
	return out
}

// otherChemistry says whether a battery is not known to be of the kind that the load center charges.
func (x *center) otherChemistry(b *schema.Source) bool {
	return !b.Chemistry.Set || !slices.Contains(x.chemistries(), b.Chemistry.Value)
}

func (x *center) verdicts() []lint.Verdict {
	var out []lint.Verdict
	for i := range x.p.Net.Sources {
		if b := x.backs[i]; b != nil {
			out = append(out, x.backVerdict(i, b))
		}
	}
	switch {
	case x.wire != nil:
		out = append(out, x.wireVerdict())
	case x.partial:
		out = append(out, lint.Unfinished(x.c.Converter, lint.Warning))
	case len(out) == 0:
		out = append(out, lint.Verdict{Subject: x.c.Converter, Outcome: lint.Holds})
	}
	return out
}

func (x *center) backVerdict(battery int, b *back) lint.Verdict {
	s := x.p.Net.Sources[battery].Source
	edges, sources := b.view.Live(nil, nil).Way(x.c.In)
	v := lint.Verdict{
		Subject: x.c.Converter, Outcome: lint.Violated, Word: b.word, Cause: s.Addr, Related: []string{s.Addr},
		State: b.view.Witness(append(edges, b.edge...), append(sources, battery)...), Path: b.view.Places(x.c.Out.Hot, b.way),
	}
	loop := x.loop(s, b.edge)
	v.Numbers = append(v.Numbers, loop)
	v.Message = fmt.Sprintf("With %s, %s charges %s too, through %s.", lint.Positions(x.p.Plan, v.State), lint.Quote(x.c.Converter), lint.Quote(s), loop.Text())
	if len(v.State) == 0 {
		v.Message = fmt.Sprintf("%s charges %s too, through %s.", lint.Quote(x.c.Converter), lint.Quote(s), loop.Text())
	}
	switch {
	case !s.Chemistry.Set:
		v.Message += " Of what chemistry that battery is, is not written."
	case len(x.chemistries()) == 0:
		v.Message += fmt.Sprintf(" That battery is %s; what the load center is set up for is not written.", s.Chemistry.Value)
	case x.otherChemistry(s):
		v.Message += fmt.Sprintf(" That battery is %s, which is not what the load center is set up for.", s.Chemistry.Value)
	}
	if b.thin != nil {
		v.Numbers = append(v.Numbers, x.amps, b.thin.iz)
		v.Message += fmt.Sprintf(" %s on the way carries %s of its %s.", lint.Quote(b.thin.wire), b.thin.iz.Text(), x.amps.Text())
	}
	if x.claims[battery] == unsure {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.c.Addr, Attribute: "charges"}}
		v.Message += " Whether it is meant to is not written."
	}
	return v
}

// loop is the resistance from the load center to a battery and back.
func (x *center) loop(s *schema.Source, edges []int) derive.Number {
	var parts []derive.Number
	sum := 0.0
	for _, e := range edges {
		if n, _ := x.p.Circuit.Ohms(e, circuit.Operating); n.Kind != 0 {
			parts, sum = append(parts, n), sum+n.Value
		}
	}
	return derive.Compute("loop from "+lint.Quote(x.c.Converter)+" to "+lint.Quote(s), "R", sum, "ohm", "sum of what is known of both poles", parts...)
}

// wayThrough is the way from the output to the far end of a wire.
func (x *center) wayThrough(v *explore.View, edge int) explore.Path {
	e := &x.p.Net.Edges[edge]
	r := v.Reach(x.c.Out.Hot, nil, nil)
	from, to := e.A, e.B
	near, ok := r.Dist[from]
	if far, also := r.Dist[to]; !ok || also && far < near {
		from, to = to, from
	}
	return append(r.To(from), explore.Hop{Edge: edge, From: from, To: to})
}

func (x *center) wireVerdict() lint.Verdict {
	edges, sources := x.wireAt.Live(nil, nil).Way(x.c.In)
	way := x.wayThrough(x.wireAt, x.wire.edge)
	v := lint.Verdict{
		Subject: x.wire.wire, Outcome: lint.Violated, Word: lint.Warning, Cause: x.c.Addr, Related: []string{x.c.Addr},
		State: x.wireAt.Witness(append(edges, way.Edges()...), sources...), Path: x.wireAt.Places(x.c.Out.Hot, way),
	}
	v.Missing = slices.Clone(x.wire.missing)
	if x.amps.Unit == "" {
		v.Missing = append(v.Missing, lint.Missing{Subject: x.c.Addr, Attribute: "output current_max"})
	} else {
		v.Numbers = append(v.Numbers, x.amps)
	}
	if x.wire.iz.Kind != 0 {
		v.Numbers = append(v.Numbers, x.wire.iz)
	}
	name, from := lint.Quote(x.wire.wire), lint.Quote(x.c.Converter)
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
		v.Message = fmt.Sprintf("%s feeds %s, and that a device before it guards it is not shown: how much comes, or how much the wire carries, is not written.", from, name)
		return v
	}
	v.Message = fmt.Sprintf("%s can give %s into %s, which carries %s, with no device small enough before it.", from, x.amps.Text(), name, x.wire.iz.Text())
	return v
}
