package ac

import (
	"fmt"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/network"
	"ferrule/schema"
)

var feedsTheGrid = &lint.Rule{
	ID:      "ac/feeds-the-grid",
	Claim:   "A generator or an inverter can push power back out of the cabin, trailer or boat.",
	Words:   []lint.Severity{lint.Danger},
	Harm:    true,
	Subject: "shore supply; receptacle of alternating current",
	When: "In some state, or while a switch is thrown, the line of a generator or inverter that can run is joined to that of a shore supply, whether that is live just then or not. Or a wire from such a supply " +
		"ends at a receptacle that stands on another circuit too: a cord with two plugs. Where an interlock alone prevents it, the plan must say what the interlock is.",
	Why:     "Somebody works on the dead line outside, and a transformer steps the voltage up on the way; whoever pulls the plug holds live pins. It kills: danger.",
	Numbers: "None: any way at all.",
	Not: "Grid-tied equipment that is listed with its own protection, the utility's own interlocks and service equipment: only that a way is there is reported. " +
		"Outlets that feed further outlets.",
	Offer: "An inlet with a transfer switch, or an interlock listed for the panel, by an electrician.",
	Meter: "",
	Cites: []lint.Citation{
		{Ref: "NFPA 70 articles 702 and 705", Standing: lint.FromMemory, Note: "transfer equipment keeps other supplies off the utility"},
		{Ref: "a utility's advice on generators", Standing: lint.Read, Note: "power fed back endangers line workers"},
		{Ref: "common practice", Standing: lint.CommonPractice},
	},
	Remedy: true,
	Folds:  []string{"ac/two-sources-joined", "ac/live-inlet-pins"},
	Since:  "0.1",
	Run:    fedBack,
}

func fedBack(p *lint.Pass) []lint.Verdict {
	var out []lint.Verdict
	for i, m := range p.Circuit.Mains() {
		for _, s := range m.Suppliers {
			if m.Shore(s) {
				out = append(out, towards(p, i, m, s))
			}
		}
	}
	for i := range p.Net.Loads {
		if l := &p.Net.Loads[i]; l.Receptacle.True() && l.Hot != network.None && p.Net.Nodes[l.Hot].AC {
			out = append(out, backThrough(p, l))
		}
	}
	return out
}

// towards asks whether anything on board reaches a shore supply.
func towards(p *lint.Pass, system int, m *circuit.Mains, shore circuit.Supplier) lint.Verdict {
	grid := m.Block(shore)
	v := lint.Verdict{Subject: grid, Outcome: lint.Holds, Word: lint.Danger}
	best, by, complete := pushed(p, m, shore)
	switch {
	case best != nil:
		v.Cause, v.Related = m.Block(by).Header().Addr, append([]string{m.Block(by).Header().Addr}, parts(p.Net, best.way)...)
		v.Message = fmt.Sprintf("%s can push power out through %s%s.", lint.Quote(m.Block(by)), lint.Quote(grid), with(p, best.state))
		return best.told(p, v)
	case !complete:
		return lint.Unfinished(grid, lint.Danger)
	}
	return trusted(p, v, func(q *lint.Pass) (lint.Verdict, schema.Block) {
		best, by, complete := pushed(q, q.Circuit.Mains()[system], shore)
		switch {
		case best != nil:
			w := v
			w.Outcome, w.State = lint.Violated, best.state
			return w, m.Block(by)
		case !complete:
			return lint.Unfinished(grid, lint.Danger), nil
		}
		return v, nil
	})
}

// pushed finds the plainest state in which a supply on board is joined to the shore supply.
func pushed(p *lint.Pass, m *circuit.Mains, shore circuit.Supplier) (best *meeting, by circuit.Supplier, complete bool) {
	list, complete := views(p, m)
	for _, v := range list {
		for _, s := range m.Suppliers {
			if m.Shore(s) {
				continue
			}
			if x := meet(p, m, v, m.Port(s).Hot, m.Port(shore).Hot, s); x != nil && x.better(best) {
				best, by = x, s
			}
		}
	}
	return best, by, complete
}
