package switching

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

var opensChargingSource = &lint.Rule{
	ID:      "switching/opens-charging-source",
	Claim:   "Throwing this switch leaves a running alternator with no battery.",
	Words:   []lint.Severity{lint.Warning},
	Subject: "switch; plug, overcurrent device and battery beside an alternator",
	When: "In a state with the engine running and a battery on the alternator, one event leaves it with none: a switch is thrown to its next position, or stands between two while it breaks " +
		"before it makes, a plug is pulled, a battery is lifted out, a device opens, or a BMS opens.",
	Why:     "A voltage spike takes out the alternator, and electronics people steer and see by.",
	Numbers: "None. Load dump on a 12 V alternator is tens of volts for some 0.1 s, from memory.",
	Not: "Switches, plugs and devices where the alternator has a battery of its own: one that no switch, plug or converter parts from it. A switch that follows a source, and one that can be " +
		"thrown only in modes in which the engine stands. A converter whose input dies: its source keeps its battery. A field disconnect, which a plan does not show.",
	Offer: "The alternator on the starting battery, the house through a converter; a make-before-break switch with field disconnect; a spike protector as second best.",
	Meter: "Engine off: continuity from the alternator's output to a battery post in each position. Never test by opening under charge.",
	Cites: []lint.Citation{
		{Ref: "engine makers' instructions", Standing: lint.Read, Note: "never open the battery switch with the engine running"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "an alternator never loses its battery"},
	},
	Remedy: true,
	Since:  "0.1",
	Run:    chargingOpened,
}

func chargingOpened(p *lint.Pass) []lint.Verdict {
	found := map[string]lint.Verdict{}
	asked := map[string]bool{}
	for i := range p.Net.Sources {
		if p.Net.Sources[i].Kind.Value == "alternator" {
			newAlternator(p, i, found, asked).ask()
		}
	}
	var out []lint.Verdict
	for _, b := range p.Plan.Blocks() {
		addr := b.Header().Addr
		_, isSwitch := b.(*schema.Switch)
		if v, ok := found[addr]; ok {
			out = append(out, v)
		} else if isSwitch || asked[addr] {
			out = append(out, lint.Verdict{Subject: b, Outcome: lint.Holds})
		}
	}
	return out
}

// alternator is one alternator with the batteries that positions can join to it.
type alternator struct {
	*lint.Pass
	source    int
	batteries []int
	zone      *network.Zone
	own       bool // a battery that nothing parts from it
	found     map[string]lint.Verdict
	asked     map[string]bool
}

func newAlternator(p *lint.Pass, source int, found map[string]lint.Verdict, asked map[string]bool) *alternator {
	a := &alternator{Pass: p, source: source, found: found, asked: asked}
	s := &p.Net.Sources[source]
	z := p.Net.ZoneOf(s.Hot)
	if z == nil {
		return a
	}
	keep := []network.NodeID{s.Hot}
	for _, i := range z.Sources {
		if b := &p.Net.Sources[i]; b.Kind.Value == "battery" {
			a.batteries, keep = append(a.batteries, i), append(keep, b.Hot)
			a.own = a.own || b.Present < 0 && wired(p.Net, s.Hot, b.Hot)
		}
	}
	if len(a.batteries) > 0 {
		a.zone = p.Net.Trim(z, keep...)
	}
	return a
}

// wired says whether wire and devices alone join two live nodes.
func wired(n *network.Network, from, to network.NodeID) bool {
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			k := &n.Edges[e]
			at := k.Other(queue[0])
			if k.Kind != network.Contact && k.Kind != network.Mate && len(k.When) == 0 && !n.Nodes[at].Return && !seen[at] {
				seen[at] = true
				queue = append(queue, at)
			}
		}
	}
	return seen[to]
}

