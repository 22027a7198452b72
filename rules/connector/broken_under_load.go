package connector

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
)

var brokenUnderLoad = &lint.Rule{
	ID:      "connector/broken-under-load",
	Claim:   "It will be pulled apart while carrying direct current.",
	Words:   []lint.Severity{lint.Warning, lint.Caution},
	Subject: "connector",
	When: "A connector that is not always mated carries more than 10 A of direct current, or more than 1 A in a circuit that reaches more than 30 V, in a state from which it can be unplugged with nothing " +
		"else moved first, and it is not rated to be pulled under load.",
	Why: "A hand is on it when the arc draws. At 12 V the contacts pit: caution. Above 60 V the arc stands, and among fuel vapor it lights: warning.",
	Numbers: "Current: the largest through one contact over those states, returns included, as in switching/contact-rating. Volts: the highest that the circuit reaches. A state counts unless an interlock forbids " +
		"the same state with the connector unmated, or with what it follows away: then a switch must be moved first.",
	Not: "Alternating current. A return that has another way home beside it. Whether `load_break` is rated for these volts and amperes: switching/contact-rating asks. A converter that is off with the ignition: draw the source that it follows. What " +
		"a load takes for a moment on starting.",
	Offer: "A connector rated to be pulled under load; a switch ahead of it with an interlock that holds the one until the other is off; less current.",
	Meter: "Nothing is measured; pitted or blackened contacts have been drawn under load.",
	Cites: []lint.Citation{
		{Ref: "reports of array connectors spoilt by opening under load", Standing: lint.Read},
		{Ref: "NFPA 70 690.33", Standing: lint.FromMemory, Note: "connectors rated to interrupt, or opened with a tool and marked; good practice from solar arrays", For: []string{"us-rv", "cabin"}},
		{Ref: "arcs hold above some 12 to 20 V and 1 A", Standing: lint.FromMemory},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "off before unplugging"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.LoadBreak},
	Since:  "0.1",
	Run:    underLoad,
}

const (
	arcVolts = 30.0 // V, above which arcAmps counts
	arcAmps  = 1.0
	lowAmps  = 10.0
)

func underLoad(p *lint.Pass) []lint.Verdict {
	l := &leavings{Pass: p, circuits: map[int]*circuit.Circuit{}}
	var out []lint.Verdict
	for _, c := range p.Plan.Connectors {
		d := &drawn{leavings: l, c: c}
		if d.look(func(int) (*circuit.Circuit, bool) { return p.Circuit, true }); d.counts() { // only then what must be moved first can matter
			l.cut = l.cut || d.cut
			d = &drawn{leavings: l, c: c}
			d.look(l.leaving)
		}
		out = append(out, d.verdict())
	}
	return out
}

// leavings is the numbers of the states from which something can be taken away.
type leavings struct {
	*lint.Pass
	circuits map[int]*circuit.Circuit // by variable; nil where it can never be
	cut      bool                     // the states of the plan are too many to list
	home     *circuit.Returns
}

// mostLeavings bounds how many things a plan may hold in place, each with numbers of its own.
const mostLeavings = 16

// leaving gives the numbers for one variable, nil where nothing can take it away; known is false where
// that is too much to ask.
func (l *leavings) leaving(variable int) (in *circuit.Circuit, known bool) {
	in, ok := l.circuits[variable]
	if ok {
		return in, true
	}
	space, can := l.Space.Leaving(variable, 0)
	switch {
	case can && space == l.Space:
		return l.Circuit, true
	case l.cut, len(l.circuits) >= mostLeavings:
		return nil, false
	case can:
		in = circuit.New(space, l.Circuit.Guesses)
	}
	l.circuits[variable] = in
	return in, true
}

// ring says whether a return has another way home beside it; the ways home are worked out once.
func (l *leavings) ring(e int) bool {
	if l.home == nil {
		l.home = l.Circuit.Returns()
	}
	return l.home.Ring(e)
}

// drawn is a connector that is pulled apart.
type drawn struct {
	*leavings
	c     *schema.Connector
	amps  derive.Number // the most that a contact carries
	state []lint.Position
	lacks []lint.Missing
	cut   bool // the search met its bound
	volts derive.Number
	vague []lint.Missing // of the volts
}

// contacts lists the mates that break direct current when they part: of returns those with no other way
// home beside them.
func (d *drawn) contacts() []int {
	var out []int
	for _, e := range d.Net.EdgesOf(d.c.Addr) {
		k := &d.Net.Edges[e]
		if k.Kind == network.Mate && !d.Net.Nodes[k.A].AC && !(d.Net.Nodes[k.A].Return && d.Net.Nodes[k.B].Return && d.ring(e)) {
			out = append(out, e)
		}
	}
	return out
}

