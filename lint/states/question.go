package states

import (
	"fmt"
	"sort"
	"strings"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// Question asks a number of every state.
type Question struct {
	what, of, name, unit string
	at                   network.NodeID
	read                 func(x *solved, k int) (float64, bool)
	number               func(p *circuit.Point) derive.Number
	way                  func(p *circuit.Point) string
}

// Volts asks for the voltage of a terminal, as a plan writes it: load.pump is the pair,
// fuse.main.load.neg one node against the reference.
func (s *Survey) Volts(terminal string, hint Hint) (*Question, error) {
	q := &Question{what: "volts", of: terminal, unit: "V", way: func(*circuit.Point) string { return "" }}
	p, ok := s.places[terminal]
	if id := s.Net.Node(terminal); id != network.None && !ok {
		p, ok = network.Port{Hot: id, Ret: network.None}, true
	}
	if !ok {
		return nil, s.noTerminal(terminal, hint)
	}
	q.at = p.Hot
	if p.Hot == network.None {
		q.at = max(p.Ret, p.Ground)
		p = network.Port{Hot: q.at, Ret: network.None}
	}
	n := s.Net.Nodes[q.at]
	q.name = lint.Quote(s.Plan.Block(n.Addr)) + ", " + terminal
	q.read = func(x *solved, k int) (float64, bool) {
		if p.Ret == network.None && n.Return {
			return x.points[k].Volts(p.Hot)
		}
		return x.volts(p, k)
	}
	q.number = func(pt *circuit.Point) derive.Number {
		if p.Ret != network.None {
			if n, ok := pt.VoltsAt(p); ok {
				return n
			}
		}
		v, _ := pt.Volts(p.Hot)
		return derive.Compute("volts at "+terminal, "U", sure(v), "V", "solved operating point of this state, against the reference of its circuit")
	}
	return q, nil
}

func (s *Survey) noTerminal(word string, hint Hint) error {
	var known, of []string
	for place := range s.places {
		known = append(known, place)
		if strings.HasPrefix(place, word+".") {
			of = append(of, place)
		}
	}
	sort.Strings(known)
	sort.Strings(of)
	switch b := s.Plan.Block(word); {
	case len(of) > 0:
		return fmt.Errorf("%s has several terminals; which: %s?", word, lint.And(of...))
	case b != nil:
		return fmt.Errorf("%s is no terminal; ask at one of its ends", word)
	}
	return fmt.Errorf("there is no terminal %q%s", word, orHolding(word, known, hint))
}

// orHolding hints at the nearest name, else at those that have the word in them.
func orHolding(word string, known []string, hint Hint) string {
	if h := hint(word, known); h != "" {
		return h
	}
	var with []string
	for _, k := range known {
		if word != "" && strings.Contains(k, word) && len(with) < 6 {
			with = append(with, k)
		}
	}
	if len(with) > 0 {
		return "; its word is in " + lint.And(with...)
	}
	return "; ferrule wires lists them"
}