// on lists the batteries that the alternator has in a view.
func (a *alternator) on(v *explore.View) []int {
	var out []int
	s := &a.Net.Sources[a.source]
	for _, i := range a.batteries {
		b := &a.Net.Sources[i]
		if v.HasSource(i) && v.Joined(s.Hot, b.Hot) && (v.Joined(s.Ret, b.Ret) || v.Series(a.source).Meets(v.Series(i))) {
			out = append(out, i)
		}
	}
	return out
}

func (a *alternator) bare(v *explore.View) bool { return len(a.on(v)) == 0 }

func (a *alternator) ask() {
	if a.zone == nil {
		return
	}
	views, complete := a.Space.Views(a.zone, explore.All())
	for _, v := range views {
		if !v.HasSource(a.source) {
			continue
		}
		on := a.on(v)
		switch {
		case len(on) == 0 && !a.own:
			a.thrown(v)
		case len(on) > 0 && v.Transit == nil:
			a.opened(v, on)
		}
	}
	for _, b := range a.parts() {
		addr := b.Header().Addr
		a.asked[addr] = true
		if _, ok := a.found[addr]; !ok && !complete {
			a.found[addr] = lint.Unfinished(b, lint.Warning)
		}
	}
}

// parts lists what is asked about: everything on the zone's edges that opens, and the batteries.
func (a *alternator) parts() []schema.Block {
	var out []schema.Block
	seen := map[string]bool{}
	add := func(addr string) {
		if b := a.Plan.Block(addr); b != nil && !seen[addr] {
			seen[addr] = true
			out = append(out, b)
		}
	}
	for _, e := range a.zone.Edges {
		if k := a.Net.Edges[e].Kind; k == network.Contact || k == network.Mate || k == network.Element {
			add(a.Net.Edges[e].Addr)
		}
	}
	for _, i := range a.batteries {
		add(a.Net.Sources[i].Addr)
	}
	return out
}

// thrown looks for one move that led to a state in which the alternator has no battery.
func (a *alternator) thrown(v *explore.View) {
	if t := v.Transit; t != nil {
		if !t.Throw.Overlap && (a.had(v, t.Var, t.Throw.From) || a.had(v, t.Var, t.Throw.To)) {
			a.note(v, t.Var, t.Throw.Assumed)
		}
		return
	}
	for _, i := range a.zone.Vars {
		x := &a.Net.Vars[i]
		if x.Follower || i == a.Net.Sources[a.source].Present || !v.Without(i, a.bare) {
			continue
		}
		for from := range x.Positions {
			if a.next(i, from, v.At(i)) && a.had(v, i, from) {
				a.note(v, i, false)
			}
		}
	}
}

// next says whether one move leads from a position to another.
func (a *alternator) next(variable, from, to int) bool {
	x, ok := schema.Lookup[*schema.Switch](a.Plan, a.Net.Vars[variable].Addr)
	return from != to && (!ok || x.AnyOrder.True() || from-to == 1 || to-from == 1)
}

// had says whether the alternator has a battery in the allowed state that differs in one variable.
func (a *alternator) had(v *explore.View, variable, from int) bool {
	at := map[int]int{}
	for _, i := range a.zone.Vars {
		if !a.Net.Vars[i].Follower && v.At(i) >= 0 {
			at[i] = v.At(i)
		}
	}
	at[variable] = from
	had := false
	a.Space.List(a.zone, explore.Ask{At: at}, func(w *explore.View) bool {
		had = w.HasSource(a.source) && !a.bare(w)
		return !had
	})
	return had
}

