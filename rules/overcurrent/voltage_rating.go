package overcurrent

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

var voltageRating = &lint.Rule{
	ID:      "overcurrent/voltage-rating",
	Claim:   "The device cannot put out the arc at this voltage, or is rated for alternating current only.",
	Words:   []lint.Severity{lint.Danger},
	Harm:    true,
	Subject: "fuse",
	When: "The highest voltage that any working state puts on either side of the device is above its voltage rating, or the device sits in a direct-current circuit and its " +
		"rating names alternating current only.",
	Why: "An element that melts at too high a voltage goes on burning as an arc, inside a part that people take for the protection: danger.",
	Numbers: "Highest volts: a battery rested full, or what the chargers that reach it hold, equalising included; an array open-circuit on its coldest morning; the string below it added. " +
		"A blade fuse without a rating is taken for 32 V DC. A nominal 48 V lithium bank is charged at 57.6 to 58.4 V: a 58 V fuse has no margin there, and a 32 V one fails.",
	Not:   "A converter that has failed and puts its input through. An AC rating never counts for DC, nor a DC rating for AC; a rating that says neither is not proven.",
	Offer: "A device of the same current rated for the voltage, such as 80 or 125 V DC; a two-pole breaker wired as its sheet shows.",
	Meter: "Volts across the open holder at full charge, with the circuit live upstream.",
	Cites: []lint.Citation{
		{Ref: "33 CFR 183.455(d)", Standing: lint.Read, Note: "voltage rating not less than the circuit's; only its beginning was read; good practice outside the boats it binds", For: []string{"us-boat"}},
		{Ref: "NFPA 70 706.31", Standing: lint.Read, Note: "listed for direct current and for the voltage; read in a summary", For: []string{"us-rv", "cabin"}},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "vehicle blade fuses are for 32 V; an AC rating says nothing of DC"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.StrongerDevice},
	Folds:  []string{"overcurrent/clears-too-late"},
	Since:  "0.1",
	Run:    voltageRatings,
}

func voltageRatings(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, f := range p.Plan.Fuses {
		out = append(out, rateVolts(p, f))
	}
	return out
}

func rateVolts(p *lint.Pass, f *schema.Fuse) lint.Verdict {
	v := lint.Verdict{Subject: f, Outcome: lint.Holds, Word: lint.Danger}
	high := highestAt(p, f)
	right, other, unmarked := ratings(f, high.ac)
	right, assumed := withDefault(f, high.ac, right, other, unmarked)
	for _, n := range []derive.Number{right, high.volts} {
		if n.Kind != 0 {
			v.Numbers = append(v.Numbers, n)
		}
	}
	least := max(right.Value, unmarked.Value) // the most that the rating can be read as
	switch known := high.volts.Kind != 0; {
	case right.Kind == 0 && unmarked.Kind == 0 && other.Kind != 0 && !high.ac:
		v.Outcome, v.Numbers = lint.Violated, append(v.Numbers, other)
		v.Message = fmt.Sprintf("%s is rated for %s ac only and sits in a direct-current circuit%s: an AC rating says nothing of DC.", lint.Quote(f), other.Text(), high.at())
	case known && least > 0 && high.volts.Value > least:
		if least > right.Value {
			assumed = "marked"
		}
		v.Outcome = lint.Violated
		v.Message = fmt.Sprintf("%s is %s for %s and sees up to %s, at which it may not put out its own arc.", lint.Quote(f), assumed, derive.Text(least, "V"), high.volts.Text())
	case right.Kind == 0 || len(high.lacks) > 0 || high.volts.Value > right.Value:
		return unratedVolts(v, f, high, other, unmarked, right)
	}
	if v.Outcome == lint.Violated {
		v.State, v.Path = high.witness(p)
	}
	return v
}

// ratings are the largest figures of a device for the circuit's kind of current, for the other kind,
// and without a kind.
func ratings(f *schema.Fuse, ac bool) (right, other, unmarked derive.Number) {
	for _, q := range f.VoltageRating.List {
		n := derive.Read("voltage rating of "+lint.Quote(f), "Vr", q.Value, "V", f.Addr, "voltage_rating", q.Range)
		into := &other
		switch {
		case q.Kind == quantity.Unmarked:
			into = &unmarked
		case (q.Kind == quantity.AC) == ac:
			into = &right
		}
		if n.Value > into.Value {
			*into = n
		}
	}
	return right, other, unmarked
}

