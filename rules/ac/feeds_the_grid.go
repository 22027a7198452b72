package ac

import (
	"fmt"
	"slices"

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
	return trusted(p, system, shore, v)
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

const mostTrusted = 16 // interlocks that are taken away one by one

// trusted asks whether interlocks of which the plan does not say what they are keep the grid apart, and
// which of them alone does.
func trusted(p *lint.Pass, system int, shore circuit.Supplier, v lint.Verdict) lint.Verdict {
	var unsaid []schema.Block
	for _, x := range p.Plan.Interlocks {
		if !x.By.Set {
			unsaid = append(unsaid, x)
		}
	}
	if len(unsaid) == 0 {
		return v
	}
	all := loose(p, system, shore, v, unsaid...)
	for _, x := range unsaid[:min(len(unsaid), mostTrusted)] {
		if one := loose(p, system, shore, v, x); all.Outcome != lint.Holds && one.Outcome != lint.Holds {
			return one
		}
	}
	return all
}

// loose asks again without some interlocks.
func loose(p *lint.Pass, system int, shore circuit.Supplier, v lint.Verdict, without ...schema.Block) lint.Verdict {
	q := lint.NewPass(p.Net, p.Space.Without(without...), lint.Guesses{}, p.Today)
	m := q.Circuit.Mains()[system]
	best, by, complete := pushed(q, m, shore)
	switch {
	case best == nil && !complete:
		return lint.Unfinished(v.Subject, v.Word)
	case best == nil:
		return v
	}
	v.Outcome, v.State, v.Cause = lint.NotProven, best.state, without[0].Header().Addr
	var names []string
	for _, x := range without {
		names = append(names, lint.Quote(x))
		v.Missing = append(v.Missing, lint.Missing{Subject: x.Header().Addr, Attribute: "by"})
	}
	keep, each := "keeps", "it is"
	if len(without) > 1 {
		keep, each = "keep", "each is"
	}
	v.Message = fmt.Sprintf("Only %s %s %s off %s, and whether %s hardware or somebody's habit is not written.", lint.And(names...), keep, lint.Quote(m.Block(by)), lint.Quote(v.Subject), each)
	return v
}

// backThrough asks whether a wire from a supply ends at a receptacle that another circuit feeds: with the
// receptacle taken away, the supply's side has no panel and no other outlet, and the other side has.
func backThrough(p *lint.Pass, l *network.Load) lint.Verdict {
	v := lint.Verdict{Subject: l.Load, Outcome: lint.Holds, Word: lint.Danger}
	var own, others []side
	for _, e := range p.Net.At(l.Hot) {
		s := sideOf(p, p.Net.Edges[e].Other(l.Hot), l.Hot)
		switch {
		case s.board != nil && s.bare:
			own = append(own, s)
		case s.panel:
			others = append(others, s)
		}
	}
	if len(own) == 0 || len(others) == 0 {
		return v
	}
	by := own[0].board
	v.Outcome, v.Cause, v.Related = lint.Violated, by.Header().Addr, []string{by.Header().Addr}
	if i := p.Net.Var(by.Header().Addr); i >= 0 {
		v.State = []lint.Position{{Addr: by.Header().Addr, Position: "present"}}
	}
	v.Message = fmt.Sprintf("A cord from %s ends at the receptacle %s, which stands on another circuit: a cord with two plugs, and power runs back through the panel.", lint.Quote(by), lint.Quote(l.Load))
	return v
}

// side is what one wire of a receptacle leads to, every contact closed.
type side struct {
	board schema.Block // a generator or inverter
	bare  bool         // nothing but the supply, wires and devices
	panel bool         // a bus, or another supply
}

func sideOf(p *lint.Pass, from, without network.NodeID) side {
	out := side{bare: true}
	seen := []network.NodeID{from}
	for i := 0; i < len(seen); i++ {
		switch x := p.Net.Plan.Block(p.Net.Nodes[seen[i]].Addr).(type) {
		case *schema.Source:
			if x.Kind.Value == "shore" {
				out.panel, out.bare = true, false
			} else {
				out.board = x
			}
		case *schema.Converter:
			if p.Net.Nodes[seen[i]].Terminal == "out" {
				out.board = x
			}
		case *schema.Bus:
			out.panel, out.bare = true, false
		case *schema.Load:
			out.bare = false
		}
		for _, e := range p.Net.At(seen[i]) {
			to := p.Net.Edges[e].Other(seen[i])
			if to != without && !p.Net.Nodes[to].Return && !slices.Contains(seen, to) {
				seen = append(seen, to)
			}
		}
	}
	return out
}
