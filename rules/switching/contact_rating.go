package switching

import (
	"fmt"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/remedy"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

var contactRating = &lint.Rule{
	ID:      "switching/contact-rating",
	Claim:   "A switch, connector or bus carries more current, or breaks more volts, than it is made for.",
	Words:   []lint.Severity{lint.Warning, lint.Caution, lint.Notice},
	Subject: "switch; connector; bus; 12 V socket",
	When: "In some state the largest current through one contact of a switch or connector, or what one load adds on starting, is above its `rating`; or the volts that it opens " +
		"are above its `voltage_rating`; or a bus carries more than its `rating`; or a 12 V accessory socket is used for more than 10 A.",
	Why: "Contacts that carry too much heat up, and contacts that cannot break direct current burn or weld shut: the off switch is gone when it is wanted, hence warning. A 12 V socket melts first: caution.",
	Numbers: "Currents are what can be drawn beyond the contact, each part at the volts that the circuit is solved to leave it, in a ring by its share, limited by what can be given and by the ratings of devices in series. Of a connector the worst contact " +
		"counts, returns included. A bus carries what its strongest conductor brings, or what all branches without a source draw together where several conductors feed " +
		"it. Volts: the highest that the circuit reaches in any state, arrays open and cold. A direct-current circuit needs a figure marked dc or not marked; a figure marked ac only is " +
		"held good up to 32 V. Tow-plug charge pins usually bear 30 A at most and 20 A for long (recalled): write the plug's own rating.",
	Not: "What a starter draws through a contact in a conductor with `cranking = true`, which lasts seconds. A connector that is never taken apart opens nothing, so its volts are not asked. Ageing, " +
		"dirt and the duty of a relay's coil. The chassis and grounding bars, whose ratings nobody prints. A starting current that a bus bears for seconds.",
	Offer: "A part with a higher rating; a contactor; a connector of its own for the circuit; a dc-dc converter that limits the current; a smaller device.",
	Meter: "Millivolts across the closed contact at load: above 50 mV for each 10 A it runs warm and wants replacing.",
	Cites: []lint.Citation{
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "a contact is used within its maker's direct-current rating; accessory sockets up to about 10 A"},
		{Ref: "owners' reports of seven-way plugs used as a charge path", Standing: lint.Read, Note: "burnt pins and returns"},
	},
	Remedy: true,
	Offers: []lint.Offer{remedy.HigherRating, remedy.HigherVolts},
	Since:  "0.1",
	Run:    contacts,
}

func contacts(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	add := func(q *part) { out = append(out, q.verdicts()...) }
	for _, x := range p.Plan.Switches {
		add(&part{p: p, block: x, rating: x.Rating, volts: x.VoltageRating, opens: true, hand: handSwitch(p.Plan, x)})
	}
	for _, x := range p.Plan.Connectors {
		add(&part{p: p, block: x, rating: x.Rating, volts: x.VoltageRating, opens: x.Mated.Value != "always"})
	}
	for _, x := range p.Plan.Buses {
		out = append(out, barVerdict(p, x))
	}
	for i := range p.Net.Loads {
		if v, ok := socket(p, i); ok {
			out = append(out, v)
		}
	}
	return out
}

// handSwitch says whether a branch put the switch before a load: a branch cannot write its ratings.
func handSwitch(plan *schema.Plan, x *schema.Switch) bool {
	for _, b := range plan.Branches {
		if slices.Contains(b.Parts, x.Addr) {
			return true
		}
	}
	return false
}

// part is a switch or connector.
type part struct {
	p      *lint.Pass
	block  schema.Block
	rating schema.Quantity
	volts  schema.Quantities
	opens  bool
	hand   bool
}

// contacts lists the edges that close and open, grounding contacts left out.
func (q *part) contacts() []int {
	var out []int
	for _, e := range q.p.Net.EdgesOf(q.block.Header().Addr) {
		x := &q.p.Net.Edges[e]
		if (x.Kind == network.Contact || x.Kind == network.Mate) && x.Pole != schema.Ground {
			out = append(out, e)
		}
	}
	return out
}

// verdicts asks of current and of volts: one answer, but two where one of two that are wrong is sure.
func (q *part) verdicts() []lint.Verdict {
	edges := q.contacts()
	v := lint.Verdict{Subject: q.block, Outcome: lint.Holds, Word: lint.Warning}
	if len(edges) == 0 {
		return []lint.Verdict{v}
	}
	current, volts := q.current(v, edges), q.voltage(v, edges)
	current.Cause, volts.Cause = "current", "volts"
	switch {
	case current.Outcome == lint.NotProven && volts.Outcome == lint.NotProven:
		current.Missing = append(current.Missing, volts.Missing...)
		return []lint.Verdict{current}
	case current.Outcome != lint.Holds && volts.Outcome != lint.Holds:
		return []lint.Verdict{current, volts}
	case current.Outcome != lint.Holds:
		return []lint.Verdict{current}
	case volts.Outcome != lint.Holds:
		return []lint.Verdict{volts}
	}
	v.Numbers = append(current.Numbers, volts.Numbers...)
	return []lint.Verdict{v}
}

