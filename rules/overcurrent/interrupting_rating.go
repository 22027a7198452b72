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
	"ferrule/lint/tables"
	"ferrule/schema"
)

var interruptingRating = &lint.Rule{
	ID:      "overcurrent/interrupting-rating",
	Claim:   "The short is bigger than the fuse or breaker can open.",
	Words:   []lint.Severity{lint.Danger, lint.Caution},
	Harm:    true,
	Subject: "fuse",
	When: "In some state a bolted short at either terminal of a device drives more current through it than its interrupting rating, with everything counted that is joined to it " +
		"in that state.",
	Why: "A device that is asked to open more than it can bursts, sprays metal, or goes on arcing, next to whoever has just closed the switch: danger for the first device after a source. " +
		"Behind a device that can open the fault at its own place: caution.",
	Numbers: "Prospective fault: each battery at its end-of-charge volts behind its low resistance, wires at 20 C with their nominal area, joints at nothing, all batteries, " +
		"returns and meshes solved together; arrays at 1.25 isc, alternators and supplies at 1.25 times their rating, converters at the limit they state. A battery's stated `short_circuit` " +
		"or `resistance` counts; without one the low default does: 0.4 (lead-acid) or 0.2 (lithium) ohm Ah over the capacity, for each 12 V. Such a guess may show that a device is too weak; that it is strong " +
		"enough only where its rating is at least twice the result. A blade fuse without a rating is taken for 1 kA to show that it is too weak, never that it is not.",
	Not: "A device with `series_rated_with` behind that device, which opens with it. A device that no short drives above 1.35 times its rating: it never has to open. How the current rises, and what an " +
		"upstream device lets through before it opens, is not counted.",
	Offer: "A device of the same rating with a larger interrupting rating, such as class T, at the source; the source's own short-circuit figure from its sheet.",
	Meter: "It cannot be measured safely. Volts before and under a known load give the resistance; a battery's own cut-off hides that of its cells.",
	Cites: []lint.Citation{
		{Ref: "ABYC E-11", Standing: lint.Read, Note: "interrupting capacity by size of bank, and one interrupting device for each battery above 500 Ah; read as quoted", For: []string{"us-boat"}},
		{Ref: "NFPA 70 480.7", Standing: lint.Read, Note: "the fault current is marked at the battery disconnect; read in a summary", For: []string{"us-rv", "cabin"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a device is able to open the largest fault at its place"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.Unless(remedy.StrongerDevice, "Where a stronger device stands ahead, ask the makers first whether they list the two as series rated: then nothing has to change."), remedy.ListedTogether},
	Folds:  []string{"overcurrent/clears-too-late"},
	Since:  "0.1",
	Run:    interruptingRatings,
}

func interruptingRatings(p *lint.Pass) []lint.Verdict {
	b := &breaker{p: p, found: map[*schema.Fuse]*broken{}, unfinished: map[*schema.Fuse]bool{}}
	b.walk(nil)
	if b.proven = b.shields(); b.bad() {
		first := b.found
		b.found = map[*schema.Fuse]*broken{}
		b.walk(func(f *schema.Fuse) bool { return first[f] == nil || first[f].outcome == lint.Holds })
		for f, x := range first {
			if b.found[f] == nil {
				b.found[f] = x
			}
		}
	}
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		out = append(out, b.verdict(f))
	}
	return out
}

// broken is the worst that was found of a device: a short at one of its terminals.
type broken struct {
	fuse    *schema.Fuse
	edge    int
	hop     explore.Hop // the fault comes in From, the short is at To
	section *circuit.Section
	short   *circuit.Short
	amps    float64 // A through the device
	outcome lint.Outcome
	lacks   []lint.Missing
	bus     string // behind which bus a later device stands; "" for a first one
	word    lint.Severity
}

// breaker goes over the sections: first to see which devices are in order where they stand, then, since
// those shield what is behind them, once more over the others.
type breaker struct {
	p          *lint.Pass
	found      map[*schema.Fuse]*broken
	proven     map[*schema.Fuse]bool // nil the first time
	unfinished map[*schema.Fuse]bool
}

func (b *breaker) walk(leave func(*schema.Fuse) bool) {
	own := map[int]bool{} // devices on the live side
	eachSection(b.p, explore.All(), func(s *circuit.Section, unfinished bool) {
		most := b.p.Circuit.Faults(s, circuit.Prospective, false)
		for _, e := range elements(b.p, s.Anew) {
			f := b.p.Net.Edges[e].Fuse
			own[e] = true
			b.unfinished[f] = b.unfinished[f] || unfinished
			for _, h := range ends(&b.p.Net.Edges[e]) {
				if h.Edge = e; slices.Contains(s.Nodes, h.To) && (leave == nil || !leave(f)) {
					b.judge(most, h, h.To)
				}
			}
		}
	})
	b.inReturns(own, leave)
}

// inReturns looks at devices that stand in a return: a short at a source's own terminal drives them.
func (b *breaker) inReturns(own map[int]bool, leave func(*schema.Fuse) bool) {
	var left []explore.Hop
	for i := range b.p.Net.Edges {
		if e := &b.p.Net.Edges[i]; e.Kind == network.Element && !own[i] && (leave == nil || !leave(e.Fuse)) {
			left = append(left, explore.Hop{Edge: i, From: e.A, To: e.B})
		}
	}
	if len(left) == 0 {
		return
	}
	eachSection(b.p, explore.All(), func(s *circuit.Section, _ bool) {
		most := b.p.Circuit.Faults(s, circuit.Prospective, false)
		for _, port := range append(most.Ports(false), most.Ports(true)...) {
			for _, h := range left {
				b.judge(most, h, liveEnd(b.p.Net, port))
			}
		}
	})
}

// judge compares what a short at a place drives through a device with what the device can open.
func (b *breaker) judge(most *circuit.Faults, h explore.Hop, at network.NodeID) {
	f := b.p.Net.Edges[h.Edge].Fuse
	short, lacks, ok := most.At(at)
	x := &broken{fuse: f, edge: h.Edge, hop: h, section: most.Section, outcome: lint.Holds}
	if ok {
		x.short, x.amps = short, math.Abs(short.Through(h.Edge))
	}
	able := able(f)
	switch {
	case !ok && lacks == nil, ok && x.amps <= 1e-6*short.Amps():
		return
	case !ok:
		x.outcome, x.lacks = lint.NotProven, lacks
	case able.Kind != 0 && x.amps > able.Value*(1+1e-9):
		b.above(x, able.Value, most.Doubts())
	case len(lacks) > 0:
		x.outcome, x.lacks = lint.NotProven, lacks
	case f.Rating.Set && short.Amps() < circuit.MayCarry(f):
	case !f.Interrupting.Set:
		x.outcome, x.lacks = lint.NotProven, []lint.Missing{{Subject: f.Addr, Attribute: "interrupting"}}
	case len(short.Vague()) > 0 && short.Amps() > able.Value:
		x.outcome, x.lacks = lint.NotProven, short.Vague()
	case 2*x.amps > able.Value:
		if x.lacks = b.p.Circuit.Guessed(short.Number(-1)); x.lacks != nil {
			x.outcome = lint.NotProven
		}
	}
	b.keep(x, most)
}

// above decides whether a fault that is above the rating is known to be.
func (b *breaker) above(x *broken, able float64, doubts []lint.Missing) {
	x.outcome = lint.Violated
	if vague := x.short.Vague(); len(vague) > 0 {
		x.outcome, x.lacks = lint.NotProven, vague
		return
	}
	if len(doubts) == 0 {
		return
	}
	sure, _, ok := b.p.Circuit.Faults(x.section, circuit.Prospective, true).At(x.short.At)
	if !ok || math.Abs(sure.Through(x.edge)) <= able*(1+1e-9) {
		x.outcome, x.lacks = lint.NotProven, doubts
		return
	}
	x.short, x.amps = sure, math.Abs(sure.Through(x.edge))
}

// keep remembers the worst of each device.
func (b *breaker) keep(x *broken, most *circuit.Faults) {
	if b.proven != nil && x.outcome != lint.Holds {
		b.place(x, most)
	}
	if old := b.found[x.fuse]; old == nil || x.worse(old) {
		b.found[x.fuse] = x
	}
}

func (x *broken) worse(old *broken) bool {
	weight := map[lint.Outcome]int{lint.Holds: 0, lint.NotProven: 1, lint.Violated: 2}
	if a, b := weight[x.outcome], weight[old.outcome]; a != b {
		return a > b
	}
	if x.word != old.word {
		return x.word > old.word
	}
	return x.amps > old.amps*(1+1e-9)
}

// able is what a device can open: its own figure, or for a blade fuse the trade's.
func able(f *schema.Fuse) derive.Number {
	if f.Interrupting.Set {
		return derive.Read("interrupting rating of "+lint.Quote(f), "Icn", f.Interrupting.Value, "A", f.Addr, "interrupting", f.Interrupting.Range)
	}
	if _, usual, _ := tables.FuseKind(f.Kind.Value); f.Kind.Value == "blade" && usual.Known() {
		return derive.Assume("interrupting rating of "+lint.Quote(f), "Icn", usual.V, "A", f.Addr, "interrupting", "blade fuses, "+usual.Cite.String())
	}
	return derive.Number{}
}

// shields are the devices whose rating is in order at their own place.
func (b *breaker) shields() map[*schema.Fuse]bool {
	out := map[*schema.Fuse]bool{}
	for f, x := range b.found {
		out[f] = x.outcome == lint.Holds && f.Interrupting.Set && !b.unfinished[f]
	}
	return out
}

func (b *breaker) bad() bool {
	for _, x := range b.found {
		if x.outcome != lint.Holds {
			return true
		}
	}
	return false
}

// place asks what stands between a device and what feeds it: batteries, where there are none what limits
// itself, and all of it where something is not known.
func (b *breaker) place(x *broken, most *circuit.Faults) {
	ports := stiff(b.p, most)
	if len(ports) == 0 {
		ports = most.Ports(true)
	}
	with := x.fuse.SeriesRatedWith.Addr
	behind := func(stops func(*schema.Fuse) bool) map[network.NodeID]bool {
		return spread(b.p, x.section, x.hop.From, func(e int) bool {
			d := b.p.Net.Edges[e].Fuse
			return d != nil && (d == x.fuse || stops(d))
		})
	}
	if x.word = lint.Danger; with != "" {
		if u, ok := schema.Lookup[*schema.Fuse](b.p.Plan, with); ok && b.proven[u] && !reaches(behind(func(d *schema.Fuse) bool { return d == u }), ports) {
			x.outcome, x.lacks = lint.Holds, nil
			return
		}
	}
	in := behind(func(d *schema.Fuse) bool { return b.proven[d] })
	if reaches(in, ports) || b.own(x, ports) {
		return
	}
	x.word = lint.Caution
	for _, bus := range b.p.Plan.Buses {
		for _, id := range x.section.Nodes {
			if in[id] && b.p.Net.Nodes[id].Addr == bus.Addr {
				x.bus = bus.Addr
				return
			}
		}
	}
}

// own says whether a device is a battery's own, the first on its other side: others feed it at a short there.
func (b *breaker) own(x *broken, ports []network.Port) bool {
	return reaches(spread(b.p, x.section, x.hop.To, func(e int) bool { return b.p.Net.Edges[e].Kind == network.Element }), ports)
}

func (b *breaker) verdict(f *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Danger}
	x := b.found[f]
	if x == nil {
		if b.unfinished[f] {
			return lint.Unfinished(f, lint.Danger)
		}
		return v
	}
	if v.Outcome = x.outcome; x.word != 0 {
		v.Word = x.word
	}
	if n := able(f); n.Kind != 0 && (f.Interrupting.Set || x.outcome == lint.Violated) {
		v.Numbers = append(v.Numbers, n)
	}
	if x.short != nil && (x.outcome != lint.NotProven || len(b.p.Circuit.Guessed(x.short.Number(-1))) > 0 || !f.Interrupting.Set) {
		v.Numbers = append(v.Numbers, x.short.Number(x.edge))
	}
	switch x.outcome {
	case lint.Violated:
		b.violated(x, &v)
	case lint.NotProven:
		v.Missing, v.Message = x.lacks, x.unproven()
	default:
		if b.unfinished[f] {
			return lint.Unfinished(f, lint.Danger)
		}
	}
	return v
}

func (b *breaker) violated(x *broken, v *lint.Verdict) {
	rating := able(x.fuse)
	v.State, v.Path, v.Related = x.short.Witness(), route(b.p, x.section, x.short), sourcesOf(b.p, x.short)
	is := "can open"
	if rating.Kind == derive.Assumption {
		is = "is taken to be able, as blade fuses are, to open"
	}
	v.Message = fmt.Sprintf("%s %s %s, and a short right behind it drives %s through it.", lint.Quote(x.fuse), is, rating.Text(), derive.Text(x.amps, "A"))
	if x.word == lint.Caution {
		v.Message += " A device ahead of it can open that."
		if x.bus != "" {
			v.Group = "behind " + x.bus
		}
	}
}

func (x *broken) unproven() string {
	if len(x.lacks) == 1 && x.lacks[0].Attribute == "interrupting" {
		return fmt.Sprintf("The interrupting rating of %s is not written, and a short right behind it drives up to %s through it.", lint.Quote(x.fuse), derive.Text(x.amps, "A"))
	}
	if x.fuse.Interrupting.Set && x.short != nil && x.lacks[0].Attribute == "resistance" {
		return fmt.Sprintf("%s can open %s; that a short right behind it drives less through it rests on a guessed resistance.", lint.Quote(x.fuse), able(x.fuse).Text())
	}
	return fmt.Sprintf("Whether %s can open a short right behind it cannot be told.", lint.Quote(x.fuse))
}
