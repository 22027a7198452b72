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
		"before it makes, a plug is pulled, a battery is lifted out, a source goes that a relay on the way follows, a device opens, or a BMS opens. Batteries behind diodes count.",
	Why:     "A voltage spike takes out the alternator, and electronics people steer and see by.",
	Numbers: "None. Load dump on a 12 V alternator is tens of volts for some 0.1 s, from memory.",
	Not: "Switches, plugs and devices where the alternator has a battery of its own: one that no switch, plug or converter other than a diode parts from it, there and back. A switch that follows the engine, and one that can be " +
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

func (a *alternator) ask() {
	if a.zone == nil {
		return
	}
	views, complete := a.Space.Views(a.zone, explore.All())
	for _, v := range views {
		if !v.HasSource(a.source) {
			continue
		}
		switch held := a.held(v, -1); {
		case !held && !a.own:
			a.thrown(v)
		case held && v.Transit == nil:
			a.cutOff(v)
			a.opened(v)
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
	for _, e := range a.edges() {
		if k := a.Net.Edges[e].Kind; k == network.Contact || k == network.Mate || k == network.Element {
			add(a.Net.Edges[e].Addr)
		}
	}
	for _, i := range a.batteries {
		add(a.Net.Sources[i].Addr)
	}
	return out
}

// edges lists what joins the alternator to batteries, there and back.
func (a *alternator) edges() []int { return slices.Concat(a.zone.Edges, a.zone.Returns) }

// thrown looks for one move that led to a state in which the alternator has no battery.
func (a *alternator) thrown(v *explore.View) {
	if t := v.Transit; t != nil {
		if !t.Throw.Overlap && (a.had(v, t.Var, t.Throw.From) || a.had(v, t.Var, t.Throw.To)) {
			a.note(v, t.Var, t.Throw.Assumed)
		}
		return
	}
	for _, i := range a.vars {
		if i == a.Net.Sources[a.source].Present || slices.Contains(a.zone.Vars, i) && !a.followed(i) && !v.Without(i, a.bare) {
			continue
		}
		for from := range a.Net.Vars[i].Positions {
			if a.next(i, from, v.At(i)) && a.had(v, i, from) {
				a.note(v, i, false)
			}
		}
	}
}

// followed says whether something that the zone turns on goes along with a variable.
func (a *alternator) followed(variable int) bool {
	return slices.ContainsFunc(a.zone.Vars, func(i int) bool {
		return a.Net.Vars[i].Follower && slices.Contains(movers(a.Net, []int{i}), variable)
	})
}

// next says whether one move leads from a position to another.
func (a *alternator) next(variable, from, to int) bool {
	x, ok := schema.Lookup[*schema.Switch](a.Plan, a.Net.Vars[variable].Addr)
	return from != to && (!ok || x.AnyOrder.True() || from-to == 1 || to-from == 1)
}

// had says whether the alternator has a battery in the allowed state that differs in one variable.
func (a *alternator) had(v *explore.View, variable, from int) bool {
	at := map[int]int{}
	for _, i := range a.vars {
		if v.At(i) >= 0 {
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
	case isSwitch && v.Transit == nil && !byHand(x):
		move = "Opening " + lint.Quote(b)
	case isSwitch && v.Transit != nil:
		move = "For a moment, throwing " + lint.Quote(b)
	case !isSwitch && b.Header().Type == "connector":
		move = "Pulling " + lint.Quote(b)
	case !isSwitch && !removable(b):
		move = "Losing " + lint.Quote(b) + a.via(variable)
	case !isSwitch:
		move = "Lifting out " + lint.Quote(b) + a.via(variable)
	}
	w.Message = fmt.Sprintf("%s leaves %s running with no battery.", move, lint.Quote(s))
	if assumed {
		w.Outcome, w.Missing = lint.NotProven, []lint.Missing{{Subject: addr, Attribute: "transition"}}
		w.Message = fmt.Sprintf("Unless %s makes before it breaks, it leaves %s running with no battery for a moment when it is thrown.", lint.Quote(b), lint.Quote(s))
	}
	a.keep(addr, w)
}

// via tells of the relay that goes along with a variable on which the zone does not turn itself.
func (a *alternator) via(variable int) string {
	if slices.Contains(a.zone.Vars, variable) {
		return ""
	}
	for _, i := range a.zone.Vars {
		if a.Net.Vars[i].Follower && slices.Contains(movers(a.Net, []int{i}), variable) {
			return ", which " + lint.Quote(a.Plan.Block(a.Net.Vars[i].Addr)) + " follows,"
		}
	}
	return ""
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
