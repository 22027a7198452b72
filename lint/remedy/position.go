package remedy

import (
	"slices"
	"strconv"
	"strings"

	"ferrule/lint"
	"ferrule/schema"
)

// WithoutPosition offers to give up a position of a switch, with the wires that lead to it alone.
func WithoutPosition(p *lint.Pass, v lint.Verdict) []lint.Proposal {
	var out []lint.Proposal
	for _, at := range v.State {
		s, ok := schema.Lookup[*schema.Switch](p.Plan, at.Addr)
		if !ok || s.Addr != "switch."+s.Name {
			continue
		}
		throw, _, _ := strings.Cut(at.Position, " (")
		for _, name := range strings.Split(throw, ">") {
			if x, ok := without(p, s, name); ok {
				out = append(out, x)
			}
		}
	}
	return out
}

// without takes out a position that is there for terminals of its own.
func without(p *lint.Pass, s *schema.Switch, name string) (lint.Proposal, bool) {
	own, kept := map[string]bool{}, map[string]bool{}
	for _, pos := range s.Positions {
		for _, g := range pos.Joins.Groups {
			for _, t := range g {
				if pos.Name == name {
					own[t.Value] = true
				} else {
					kept[t.Value] = true
				}
			}
		}
	}
	var terminals []string
	gone := map[string]bool{}
	for _, t := range s.Terminals.List {
		if own[t.Value] && !kept[t.Value] {
			gone[s.Addr+"."+t.Value] = true
		} else {
			terminals = append(terminals, strconv.Quote(t.Value))
		}
	}
	if len(gone) == 0 || len(terminals) < 2 {
		return lint.Proposal{}, false
	}
	changes := []lint.Change{lint.Set(s.Addr, "terminals", "["+strings.Join(terminals, ", ")+"]"), {At: s.Addr, In: "position " + name, Drop: true}}
	var wires []string
	for _, c := range p.Plan.Conductors {
		if gone[place(c.From)] || gone[place(c.To)] {
			changes = append(changes, lint.Change{At: c.Addr, Drop: true})
			wires = append(wires, lint.Quote(c))
		}
	}
	slices.Sort(wires)
	return lint.Proposal{
		Do:      strings.TrimSuffix(sentence("Give up position %q of %s, and take %s away", name, lint.Quote(s), lint.And(wires...)), ", and take  away") + ".",
		Changes: changes, Sources: []string{practice}, Second: true,
		Part: "What that position was for is lost: whether it is missed is yours to say.",
	}, true
}