// look finds the most current over the states that in gives the numbers of, for what a person moves.
func (d *drawn) look(in func(int) (*circuit.Circuit, bool)) {
	own := d.Net.Var(d.c.Addr)
	if own < 0 {
		return
	}
	edges := d.contacts()
	d.reaches(edges)
	for _, r := range roots(d.Net, own) {
		c, known := in(r)
		if d.cut = d.cut || !known; c == nil {
			continue
		}
		for _, e := range edges {
			d.carries(c, e)
		}
	}
}

// counts says whether there is anything to find.
func (d *drawn) counts() bool {
	return d.over() || len(d.lacks) > 0 || d.amps.Value > arcAmps && len(d.vague) > 0
}

func (d *drawn) over() bool {
	return d.amps.Value > lowAmps || d.amps.Value > arcAmps && d.volts.Value > arcVolts
}

// reaches finds the highest volts at the contacts.
func (d *drawn) reaches(edges []int) {
	for _, e := range edges {
		for _, id := range []network.NodeID{d.Net.Edges[e].A, d.Net.Edges[e].B} {
			if d.Net.ZoneOf(id) == nil {
				continue
			}
			n, _, lacks := d.Circuit.Highest(id)
			if d.vague = append(d.vague, lacks...); n.Kind != 0 && (d.volts.Kind == 0 || n.Value > d.volts.Value) {
				d.volts = n
			}
		}
	}
}

// most is the current that may be pulled apart at the volts that are known.
func (d *drawn) most() float64 {
	if d.volts.Kind != 0 && d.volts.Value <= arcVolts && len(d.vague) == 0 {
		return lowAmps
	}
	return arcAmps
}

// carries takes in what one contact carries.
func (d *drawn) carries(in *circuit.Circuit, e int) {
	at := e
	if f := in.FeedOf(e); f >= 0 {
		at = f
	}
	w := in.Worst(at)
	d.cut = d.cut || !w.Complete
	if lacks := in.LacksAt(at); len(lacks) > 0 && !in.Guarded(at, d.most()) {
		d.lacks = append(d.lacks, lacks...)
	}
	if w.Capped.Value > d.amps.Value {
		d.amps, d.state = w.Capped, in.StateOf(at)
	}
}

func (d *drawn) verdict() lint.Verdict {
	v := lint.Verdict{Subject: d.c, Outcome: lint.Holds, Word: d.word(), Numbers: append(lint.Known(nil, d.volts), lint.Known(d.lacks, d.amps)...)}
	if d.c.LoadBreak.True() {
		return v
	}
	switch {
	case d.over() && d.c.LoadBreak.Set:
		v.Outcome, v.State = lint.Violated, d.state
		v.Message = fmt.Sprintf("%s can be pulled apart while one contact carries up to %s%s, and is not rated for that.", lint.Quote(d.c), d.amps.Text(), d.at())
	case d.over():
		v.Outcome, v.State, v.Missing = lint.NotProven, d.state, []lint.Missing{{Subject: d.c.Addr, Attribute: "load_break"}}
		v.Message = fmt.Sprintf("%s can be pulled apart while one contact carries up to %s%s; whether it is rated for that is not written.", lint.Quote(d.c), d.amps.Text(), d.at())
	case len(d.lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, d.lacks
		v.Message = fmt.Sprintf("What %s carries when it is pulled apart is not known: %s is missing.", lint.Quote(d.c), lint.Lacking(d.lacks[0], true))
	case d.amps.Value > arcAmps && len(d.vague) > 0:
		v.Outcome, v.Missing = lint.NotProven, d.vague
		v.Message = fmt.Sprintf("%s can be pulled apart while one contact carries up to %s, and how many volts stand behind that is not known: %s is missing.",
			lint.Quote(d.c), d.amps.Text(), lint.Lacking(d.vague[0], true))
	case d.cut:
		return lint.Unfinished(d.c, v.Word)
	}
	return v
}

// at tells the volts.
func (d *drawn) at() string {
	if d.volts.Kind == 0 {
		return ""
	}
	return fmt.Sprintf(" in a circuit of up to %s", d.volts.Text())
}

// word is warning above 60 V and in fuel vapor.
func (d *drawn) word() lint.Severity {
	k, ok := schema.Lookup[*schema.Compartment](d.Plan, d.c.Compartment.Addr)
	if d.volts.Value > touchVolts || ok && k.FuelVapor.True() {
		return lint.Warning
	}
	return lint.Caution
}