// flow is the largest current through one contact, with the edge it is read at.
type flow struct {
	n        derive.Number
	lacks    []lint.Missing
	at       int
	starting bool
	complete bool
}

// through reads a contact's largest current: that of its feed where a return carries just that, less
// what a starter draws.
func through(p *lint.Pass, edge int, peaks bool) flow {
	at := edge
	if f := p.Circuit.FeedOf(edge); f >= 0 {
		at = f
	}
	w := p.Circuit.Worst(at)
	f := flow{n: w.Capped, lacks: p.Circuit.LacksAt(at), at: at, complete: w.Complete}
	switch {
	case p.Circuit.CrankingAt(edge):
		f.n, f.lacks = p.Circuit.Beside(at)
	case peaks && w.Peak.Value > w.Steady.Value && w.Peak.Value > f.n.Value:
		f.n, f.starting = w.Peak, true
	}
	return f
}

func (q *part) current(v lint.Verdict, edges []int) lint.Verdict {
	worst, lacks, complete := flow{at: -1}, []lint.Missing(nil), true
	var flows []flow
	for _, e := range edges {
		flows = append(flows, through(q.p, e, true))
	}
	for _, f := range append(flows, q.common(edges)...) {
		if worst.at < 0 || f.n.Value > worst.n.Value {
			worst = f
		}
		if len(f.lacks) > 0 && !(q.rating.Set && q.p.Circuit.Guarded(f.at, q.rating.Value)) {
			lacks = append(lacks, f.lacks...)
		}
		complete = complete && f.complete
	}
	return q.against(v, worst, lacks, complete)
}

// common is what each terminal carries for several others that a position joins to it: the sum of what its contacts do,
// and no more than the wires on it.
func (q *part) common(edges []int) []flow {
	n := q.p.Net
	var out []flow
	seen := map[network.NodeID]bool{}
	for _, e := range edges {
		for _, id := range []network.NodeID{n.Edges[e].A, n.Edges[e].B} {
			if !seen[id] {
				seen[id] = true
				out = append(out, q.atTerminal(id, edges)...)
			}
		}
	}
	return out
}

func (q *part) atTerminal(id network.NodeID, edges []int) []flow {
	n, addr := q.p.Net, q.block.Header().Addr
	var own []int
	outer := 0.0
	for _, k := range n.At(id) {
		switch x := &n.Edges[k]; {
		case slices.Contains(edges, k):
			own = append(own, k)
		case x.Kind != network.Contact && x.Kind != network.Mate || x.Addr != addr:
			outer += through(q.p, k, true).n.Value // a wire, or what it sits on
		}
	}
	if outer == 0 {
		outer = math.Inf(1)
	}
	var out []flow
	for i, e := range own {
		f := through(q.p, e, true)
		parts := []derive.Number{f.n}
		for k, o := range own {
			if k != i && bothClosed(&n.Edges[e], &n.Edges[o], n.Var(addr)) {
				parts = append(parts, through(q.p, o, true).n)
			}
		}
		sum := 0.0
		for _, x := range parts {
			sum += x.Value
		}
		if sum = min(sum, outer); len(parts) > 1 && sum > f.n.Value {
			f.n = derive.Compute("largest current at terminal "+n.Nodes[id].Terminal+" of "+lint.Quote(q.block), "I", sum, "A", "sum of its contacts, no more than its wires carry", parts...)
			out = append(out, f)
		}
	}
	return out
}

// bothClosed says whether some position of a switch closes two contacts.
func bothClosed(a, b *network.Edge, of int) bool {
	at := func(e *network.Edge) []bool {
		for _, l := range e.When {
			if l.Var == of {
				return l.At
			}
		}
		return nil
	}
	x, y := at(a), at(b)
	for i := range min(len(x), len(y)) {
		if x[i] && y[i] {
			return true
		}
	}
	return false
}

// against holds the worst current against the rating.
func (q *part) against(v lint.Verdict, f flow, lacks []lint.Missing, complete bool) lint.Verdict {
	v.Numbers = lint.Known(lacks, f.n)
	addr := q.block.Header().Addr
	if !q.rating.Set && f.n.Value == 0 {
		return idle(v, lacks, complete)
	}
	if !q.rating.Set {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: addr, Attribute: "rating"}}
		v.Message = fmt.Sprintf("%s carries up to %s, and what it is made for is not written.", lint.Quote(q.block), f.n.Text())
		if q.hand {
			v.Word, v.Group = lint.Notice, "hand switches"
			v.Message = fmt.Sprintf("The hand switch before %s carries up to %s; a branch cannot write what it is made for.", lint.Quote(q.block), f.n.Text())
		}
		return v
	}
	rating := derive.Read("rating of "+lint.Quote(q.block), "Ir", q.rating.Value, "A", addr, "rating", q.rating.Range)
	v.Numbers = append(v.Numbers, rating)
	over := f.n.Value > rating.Value*(1+1e-9)
	switch {
	case over && (f.starting || !q.p.Circuit.Guarded(f.at, rating.Value)):
		v.Outcome, v.State = lint.Violated, q.p.Circuit.StateOf(f.at)
		when := ""
		if f.starting {
			when = " while a load starts"
		}
		v.Message = fmt.Sprintf("One contact of %s carries up to %s%s, and is made for %s.", lint.Quote(q.block), f.n.Text(), when, rating.Text())
	case len(lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("What a contact of %s carries is not known: %s, and %s is missing.",
			lint.Quote(q.block), ofRating(f.n, rating), lint.Lacking(lacks[0], true))
	case !complete:
		return lint.Unfinished(q.block, lint.Warning)
	}
	return v
}