// withDefault is what a blade fuse is taken for where its rating, or the kind of current, is not written.
func withDefault(f *schema.Fuse, ac bool, right, other, unmarked derive.Number) (derive.Number, string) {
	usual, _, _ := tables.FuseKind(f.Kind.Value)
	if right.Kind != 0 || f.Kind.Value != "blade" || !usual.Known() || other.Kind != 0 || ac && unmarked.Kind != 0 {
		return right, "rated"
	}
	value := usual.V
	if unmarked.Kind != 0 {
		value = min(value, unmarked.Value)
	}
	return derive.Assume("voltage rating of "+lint.Quote(f), "Vr", value, "V", f.Addr, "voltage_rating", "blade fuses, "+usual.Cite.String()), "taken to be rated, as blade fuses are,"
}

// highest is the most that either side of a device sees.
type highest struct {
	volts derive.Number
	view  *explore.View
	node  network.NodeID
	ac    bool
	lacks []lint.Missing
}

func highestAt(p *lint.Pass, f *schema.Fuse) highest {
	var out highest
	for _, i := range p.Net.EdgesOf(f.Addr) {
		e := &p.Net.Edges[i]
		if e.Kind != network.Element {
			continue
		}
		out.ac = out.ac || p.Net.Nodes[e.A].AC
		for _, id := range []network.NodeID{e.A, e.B} {
			n, view, lacks := p.Circuit.Highest(id)
			if n.Value > out.volts.Value {
				out.volts, out.view, out.node = n, view, id
			}
			out.lacks = append(out.lacks, lacks...)
		}
	}
	return out
}

func (h *highest) at() string {
	if h.volts.Kind == 0 {
		return ""
	}
	return " of " + h.volts.Text()
}

// witness is how the highest voltage comes to the device: from the source or output that its figure
// speaks of.
func (h *highest) witness(p *lint.Pass) ([]lint.Position, []string) {
	z := p.Net.ZoneOf(h.node)
	if h.view == nil || z == nil {
		return nil, nil
	}
	a := newArea(p, z)
	if a == nil {
		return nil, nil
	}
	var from []feed
	for _, x := range a.feeds() {
		if x.reverse || !x.present(p.Net, h.view) || !h.view.Joined(x.at, h.node) {
			continue
		}
		if x.source < 0 { // a charger's figure may be its battery's, so chargers come first
			if n, _ := p.Circuit.HighOutput(p.Net.Converters[x.converter].Converter); n.Value == h.volts.Value {
				from = append([]feed{x}, from...)
			}
		} else if speaksOf(h.volts, x.block.Header().Addr) {
			from = append(from, x)
		}
	}
	if len(from) == 0 {
		return nil, nil
	}
	way := h.view.Reach(from[0].at, func(e int, _ network.NodeID) bool { return a.walkable(e) }, nil).To(h.node)
	return from[0].witness(h.view, way), h.view.Places(from[0].at, way)
}

func speaksOf(n derive.Number, addr string) bool {
	found := false
	derive.Walk([]derive.Number{n}, func(x derive.Number) {
		found = found || x.Subject == addr || len(x.Source) > len(addr) && x.Source[:len(addr)+1] == addr+" "
	})
	return found
}

// unratedVolts is the answer where the rating, or a source's volts, is not written.
func unratedVolts(v lint.Verdict, f *schema.Fuse, h highest, other, unmarked, right derive.Number) lint.Verdict {
	v.Outcome = lint.NotProven
	v.Missing = []lint.Missing{{Subject: f.Addr, Attribute: "voltage_rating"}}
	switch {
	case right.Kind != 0:
		v.Missing = h.lacks
		v.Message = fmt.Sprintf("%s is rated for %s; how high the volts of its circuit go is not written.", lint.Quote(f), right.Text())
	case unmarked.Kind != 0:
		v.Message = fmt.Sprintf("The voltage rating of %s, %s, does not say whether it is for direct or alternating current.", lint.Quote(f), unmarked.Text())
	case other.Kind != 0:
		v.Message = fmt.Sprintf("The voltage rating of %s names direct current only, and it sits in an alternating-current circuit%s.", lint.Quote(f), h.at())
	default:
		v.Message = fmt.Sprintf("The voltage rating of %s is not written; its circuit reaches %s.", lint.Quote(f), h.volts.Text())
		if h.volts.Kind == 0 {
			v.Message = fmt.Sprintf("The voltage rating of %s is not written.", lint.Quote(f))
		}
	}
	return v
}
