package conductor

import (
	"fmt"
	"sync"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var ampacity = &lint.Rule{
	ID:      "conductor/ampacity",
	Claim:   "A wire carries more current than it can shed as heat.",
	Words:   []lint.Severity{lint.Warning},
	Harm:    true,
	Subject: "conductor",
	When: "In some state the largest current in one of the conductor's wires, as far as devices in series let it pass, is above its ampacity; or one " +
		"load on starting puts more heat into it than it withstands for that time.",
	Why: "The heat is made all along the wire, inside walls and under bunks where nobody sees it, until the insulation gives way: the slow half of electrical fires, hence warning.",
	Numbers: "Ampacity: 33 CFR 183.425 Table 5 for direct current under every practice, NFPA 70 310.16 for alternating current; a metric size takes the row below it. Times " +
		"heat, by the hottest space the wire passes (40 C where none is written, 50 C in an engine space), times bundle (3: 0.7, 4 to 6: 0.6, 7 to 24: 0.5, 25 and more: 0.4; " +
		"written for 50 V and up and used here at any voltage). No insulation: 60 C. Current: what can be drawn beyond the wire, each part at the volts that the circuit is solved to leave it, in a ring by its share, limited by what can be " +
		"given and by the ratings of devices. A start of up to 5 s is compared with k2 S2 / I2, a longer one with the ampacity; a start without a " +
		"written time is taken as 5 s.",
	Not: "A wire behind devices that add up to no more than its ampacity holds, whatever is drawn: then the device is what opens, which is another rule's. A starter's " +
		"own current, where the conductor says `cranking = true`, lasts seconds and is not counted; what the wire carries beside it is. Aluminium is not covered. " +
		"How current divides between parallel ways is not solved: each is counted with all of it. The moments while a selector is thrown count like any state. " +
		"Grounding wires are not asked.",
	Offer: "The next size of wire; insulation for a higher temperature, if the terminals take it; fewer wires in one bundle; a smaller device.",
	Meter: "Clamp meter with everything on for 15 minutes; a jacket above 60 C by a touch-safe thermometer is a stop.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.425(b), (c) and Table 5", Standing: lint.Read, Note: "ampacity by size and insulation, and the engine-space factor at 105 C; it binds builders of boats with gasoline inboards and is good practice from there elsewhere"},
		{Ref: "33 CFR 183.425 Table 5 note 1", Standing: lint.FromMemory, Note: "engine-space factors below and above 105 C; the formula that gives back the printed ones is used"},
		{Ref: "33 CFR 183.435(b)", Standing: lint.Read, Note: "bundle factors, written for 50 V and up"},
		{Ref: "ISO 13297 Table A.1", Standing: lint.FromMemory, For: []string{"iso-boat"}, Note: "its own table was not read; Table 5 is used"},
		{Ref: "NFPA 70 310.16", Standing: lint.Read, Note: "alternating current"},
		{Ref: "IEC 60364-4-43", Standing: lint.FromMemory, Note: "short-time withstand, for starting currents"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.Unbundle, remedy.ThickerWire, remedy.BetterInsulation},
	Folds:  []string{"overcurrent/oversize-device", "conductor/hot-place"},
	Since:  "0.1",
	Run:    overheated,
}

func overheated(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	ways := sync.OnceValue(func() *returns { return newReturns(p) })
	for _, x := range p.Plan.Conductors {
		iz, short := p.Circuit.Ampacity(x)
		v := lint.Verdict{Subject: x, Outcome: lint.Holds}
		for _, e := range p.Net.EdgesOf(x.Addr) {
			if p.Net.Edges[e].Pole == schema.Ground {
				continue
			}
			if w := (&wire{p, x, e, iz, short, ways}).judge(); w.Outcome > v.Outcome && v.Outcome != lint.Violated || v.Numbers == nil && v.Outcome == lint.Holds || w.Outcome == lint.Violated && worse(w, v) {
				v = w
			}
		}
		out = append(out, v)
	}
	return out
}

// worse says whether a violation is the first one, or is by more.
func worse(a, b lint.Verdict) bool {
	return b.Outcome != lint.Violated || a.Numbers[0].Value > b.Numbers[0].Value
}

// wire is one run of a conductor.
type wire struct {
	p     *lint.Pass
	x     *schema.Conductor
	edge  int
	iz    derive.Number
	short []lint.Missing // what the ampacity lacks

	returns func() *returns
}

