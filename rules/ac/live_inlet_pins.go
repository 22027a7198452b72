package ac

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

var liveInletPins = &lint.Rule{
	ID:      "ac/live-inlet-pins",
	Claim:   "The bare pins of an inlet are live when it is unplugged.",
	Words:   []lint.Severity{lint.Danger, lint.Warning},
	Harm:    true,
	Subject: "connector of alternating current",
	When: "A connector is unmated, and the side that is `exposed` has more than 30 V AC on it from a generator, an inverter or any other supply that can run in that state. Also: its neutral " +
		"pin stays joined to a supply that runs and that bonds neutral and ground nowhere.",
	Why:     "Bare pins at a lethal voltage, at hand height, often wet, and nothing to warn: danger. The neutral of a floating supply is dead until the first fault anywhere on board: warning.",
	Numbers: "30 V AC. A supply of which the voltage is not written counts as above it.",
	Not: "An inlet with shutters (`exposed = \"none\"`), and a connector that is never taken apart. Direct current: connector/live-contacts-exposed. Stray volts that a meter " +
		"shows on a wire that is joined to nothing.",
	Offer: "A two-pole transfer switch between the inlet and everything else that can supply.",
	Meter: "Cord unplugged, generator off, inverter switched off at its disconnect: ohms from each pin of the inlet to the other supplies' line and neutral, in each position. " +
		"A reading near zero means stop. Anything live is an electrician's.",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 articles 551 and 702", Standing: lint.FromMemory, Note: "by intent: a supply's plug is dead when it is out", For: []string{"us-rv", "cabin"}},
		{Ref: "a builder's report", Standing: lint.Read, Note: "inlet pins made live by the inverter"},
		{Ref: "common practice", Standing: lint.CommonPractice},
	},
	Remedy: true,
	Folds:  []string{"connector/live-contacts-exposed"},
	Since:  "0.1",
	Run:    barePins,
}

const touchVolts = 30.0 // V AC

func barePins(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, x := range p.Plan.Connectors {
		if p.Net.Node(x.Addr+".fixed.line") != network.None {
			out = append(out, pins(p, x))
		}
	}
	return out
}

// sides lists the sides of a connector that may be touched.
func sides(x *schema.Connector) []string {
	switch {
	case !x.Exposed.Set:
		return []string{"fixed", "free"}
	case x.Exposed.Value == "none":
		return nil
	}
	return []string{x.Exposed.Value}
}

func pins(p *lint.Pass, x *schema.Connector) lint.Verdict {
	holds := lint.Verdict{Subject: x, Outcome: lint.Holds, Word: lint.Danger}
	apart := p.Net.Var(x.Addr)
	var doubt, neutral lint.Verdict
	for _, side := range sides(x) {
		hot, ret := p.Net.Node(x.Addr+"."+side+".line"), p.Net.Node(x.Addr+"."+side+".neutral")
		for _, m := range p.Circuit.Mains() {
			if apart < 0 || m.Zone.Local(hot) < 0 {
				continue
			}
			best, by, complete := atPin(p, m, apart, hot)
			switch {
			case best != nil:
				v := livePin(p, m, x, side, best, by)
				if v.Outcome == lint.Violated {
					return v
				}
				doubt = v
			case !complete:
				doubt = lint.Unfinished(x, lint.Danger)
			case neutral.Outcome != lint.Violated:
				if v := neutralPin(p, m, x, side, apart, ret); v.Outcome != 0 {
					neutral = v
				}
			}
		}
	}
	switch {
	case doubt.Outcome != 0:
		return doubt
	case neutral.Outcome != 0:
		return neutral
	}
	return holds
}

// atPin finds the plainest state in which a connector is apart and a supply is on its pin.
func atPin(p *lint.Pass, m *circuit.Mains, apart int, pin network.NodeID) (best *meeting, by circuit.Supplier, complete bool) {
	list, complete := views(p, m)
	for _, v := range list {
		if v.At(apart) != 0 {
			continue
		}
		for _, s := range m.Suppliers {
			if q := m.Volts(s); q.Set && q.Value <= touchVolts {
				continue
			}
			if x := meet(p, m, v, m.Port(s).Hot, pin, s); x != nil && x.better(best) {
				best, by = x, s
			}
		}
	}
	return best, by, complete
}

