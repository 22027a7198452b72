package overcurrent

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

var limitedSourceCannotClear = &lint.Rule{
	ID:      "overcurrent/limited-source-cannot-clear",
	Claim:   "This fuse or breaker will never open on the source it is drawn against.",
	Words:   []lint.Severity{lint.Caution, lint.Warning},
	Harm:    true,
	Subject: "fuse",
	When: "In some state a device is fed from one side by nothing but sources that limit their own current, and a dead short beyond it passes less than 1.35 times its rating, while a " +
		"conductor behind it carries less than that current; or no source in any state can drive the device far enough to open.",
	Why: "An array or a charger gives little more into a short than in service, so the device sits there as a wire. Warning where the conductor behind it is too thin for what the source " +
		"gives: it stays hot for as long as the sun shines. Caution alone: nothing overheats, but somebody counts on a protection that is none.",
	Numbers: "Arrays at 1.25 isc, alternators and supplies at 1.25 times their rating, converters at the limit they state, shore and generator at their `short_circuit`, solved for a bolted short " +
		"behind the device. A device is taken never to open below 1.35 times its rating.",
	Not: "A device that guards against a battery from the other side, or in another state, is in its right place, as long as the conductors carry the limited current. A converter that does not " +
		"limit passes on what is behind it. A breaker with a residual-current trip has a use of its own. A source of which no figure is written is not proven.",
	Offer: "A conductor sized for what the source gives; a disconnect for service; the fuse kept at the battery's end.",
	Meter: "The short-circuit current of a panel with a direct-current ammeter, the panel covered while connecting.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 690.9", Standing: lint.Read, Note: "circuits that carry no more than the array gives need no device; read in trade articles; good practice from it elsewhere", For: []string{"us-rv", "cabin"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a device protects against sources that can open it"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.SmallerDevice, remedy.ThickerWire},
	Since:  "0.1",
	Run:    limitedSourcesCannotClear,
}

func limitedSourcesCannotClear(p *lint.Pass) []lint.Verdict {
	l := &limits{p: p, of: map[*schema.Fuse]*limited{}}
	eachSection(p, explore.All(), l.look)
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		out = append(out, l.verdict(f))
	}
	return out
}

// limited is what was found of a device.
type limited struct {
	opens      bool          // something in some state can open it, or nothing is known to keep it from that
	most       *idle         // the largest current that limited sources alone drive through it
	thin       *idle         // with the conductor that it overheats
	wire       int           // that conductor
	iz         derive.Number // its ampacity
	unknown    []lint.Missing
	unfinished bool
}

// idle is a short that a device does not open on.
type idle struct {
	section *circuit.Section
	short   *circuit.Short
	edge    int
	amps    float64
	before  map[network.NodeID]bool // what feeds the device from there
}

// limits goes over the sections.
type limits struct {
	p  *lint.Pass
	of map[*schema.Fuse]*limited
}

func (l *limits) look(s *circuit.Section, unfinished bool) {
	most := l.p.Circuit.Faults(s, circuit.Prospective, false)
	for _, e := range elements(l.p, s.Edges) {
		f := l.p.Net.Edges[e].Fuse
		if l.of[f] == nil {
			l.of[f] = &limited{wire: -1}
		}
		l.of[f].unfinished = l.of[f].unfinished || unfinished
		for _, h := range ends(&l.p.Net.Edges[e]) {
			if h.Edge = e; slices.Contains(s.Nodes, h.To) && slices.Contains(s.Nodes, h.From) {
				l.judge(most, h)
			}
		}
	}
}

// judge asks of a short behind a device whether what feeds it from before can open the device.
func (l *limits) judge(most *circuit.Faults, h explore.Hop) {
	f := l.p.Net.Edges[h.Edge].Fuse
	into := l.of[f]
	before := spread(l.p, most.Section, h.From, func(e int) bool { return e == h.Edge })
	if reaches(before, most.Ports(false)) {
		into.opens = true
		return
	}
	short, lacks, ok := most.At(h.To)
	lacks = slices.Concat(lacks, most.Doubts())
	if !ok || !reaches(before, most.Ports(true)) {
		if len(lacks) > 0 && reaches(before, supplies(l.p, most.Section)) {
			into.unknown = append(into.unknown, lacks...)
		}
		return
	}
	x := &idle{most.Section, short, h.Edge, math.Abs(short.Through(h.Edge)), before}
	switch {
	case !f.Rating.Set:
		into.unknown = append(into.unknown, ratingLess(f)...)
		return
	case x.amps >= circuit.MayCarry(f)*(1-1e-9):
		into.opens = true
		return
	case len(lacks) > 0:
		into.unknown = append(into.unknown, lacks...)
		return
	case into.most == nil || x.amps > into.most.amps:
		into.most = x
	}
	if !l.cleared(most, h, short) {
		l.behind(most, x, h, into)
	}
}