func (w *wire) judge() lint.Verdict {
	c := w.p.Circuit
	run, at := "", w.edge
	home := w.p.Net.Edges[at].Pole == schema.Neg || w.p.Net.Edges[at].Pole == schema.Neutral
	if home && w.x.Polarity.Value != "negative" {
		run = " in its return"
	}
	if f := c.FeedOf(at); f >= 0 {
		at = f
	}
	worst := c.Worst(at)
	current, lacks := worst.Capped, c.LacksAt(at)
	if w.x.Cranking.True() {
		current, lacks = c.Beside(at)
	}
	if home && at == w.edge && current.Value > w.iz.Value {
		k := carried{n: current, feed: -1}
		w.returns().oneWay(&k, &leg{limit: w.iz, cranking: w.x.Cranking.True()}, at)
		current = k.n
	}
	v := lint.Verdict{Subject: w.x, Outcome: lint.Holds, Word: lint.Warning, Numbers: lint.Known(lacks, current, w.iz)}
	if home {
		v.Cause = "return"
	}
	switch {
	case w.iz.Kind == 0:
		v.Outcome, v.Missing = lint.NotProven, w.short
		v.Message = fmt.Sprintf("What %s can carry is not known: %s is missing", lint.Quote(w.x), attribute(w.short))
		switch {
		case current.Value > 0:
			v.Message += fmt.Sprintf("; it carries up to %s%s.", current.Text(), run)
		case len(lacks) > 0:
			v.Missing = append(v.Missing[:len(v.Missing):len(v.Missing)], lacks...)
			v.Message += fmt.Sprintf("; nor what it carries: %s is missing.", attribute(lacks))
		default:
			v.Message += "; it carries nothing in any state."
		}
	case current.Value > w.iz.Value*(1+1e-9) && !c.Guarded(at, w.iz.Value):
		v.Outcome, v.State = lint.Violated, c.StateOf(at)
		v.Message = fmt.Sprintf("%s carries up to %s%s, and can carry %s where it runs.", lint.Quote(w.x), current.Text(), run, w.iz.Text())
		if w.x.Size.Set {
			v.Message = fmt.Sprintf("%s (%s) carries up to %s%s, and can carry %s where it runs.", lint.Quote(w.x), w.x.Size.Name, current.Text(), run, w.iz.Text())
		}
	case len(w.short) > 0:
		v.Outcome, v.Missing = lint.NotProven, w.short
		v.Message = fmt.Sprintf("What %s can carry is at most %s, and less by an unknown factor: %s is missing.", lint.Quote(w.x), w.iz.Text(), attribute(w.short))
	case len(lacks) > 0 && !c.Guarded(at, w.iz.Value):
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("What %s carries is not known: at least %s, of %s that it can carry, and %s is missing.", lint.Quote(w.x), current.Text(), w.iz.Text(), attribute(lacks))
		if current.Value == 0 {
			v.Message = fmt.Sprintf("What %s carries is not known: %s is missing; it can carry %s.", lint.Quote(w.x), attribute(lacks), w.iz.Text())
		}
	case !worst.Complete:
		return lint.Unfinished(w.x, lint.Warning)
	case !w.x.Cranking.True():
		return w.starting(v, at)
	}
	return v
}

// attribute names the first thing that is missing.
func attribute(m []lint.Missing) string {
	if len(m) == 0 {
		return "something"
	}
	return lint.Lacking(m[0], true)
}

// longestStart is the longest start that short-time withstand speaks of, in s.
const longestStart = 5

// starting asks a wire that bears its steady current what one load does to it on starting.
func (w *wire) starting(v lint.Verdict, at int) lint.Verdict {
	peak := w.p.Circuit.Worst(at).Peak
	if peak.Value <= w.iz.Value || w.p.Circuit.Guarded(at, w.iz.Value) {
		return v
	}
	t := w.startTime(at)
	bears, lacks := w.p.Circuit.WithstandTime(w.x, peak)
	if lacks != nil || t.Kind == 0 || t.Value <= longestStart && bears.Value >= t.Value {
		v.Numbers = append(v.Numbers, peak)
		if bears.Kind != 0 && t.Kind != 0 {
			v.Numbers = append(v.Numbers, t, bears)
		}
		return v
	}
	v.Outcome, v.State, v.Numbers = lint.Violated, w.p.Circuit.StateOf(at), []derive.Number{peak, t, bears, w.iz}
	v.Message = fmt.Sprintf("%s carries %s for %s while a load starts, and can carry %s for long.", lint.Quote(w.x), peak.Text(), t.Text(), w.iz.Text())
	return v
}

// startTime is the longest time that a load of the circuit takes to start.
func (w *wire) startTime(at int) derive.Number {
	var longest derive.Number
	z := w.p.Net.ZoneOf(w.p.Net.Edges[at].A)
	for i := range w.p.Net.Loads {
		l := &w.p.Net.Loads[i]
		if !l.Surge.Set || z != nil && w.p.Net.ZoneOf(l.Hot) != z {
			continue
		}
		n := derive.Assume("starting time of "+lint.Quote(l.Load), "ts", longestStart, "s", l.Addr, "surge_time", "common practice")
		if l.SurgeTime.Set {
			n = derive.Read("starting time of "+lint.Quote(l.Load), "ts", l.SurgeTime.Value, "s", l.Addr, "surge_time", l.SurgeTime.Range)
		}
		if longest.Kind == 0 || n.Value > longest.Value {
			longest = n
		}
	}
	return longest
}