// idle answers for a part without a rating that carries nothing as far as is known.
func idle(v lint.Verdict, lacks []lint.Missing, complete bool) lint.Verdict {
	switch {
	case len(lacks) > 0:
		v.Outcome = lint.NotProven
		v.Missing = append([]lint.Missing{{Subject: v.Subject.Header().Addr, Attribute: "rating"}}, lacks...)
		v.Message = fmt.Sprintf("Neither what %s carries nor what it is made for is known: %s is missing, and its rating.", lint.Quote(v.Subject), lint.Lacking(lacks[0], true))
	case !complete:
		return lint.Unfinished(v.Subject, v.Word)
	}
	return v
}

// ofRating tells what is known of a current beside a rating; a zero says nothing.
func ofRating(n, rating derive.Number) string {
	if n.Value == 0 {
		return "it is made for " + rating.Text()
	}
	return fmt.Sprintf("at least %s of the %s it is made for", n.Text(), rating.Text())
}

// usualBattery is the voltage in V up to which a figure for alternating current is held good for direct.
const usualBattery = 32

// voltage asks whether the part can open the volts of its circuit.
func (q *part) voltage(v lint.Verdict, edges []int) lint.Verdict {
	if !q.opens || q.hand {
		return v
	}
	var high derive.Number
	var lacks []lint.Missing
	var state []lint.Position
	ac := false
	for _, e := range edges {
		for _, id := range []network.NodeID{q.p.Net.Edges[e].A, q.p.Net.Edges[e].B} {
			n, at, m := q.p.Circuit.Highest(id)
			lacks = append(lacks, m...)
			if n.Kind != 0 && (high.Kind == 0 || n.Value > high.Value) {
				high, ac, state = n, q.p.Net.Nodes[id].AC, nil
				if at != nil {
					state = at.Witness([]int{e})
				}
			}
		}
	}
	most, marked := rated(q.volts, ac)
	addr := q.block.Header().Addr
	if high.Kind == 0 && len(lacks) == 0 {
		return v // nothing with volts of its own reaches it
	}
	v.Numbers = lint.Known(nil, high)
	if most.Set {
		v.Numbers = append(v.Numbers, derive.Read("volts that "+lint.Quote(q.block)+" can break", "Vr", most.Value, "V", addr, "voltage_rating", most.Range))
	}
	switch {
	case marked && !most.Set && !ac && high.Value > usualBattery:
		v.Outcome, v.State = lint.Violated, state
		v.Message = fmt.Sprintf("%s opens up to %s of direct current, and is rated for alternating current only.", lint.Quote(q.block), high.Text())
	case marked && !most.Set && !ac && len(lacks) == 0:
	case most.Set && high.Value > most.Value:
		v.Outcome, v.State = lint.Violated, state
		v.Message = fmt.Sprintf("%s opens up to %s, and can break %s.", lint.Quote(q.block), high.Text(), derive.Text(most.Value, "V"))
	case !most.Set && !(marked && !ac):
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: addr, Attribute: "voltage_rating"}}
		v.Message = fmt.Sprintf("%s opens up to %s, and what it can break is not written.", lint.Quote(q.block), high.Text())
		if high.Kind == 0 {
			v.Missing = append(v.Missing, lacks...)
			v.Message = fmt.Sprintf("Neither how many volts %s opens is known nor what it can break: %s is missing, and its voltage rating.", lint.Quote(q.block), lint.Lacking(lacks[0], true))
		}
	case len(lacks) > 0:
		v.Outcome, v.Missing = lint.NotProven, lacks
		v.Message = fmt.Sprintf("How many volts %s opens is not known: %s is missing.", lint.Quote(q.block), lint.Lacking(lacks[0], true))
	}
	return v
}

// rated is the largest figure that speaks for a kind of current; marked says that there is a figure at all.
func rated(list schema.Quantities, ac bool) (most schema.Quantity, marked bool) {
	wrong := quantity.AC
	if ac {
		wrong = quantity.DC
	}
	for _, x := range list.List {
		marked = true
		if x.Kind != wrong && (!most.Set || x.Value > most.Value) {
			most = x
		}
	}
	return most, marked
}
