package bonding

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/schema"
)

var neutralBondCount = &lint.Rule{
	ID:      "bonding/neutral-bond-count",
	Claim:   "In some state neutral and ground are joined nowhere, or in two places.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "supply of alternating current: source or inverter",
	When: "In some state at rest a supply that can run feeds a load or a charger, and the places where its neutral and its ground are joined to each other are not exactly one. " +
		"`bonded` counts wherever it is joined to what is live, whether or not that supply runs; `switched` counts while that supply runs and no other feeds the same lines; a wire drawn from neutral to ground counts.",
	Why: "With none, a wire that touches the metal skin trips nothing and waits for a hand: danger where outlets are fed. With two, the ground carries part of the load's current, and residual " +
		"current devices trip for no fault or not for one: warning; so is none where no outlet is fed.",
	Numbers: "Exactly one.",
	Not:     "Appliances that join neutral and ground inside. One appliance straight on a floating supply, with no panel between. A ground that is drawn nowhere: bonding/ground-path-missing. What happens while a switch is thrown.",
	Offer:   "An inverter with a bonding relay; a bonding plug for a floating generator and for nothing else; never a jumper in the panel.",
	Meter: "Every plug pulled and every supply off, then with one supply plugged in and still switched off: ohms from neutral to ground at an outlet, under 1 where it bonds and open where it floats. " +
		"A relay's bond shows only live: that, like anything live, is an electrician's.",
	Cites: []lint.Citation{
		{Ref: "a column on bonding of generators and vehicles", Standing: lint.Read, Note: "neutral and ground of a vehicle stay separate; one bond, at the supply", For: []string{"us-rv"}},
		{Ref: "inverter makers' manuals", Standing: lint.Read, Note: "an inverter/charger switches the bond by a relay"},
		{Ref: "an article on portable packs", Standing: lint.Read, Note: "their outlets mostly float"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "one bond, at the supply in use"},
	},
	Remedy: true,
	Since:  "0.1",
	Run:    bonds,
}

func bonds(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, m := range p.Circuit.Mains() {
		for _, s := range m.Suppliers {
			out = append(out, bondsOf(p, m, s))
		}
	}
	return out
}

// tally is the bonds of what one supply feeds in one state: least to most, as what is not written may be.
type tally struct {
	least, most int
	at          []string // names of the parts that join for certain
	lacks       []lint.Missing
	outlets     bool
}

// grade orders tallies: what is wrong for certain first, then what may be.
func (t tally) grade() (lint.Outcome, lint.Severity) {
	none := lint.Warning
	if t.outlets {
		none = lint.Danger
	}
	switch {
	case t.most == 0:
		return lint.Violated, none
	case t.least > 1:
		return lint.Violated, lint.Warning
	case t.least == 1 && t.most == 1:
		return lint.Holds, none
	case t.least == 0:
		return lint.NotProven, none
	}
	return lint.NotProven, lint.Warning
}

func (t tally) rank() int {
	o, w := t.grade()
	switch o {
	case lint.Violated:
		return 20 + int(w)
	case lint.NotProven:
		return 10 + int(w)
	}
	return 0
}

const looked = 16 // states of one rank among which the fewest positions are looked for

func bondsOf(p *lint.Pass, m *circuit.Mains, s circuit.Supplier) lint.Verdict {
	subject := m.Block(s)
	list, complete := p.Space.Views(m.Zone, p.Space.Closed(explore.All()))
	var worst []found
	for _, v := range list {
		if v.Transit != nil {
			continue
		}
		running, known := together(m, s, v)
		complete = complete && known
		for _, on := range running {
			t, fed := count(p, m, s, v, on)
			switch {
			case !fed:
			case len(worst) == 0 || t.rank() > worst[0].rank():
				worst = []found{{t, v, on}}
			case t.rank() == worst[0].rank() && len(worst) < looked:
				worst = append(worst, found{t, v, on})
			}
		}
	}
	switch {
	case len(worst) > 0 && worst[0].rank() > 0:
		return verdict(p, m, s, worst)
	case !complete:
		return lint.Unfinished(subject, lint.Danger)
	case len(worst) > 0:
		return lint.Verdict{Subject: subject, Outcome: lint.Holds, Numbers: []derive.Number{worst[0].number(subject)}}
	}
	return lint.Verdict{Subject: subject, Outcome: lint.Holds}
}

// found is a tally with its state.
type found struct {
	tally
	view *explore.View
	on   []circuit.Supplier // the supply and the inverters that run beside it
}