func livePin(p *lint.Pass, m *circuit.Mains, x *schema.Connector, side string, at *meeting, by circuit.Supplier) lint.Verdict {
	v := lint.Verdict{Subject: x, Word: lint.Danger, Cause: side + " by " + m.Block(by).Header().Addr, Related: append([]string{m.Block(by).Header().Addr}, parts(p.Net, at.way)...)}
	if q := m.Volts(by); q.Set {
		attribute := "voltage"
		if by.Source < 0 {
			attribute = "output voltage"
		}
		v.Numbers = []derive.Number{derive.Read("voltage of "+lint.Quote(m.Block(by)), "V", q.Value, "V", m.Block(by).Header().Addr, attribute, q.Range)}
	}
	at.state = lint.SortState(append(at.state, at.view.State([]int{p.Net.Var(x.Addr)})...))
	v.Message = fmt.Sprintf("Unplugged, the bare pins of %s (its %s side) are live from %s%s.", lint.Quote(x), side, lint.Quote(m.Block(by)), with(p, at.state))
	if !x.Exposed.Set {
		v.Message = fmt.Sprintf("Unplugged, the %s side of %s is live from %s; whether its contacts can be touched is not written.", side, lint.Quote(x), lint.Quote(m.Block(by)))
	}
	v = at.told(p, v)
	if !x.Exposed.Set {
		v.Outcome, v.Missing = lint.NotProven, append([]lint.Missing{{Subject: x.Addr, Attribute: "exposed"}}, v.Missing...)
	}
	return v
}

// neutralPin asks about the other pin: joined to a running supply whose neutral is bonded nowhere.
func neutralPin(p *lint.Pass, m *circuit.Mains, x *schema.Connector, side string, apart int, pin network.NodeID) lint.Verdict {
	list, _ := views(p, m)
	for _, w := range list {
		if w.At(apart) != 0 || w.Transit != nil {
			continue
		}
		for _, s := range m.Suppliers {
			bond := m.NeutralBond(s)
			if bond.Set && bond.Value != "floating" || p.Net.ZoneOf(m.Port(s).Hot) != p.Net.ZoneOf(p.Net.Node(x.Addr+"."+side+".line")) || !w.Joined(m.Port(s).Ret, pin) {
				continue
			}
			way, joined := neutrals(p, w, m.Port(s).Ret, pin)
			if ok, _ := m.Runs(w, s); ok && joined && !grounded(p, w, m.Port(s).Ret) {
				return floatingPin(p, m, x, w, s, way, side)
			}
		}
	}
	return lint.Verdict{}
}

// grounded says whether a wire or another part that is there always bonds a neutral to ground.
func grounded(p *lint.Pass, v *explore.View, neutral network.NodeID) bool {
	for _, e := range v.Zone.Returns {
		if !p.Net.Bond(e) || !v.Conducts(e) {
			continue
		}
		for _, end := range []network.NodeID{p.Net.Edges[e].A, p.Net.Edges[e].B} {
			if _, ok := neutrals(p, v, end, neutral); ok && p.Net.Neutral(end) {
				return true
			}
		}
	}
	return false
}

func floatingPin(p *lint.Pass, m *circuit.Mains, x *schema.Connector, w *explore.View, s circuit.Supplier, way explore.Path, side string) lint.Verdict {
	by := m.Block(s)
	v := lint.Verdict{Subject: x, Outcome: lint.Violated, Word: lint.Warning, Cause: side + " neutral by " + by.Header().Addr, Related: []string{by.Header().Addr}}
	v.State = lint.SortState(append(append(m.Feed(w, s), w.Witness(way.Edges())...), w.State([]int{p.Net.Var(x.Addr)})...))
	v.Message = fmt.Sprintf("Unplugged, the neutral pin of %s (its %s side) stays joined to %s, which bonds neutral and ground nowhere: the first fault on board makes it live.", lint.Quote(x), side, lint.Quote(by))
	switch {
	case onePole(p, way) != nil:
		v.Missing = []lint.Missing{{Subject: onePole(p, way).Addr, Attribute: "poles"}}
	case !m.NeutralBond(s).Set:
		v.Missing = []lint.Missing{{Subject: by.Header().Addr, Attribute: "neutral_bond"}}
	case !x.Exposed.Set:
		v.Missing = []lint.Missing{{Subject: x.Addr, Attribute: "exposed"}}
	}
	if len(v.Missing) > 0 {
		v.Outcome = lint.NotProven
		v.Message = fmt.Sprintf("Unplugged, the neutral pin of %s (its %s side) may be live from %s: %s is not written.", lint.Quote(x), side, lint.Quote(by), lint.Lacking(v.Missing[0], false))
	}
	return v
}