// cleared says whether other devices on every way before it open on the short.
func (l *limits) cleared(most *circuit.Faults, h explore.Hop, short *circuit.Short) bool {
	in := spread(l.p, most.Section, h.From, func(e int) bool {
		d := l.p.Net.Edges[e].Fuse
		return e == h.Edge || d != nil && d.Rating.Set && math.Abs(short.Through(e)) >= circuit.MayCarry(d)*(1-1e-9)
	})
	return !reaches(in, most.Ports(true))
}

// behind looks for a conductor behind the device that carries less than the short passes. One that is
// straight on a battery, which gives far more, has rules of its own.
func (l *limits) behind(most *circuit.Faults, x *idle, h explore.Hop, into *limited) {
	in := spread(l.p, x.section, h.To, func(e int) bool { return l.p.Net.Edges[e].Kind == network.Element })
	if reaches(in, most.Ports(false)) {
		return
	}
	for _, e := range x.section.Edges {
		w := l.p.Net.Edges[e].Wire
		if w == nil || !in[l.p.Net.Edges[e].A] {
			continue
		}
		switch iz, lacks := l.p.Circuit.Ampacity(w); {
		case iz.Kind != 0 && x.amps > iz.Value*(1+1e-9):
			if into.thin == nil || x.amps/iz.Value > into.thin.amps/into.iz.Value*(1+1e-9) {
				into.thin, into.wire, into.iz = x, e, iz
			}
		case len(lacks) > 0:
			into.unknown = append(into.unknown, lacks...)
		}
	}
}

func (l *limits) verdict(f *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Warning}
	x := l.of[f]
	if x == nil {
		return v
	}
	if x.most != nil {
		v.Numbers = []derive.Number{rated(f), x.most.short.Number(x.most.edge)}
	}
	switch {
	case x.thin != nil:
		w := l.p.Net.Edges[x.wire].Wire
		v.Outcome, v.Numbers = lint.Violated, []derive.Number{rated(f), x.iz, x.thin.short.Number(x.thin.edge)}
		l.place(&v, x.thin)
		v.Related = append(v.Related, w.Addr)
		v.Message = fmt.Sprintf("A short behind %s (%s) passes no more than %s from %s, which never opens it, and %s carries %s.",
			lint.Quote(f), rated(f).Text(), derive.Text(x.thin.amps, "A"), l.from(x.thin), lint.Quote(w), x.iz.Text())
	case len(x.unknown) > 0:
		v.Outcome, v.Numbers, v.Missing = lint.NotProven, nil, once(x.unknown)
		v.Message = fmt.Sprintf("Whether what feeds %s can open it in a short, or else stays within what the wires carry, cannot be told.", lint.Quote(f))
	case x.unfinished:
		return lint.Unfinished(f, lint.Warning)
	case x.most != nil && !x.opens && !f.Trip.Set:
		v.Outcome, v.Word = lint.Violated, lint.Caution
		l.place(&v, x.most)
		v.Message = fmt.Sprintf("Nothing that feeds %s (%s) can open it: %s drives no more than %s into a short. The wires carry that, so it protects nothing.",
			lint.Quote(f), rated(f).Text(), l.from(x.most), derive.Text(x.most.amps, "A"))
	}
	return v
}

func (l *limits) place(v *lint.Verdict, x *idle) {
	v.State, v.Path, v.Related = x.short.Witness(), route(l.p, x.section, x.short), sourcesOf(l.p, x.short)
}

// from names what feeds a short through the device.
func (l *limits) from(x *idle) string {
	var names []string
	feeds := func(port network.Port) bool { return reaches(x.before, []network.Port{port}) }
	for _, i := range x.section.Sources {
		if feeds(l.p.Net.Sources[i].Port) && slices.Contains(sourcesOf(l.p, x.short), l.p.Net.Sources[i].Addr) {
			names = append(names, lint.Quote(l.p.Net.Sources[i].Source))
		}
	}
	for _, i := range x.short.Converters() {
		if c := &l.p.Net.Converters[i]; feeds(c.Out) || feeds(c.In) {
			names = append(names, lint.Quote(c.Converter))
		}
	}
	return lint.And(names...)
}

// once leaves out what is named twice.
func once(list []lint.Missing) []lint.Missing {
	var out []lint.Missing
	for _, m := range list {
		if !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}