func (f found) number(b schema.Block) derive.Number {
	return derive.Compute("places where neutral and ground of "+lint.Quote(b)+" are joined", "n", float64(f.least), "", "bonds that are joined to what is live")
}

// count tells the bonds of what a supply feeds in a view; fed is false where it feeds nothing that matters.
func count(p *lint.Pass, m *circuit.Mains, s circuit.Supplier, v *explore.View, on []circuit.Supplier) (t tally, fed bool) {
	y := newSystem(p, m, s, v, on)
	if fed, t.outlets = y.feeds(); !fed {
		return t, false
	}
	for _, o := range m.Suppliers {
		if !y.neutral(m.Port(o).Ret) {
			continue
		}
		bond := m.NeutralBond(o)
		switch {
		case !bond.Set:
			t.maybe(lint.Missing{Subject: m.Block(o).Header().Addr, Attribute: "neutral_bond"})
		case bond.Value == "bonded", bond.Value == "switched" && y.running(o) && !y.passed(o):
			y.bond(&t, m.Port(o).Ground, lint.Quote(m.Block(o)))
		}
	}
	for _, e := range m.Zone.Returns {
		if !p.Net.Bond(e) || !v.Conducts(e) {
			continue
		}
		hot, ground := p.Net.Edges[e].A, p.Net.Edges[e].B
		if !p.Net.Neutral(hot) {
			hot, ground = ground, hot
		}
		if y.neutral(hot) {
			y.bond(&t, ground, lint.Quote(p.Plan.Block(p.Net.Edges[e].Addr)))
		}
	}
	return t, true
}

func (t *tally) maybe(lacks lint.Missing) {
	t.most++
	t.lacks = append(t.lacks, lacks)
}

// verdict tells the worst of the states that were found, by the fewest positions.
func verdict(p *lint.Pass, m *circuit.Mains, s circuit.Supplier, all []found) lint.Verdict {
	var best found
	var state []lint.Position
	for i, f := range all {
		if at := f.state(p, m, s); i == 0 || len(at) < len(state) {
			best, state = f, at
		}
	}
	subject := m.Block(s)
	v := lint.Verdict{Subject: subject, State: state, Missing: best.lacks, Numbers: []derive.Number{best.number(subject)}}
	v.Outcome, v.Word = best.grade()
	where := ""
	if len(state) > 0 {
		where = ", with " + lint.Positions(p.Plan, state)
	}
	switch {
	case v.Outcome == lint.NotProven:
		v.Cause, v.Numbers = "unknown", nil
		v.Message = fmt.Sprintf("How often neutral and ground of what %s feeds are joined is not known%s: %s is not written. It may be from %d to %d places; one is right.",
			lint.Quote(subject), where, lint.Lacking(best.lacks[0], false), best.least, best.most)
		return v
	case best.most == 0:
		v.Cause = "none"
		v.Message = fmt.Sprintf("Neutral and ground of what %s feeds are joined nowhere%s: a live wire that touches metal trips nothing.", lint.Quote(subject), where)
	default:
		v.Cause = "several"
		v.Message = fmt.Sprintf("Neutral and ground of what %s feeds are joined in %d places%s: at %s.", lint.Quote(subject), best.least, where, lint.And(best.at...))
	}
	v.Missing = nil
	return v
}

// state is the positions without which the tally would be another, or nothing would be fed.
func (f found) state(p *lint.Pass, m *circuit.Mains, s circuit.Supplier) []lint.Position {
	still := func(v *explore.View) bool {
		if ok, _ := m.Runs(v, f.on...); !ok {
			return false
		}
		t, fed := count(p, m, s, v, f.on)
		return fed && t.rank() == f.rank()
	}
	var vars []int
	for _, i := range f.view.Zone.Vars {
		if f.view.Without(i, still) {
			vars = append(vars, i)
		}
	}
	return lint.SortState(append(f.view.State(told(p, f.view, vars)), m.Feed(f.view, f.on...)...))
}

// told leaves out the variables whose positions interlocks force once the others stand as they do.
func told(p *lint.Pass, v *explore.View, vars []int) []int {
	at := map[int]int{}
	for _, i := range vars {
		at[i] = v.At(i)
	}
	return slices.DeleteFunc(vars, func(i int) bool {
		here, forced := at[i], true
		for q := range p.Net.Vars[i].Positions {
			if q != here && forced {
				at[i] = q
				ok, known := p.Space.Allows(at)
				forced = known && !ok
			}
		}
		if at[i] = here; forced {
			delete(at, i)
		}
		return forced
	})
}