// note keeps what a move does; what is certain before what a transition left out leaves open.
func (a *alternator) note(v *explore.View, variable int, assumed bool) {
	addr := a.Net.Vars[variable].Addr
	b := a.Plan.Block(addr)
	x, isSwitch := b.(*schema.Switch)
	if isSwitch && a.standing(x) {
		return
	}
	s := a.Net.Sources[a.source].Source
	w := lint.Verdict{Subject: b, Outcome: lint.Violated, Word: lint.Warning, Cause: s.Addr, Related: []string{s.Addr}}
	w.State = v.State(a.matters(v, variable))
	move := "Throwing " + lint.Quote(b)
	switch {
	case isSwitch && v.Transit != nil:
		move = "For a moment, throwing " + lint.Quote(b)
	case !isSwitch && b.Header().Type == "connector":
		move = "Pulling " + lint.Quote(b)
	case !isSwitch:
		move = "Lifting out " + lint.Quote(b)
	}
	w.Message = fmt.Sprintf("%s leaves %s running with no battery.", move, lint.Quote(s))
	if assumed {
		w.Outcome, w.Missing = lint.NotProven, []lint.Missing{{Subject: addr, Attribute: "transition"}}
		w.Message = fmt.Sprintf("Unless %s makes before it breaks, it leaves %s running with no battery for a moment when it is thrown.", lint.Quote(b), lint.Quote(s))
	}
	a.keep(addr, w)
}

// keep notes a verdict: certain before not, fewest positions first.
func (a *alternator) keep(addr string, w lint.Verdict) {
	old, ok := a.found[addr]
	if !ok || graver(w, old) || old.Outcome == w.Outcome && len(w.State) < len(old.State) {
		a.found[addr] = w
	}
}

// matters lists the variables that make it so: the one moved, the engine, and what keeps other batteries off.
func (a *alternator) matters(v *explore.View, variable int) []int {
	vars := v.Keep(a.zone.Vars, a.bare)
	if variable >= 0 {
		vars = append(vars, variable)
	}
	if i := a.Net.Sources[a.source].Present; i >= 0 {
		vars = append(vars, i)
	}
	return vars
}

// standing says whether a switch can be thrown only in modes in which the engine stands.
func (a *alternator) standing(x *schema.Switch) bool {
	if !x.ReachableWhile.Set {
		return false
	}
	runs := func(m *schema.Mode) bool {
		return x.ReachableWhile.Has(m.Addr) && !slices.ContainsFunc(m.State.List, func(q schema.Pin) bool {
			return q.Ref.Addr == a.Net.Sources[a.source].Addr && q.Position.Value == "absent"
		})
	}
	return !slices.ContainsFunc(a.Plan.Modes, runs)
}

// opened looks for a device, or the BMS of the only battery, that parts the alternator from it.
func (a *alternator) opened(v *explore.View, on []int) {
	s := a.Net.Sources[a.source].Source
	after := func(b schema.Block, how, says string) lint.Verdict {
		addr := b.Header().Addr
		w := lint.Verdict{Subject: b, Outcome: lint.Violated, Word: lint.Warning, Cause: s.Addr, Related: []string{s.Addr}}
		w.State = append([]lint.Position{{Addr: "after", Position: addr + ": " + how}}, v.State(a.zone.Vars)...)
		w.Message = fmt.Sprintf("If %s opens, %s runs on with no battery.", says, lint.Quote(s))
		return w
	}
	if len(on) == 1 {
		b := a.Net.Sources[on[0]].Source
		lithium := b.Chemistry.Value == "lifepo4" || b.Chemistry.Value == "li-ion"
		switch w := after(b, "bms opens", "the BMS of "+lint.Quote(b)); {
		case b.BMS != nil:
			a.keep(b.Addr, w)
		case lithium || !b.Chemistry.Set:
			w.Outcome, w.Missing = lint.NotProven, []lint.Missing{{Subject: b.Addr, Attribute: "bms"}}
			w.Message += " Whether it has one is not written."
			a.keep(b.Addr, w)
		}
	}
	if a.own {
		return
	}
	done := map[string]bool{}
	for _, e := range a.zone.Edges {
		if f := a.Net.Edges[e].Fuse; f != nil && !done[f.Addr] && v.Conducts(e) {
			done[f.Addr] = true
			if a.bare(v.Opened(f.Addr)) {
				a.keep(f.Addr, after(f, "opens", lint.Quote(f)))
			}
		}
	}
}
