package ac

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
)

var twoSourcesJoined = &lint.Rule{
	ID:      "ac/two-sources-joined",
	Claim:   "Shore, generator, inverter or a portable pack can meet on one pair of wires.",
	Words:   []lint.Severity{lint.Danger, lint.Caution},
	Harm:    true,
	Subject: "each two supplies of alternating current, at the one on board",
	When: "In some state, or while a switch is thrown, the lines of two supplies are joined and both can run: a source is there, an inverter's input has power. Or a switch parts " +
		"their lines alone and both their neutrals stay joined: caution.",
	Why: "Two supplies out of step drive each other with everything they have: the inverter is destroyed, plug pins are live, wires burn. Danger, since it is mains voltage and " +
		"whoever plugs in holds it. A neutral in common carries one supply's faults to the other's cord and pins.",
	Numbers: "None: any state.",
	Not: "Supplies that the plan calls `parallel_capable`, both of them: whether they suit each other is their makers' word. Neutrals in common where the plan is graded `cabin` " +
		"alone: there they are often joined for good, and bonding/neutral-bond-count asks what follows. Three-phase and split supplies.",
	Offer: "A two-pole transfer switch that breaks before it makes, or an inverter/charger listed for the purpose; or separate outlets for each supply, never one box.",
	Meter: unplugged,
	Cites: []lint.Citation{
		{Ref: "NFPA 70 551.30 to 551.33", Standing: lint.FromMemory, For: []string{"us-rv"}, Note: "supplies of a vehicle do not meet: transfer equipment"},
		{Ref: "NFPA 70 551.32", Standing: lint.Read, For: []string{"us-rv"}, Note: "other sources are listed for the purpose; as quoted in a standards ballot"},
		{Ref: "a generator maker's manual for vehicles", Standing: lint.Read, Note: "a double-throw switch or a separate outlet for each supply"},
		{Ref: "common practice", Standing: lint.CommonPractice, Note: "both poles, break before make; read as owners' advice"},
	},
	Remedy: true,
	Folds:  []string{"ac/live-inlet-pins"},
	Since:  "0.1",
	Run:    joinedSupplies,
}

func joinedSupplies(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for _, m := range p.Circuit.Mains() {
		if len(m.Suppliers) == 1 {
			out = append(out, lint.Verdict{Subject: m.Block(m.Suppliers[0]), Outcome: lint.Holds})
		}
		for i, a := range m.Suppliers {
			for _, b := range m.Suppliers[i+1:] {
				here, there := b, a
				if m.Shore(b) && !m.Shore(a) {
					here, there = a, b
				}
				out = append(out, joined(p, m, here, there))
			}
		}
	}
	return out
}

// joined asks about two supplies; the first is on board, or the later of the two.
func joined(p *lint.Pass, m *circuit.Mains, s, other circuit.Supplier) lint.Verdict {
	here, there := m.Block(s), m.Block(other)
	v := lint.Verdict{Subject: here, Outcome: lint.Holds, Word: lint.Danger, Cause: there.Header().Addr}
	if m.ParallelCapable(s) && m.ParallelCapable(other) {
		return v
	}
	list, complete := views(p, m)
	var best *meeting
	var common *explore.View
	for _, w := range list {
		if x := meet(p, m, w, m.Port(s).Hot, m.Port(other).Hot, s, other); x != nil && x.better(best) {
			best = x
		}
		if common == nil && w.Transit == nil && shared(p, m, w, s, other) {
			common = w
		}
	}
	switch {
	case best != nil:
		v.Related = append([]string{there.Header().Addr}, parts(p.Net, best.way)...)
		v.Message = fmt.Sprintf("%s and %s meet on one pair of wires%s.", lint.Quote(here), lint.Quote(there), with(p, best.state))
		return best.told(p, v)
	case !complete:
		return lint.Unfinished(here, lint.Danger)
	case common != nil:
		return oneNeutral(p, m, common, s, other, v)
	}
	return v
}

// shared says whether a switch keeps the lines of two running supplies apart and not their neutrals.
func shared(p *lint.Pass, m *circuit.Mains, v *explore.View, s, other circuit.Supplier) bool {
	a, b := m.Port(s), m.Port(other)
	if p.Net.ZoneOf(a.Hot) != p.Net.ZoneOf(b.Hot) || !v.Joined(a.Ret, b.Ret) || v.Joined(a.Hot, b.Hot) {
		return false
	}
	if ok, _ := m.Runs(v, s, other); !ok {
		return false
	}
	_, joined := neutrals(p, v, a.Ret, b.Ret)
	return joined
}

func oneNeutral(p *lint.Pass, m *circuit.Mains, w *explore.View, s, other circuit.Supplier, v lint.Verdict) lint.Verdict {
	if practices := p.Plan.Practices(); len(practices) == 1 && practices[0] == "cabin" {
		return v
	}
	way, _ := neutrals(p, w, m.Port(s).Ret, m.Port(other).Ret)
	v.Outcome, v.Word, v.Cause = lint.Violated, lint.Caution, v.Cause+" neutral"
	v.State, v.Related = lint.SortState(append(m.Feed(w, s, other), w.Witness(way.Edges())...)), parts(p.Net, way)
	v.Message = fmt.Sprintf("The lines of %s and %s are kept apart and their neutrals are not: one pole alone is switched.", lint.Quote(v.Subject), lint.Quote(m.Block(other)))
	if x := onePole(p, way); x != nil {
		v.Outcome, v.Missing = lint.NotProven, []lint.Missing{{Subject: x.Addr, Attribute: "poles"}}
		v.Message = fmt.Sprintf("The lines of %s and %s are kept apart; their neutrals are not unless %s switches both poles, and the plan does not say.", lint.Quote(v.Subject), lint.Quote(m.Block(other)), lint.Quote(x))
	}
	return v
}
