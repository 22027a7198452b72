package ac

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// backThrough asks whether a wire from a supply ends at a receptacle that another circuit feeds.
func backThrough(p *lint.Pass, l *network.Load) lint.Verdict {
	v, by := twoPlugs(p, l)
	if v.Outcome == lint.Violated {
		v.Cause, v.Related = by.Header().Addr, []string{by.Header().Addr}
		v.Message = fmt.Sprintf("A cord from %s ends at the receptacle %s, which stands on another circuit: a cord with two plugs, and power runs back through the panel.", lint.Quote(by), lint.Quote(l.Load))
		return v
	}
	return trusted(p, v, func(q *lint.Pass) (lint.Verdict, schema.Block) { return twoPlugs(q, l) })
}

// twoPlugs looks for a state in which, with the receptacle taken away, a supply that can run has no panel
// and no other outlet on its side, and a panel or the shore is on another.
func twoPlugs(p *lint.Pass, l *network.Load) (lint.Verdict, schema.Block) {
	v := lint.Verdict{Subject: l.Load, Outcome: lint.Holds, Word: lint.Danger}
	for _, m := range p.Circuit.Mains() {
		if m.Zone.Local(l.Hot) < 0 || !between(p, m, l.Hot) {
			continue
		}
		list, complete := views(p, m)
		for _, w := range list {
			if w.Transit != nil {
				continue
			}
			c, known := corded(p, m, w, l)
			complete = complete && known
			if c != nil {
				v.Outcome, v.State = lint.Violated, c.state
				return v, m.Block(c.by)
			}
		}
		if !complete {
			return lint.Unfinished(l.Load, lint.Danger), nil
		}
	}
	return v, nil
}

// between says whether, every contact closed, one wire of a receptacle can lead to a supply on board and another
// to a panel or the shore: only then is any state worth a look.
func between(p *lint.Pass, m *circuit.Mains, hot network.NodeID) bool {
	wires := p.Net.At(hot)
	board, panel := make([]bool, len(wires)), make([]bool, len(wires))
	for i, e := range wires {
		seen := []network.NodeID{p.Net.Edges[e].Other(hot)}
		in := map[network.NodeID]bool{seen[0]: true, hot: true}
		for k := 0; k < len(seen); k++ {
			switch x := p.Plan.Block(p.Net.Nodes[seen[k]].Addr).(type) {
			case *schema.Bus:
				panel[i] = true
			case *schema.Source:
				panel[i] = panel[i] || x.Kind.Value == "shore"
			}
			board[i] = board[i] || slices.ContainsFunc(m.Suppliers, func(s circuit.Supplier) bool { return !m.Shore(s) && m.Port(s).Hot == seen[k] })
			for _, f := range p.Net.At(seen[k]) {
				if to := p.Net.Edges[f].Other(seen[k]); !in[to] && !p.Net.Nodes[to].Return {
					in[to] = true
					seen = append(seen, to)
				}
			}
		}
	}
	for i := range wires {
		for j := range wires {
			if i != j && board[i] && panel[j] {
				return true
			}
		}
	}
	return false
}

// cord is a supply that feeds a receptacle backwards, and in which state.
type cord struct {
	by    circuit.Supplier
	state []lint.Position
}

// corded looks at the wires of a receptacle in one state; known is false where the search for a supply that
// runs met its bound.
func corded(p *lint.Pass, m *circuit.Mains, w *explore.View, l *network.Load) (c *cord, known bool) {
	known = true
	var own []*side
	var panel *side
	for _, e := range p.Net.At(l.Hot) {
		if !w.Conducts(e) {
			continue
		}
		s := sideOf(p, m, w, e, l.Hot)
		switch {
		case s.panel:
			panel = s
		case s.bare:
			own = append(own, s)
		}
	}
	if panel == nil {
		return nil, true
	}
	for _, s := range own {
		for _, x := range s.board {
			ok, sure := m.Runs(w, x)
			if known = known && sure; ok {
				return &cord{x, lint.SortState(append(m.Feed(w, x), w.Witness(slices.Concat(s.edges(m, x), panel.edges(m, x)))...))}, true
			}
		}
	}
	return nil, known
}

// side is what one wire of a receptacle leads to in a state.
type side struct {
	reach *explore.Reach
	wire  int
	at    network.NodeID     // where the way to what makes it a panel ends
	board []circuit.Supplier // generators and inverters
	bare  bool               // nothing but supplies, wires and devices
	panel bool               // a bus, or the shore
}

func sideOf(p *lint.Pass, m *circuit.Mains, w *explore.View, wire int, without network.NodeID) *side {
	from := p.Net.Edges[wire].Other(without)
	s := &side{wire: wire, bare: true, at: network.None}
	s.reach = w.Reach(from, func(e int, at network.NodeID) bool {
		to := p.Net.Edges[e].Other(at)
		return to != without && !p.Net.Nodes[to].Return
	}, nil)
	for id := range s.reach.Dist {
		switch x := p.Plan.Block(p.Net.Nodes[id].Addr).(type) {
		case *schema.Source:
			if x.Kind.Value == "shore" {
				s.leads(id)
			}
		case *schema.Bus:
			s.leads(id)
		case *schema.Load:
			s.bare = false
		}
	}
	for _, x := range m.Suppliers {
		if _, ok := s.reach.Dist[m.Port(x).Hot]; ok && !m.Shore(x) {
			s.board = append(s.board, x)
		}
	}
	return s
}

// leads notes a panel; the lowest node, so that every run tells the same.
func (s *side) leads(id network.NodeID) {
	s.panel, s.bare = true, false
	if s.at == network.None || id < s.at {
		s.at = id
	}
}

// edges is the way from the receptacle to what makes the side what it is.
func (s *side) edges(m *circuit.Mains, by circuit.Supplier) []int {
	to := s.at
	if !s.panel {
		to = m.Port(by).Hot
	}
	return append([]int{s.wire}, s.reach.To(to).Edges()...)
}
