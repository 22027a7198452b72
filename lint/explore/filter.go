package explore

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"ferrule/lint/network"
	"ferrule/schema"
)

// Filter narrows the states that a question is about. It is a union of choices.
type Filter struct {
	name    string
	choices []choice
	apart   map[int]bool // limbs told apart in every position; nil where no limb is set aside
	about   map[int]bool // limbs told apart at all; nil for every one
}

// choice pins variables: allowed positions by variable; a variable without an entry is free.
type choice map[int][]bool

// everything is the filter that keeps every state.
var everything = Filter{name: "all", choices: []choice{nil}}

// All keeps every allowed state.
func All() Filter { return everything }

func (c choice) admits(s *Space, set, pos []int) bool {
	for _, v := range set {
		if at, ok := c[v]; ok && !at[pos[v]] {
			return false
		}
	}
	return true
}

// from is the first position of a variable, at or after p, that the choice allows; -1 for none.
func (c choice) from(s *Space, v, p int) int {
	at, pinned := c[v]
	for ; p < len(s.Net.Vars[v].Positions); p++ {
		if !pinned || at[p] {
			return p
		}
	}
	return -1
}

// first puts free variables at their first allowed positions, false where one has none.
func (c choice) first(s *Space, free, pos []int) bool {
	for _, v := range free {
		if pos[v] = c.from(s, v, 0); pos[v] < 0 {
			return false
		}
	}
	return true
}

// In keeps the states of a mode: its pins hold, except that a pinned switch that can be reached in
// the mode may have any position.
func (s *Space) In(m *schema.Mode) Filter {
	return Filter{name: "mode " + m.Addr, choices: []choice{s.pins(m, true)}}
}

// Resting keeps the states in which all pins of a mode hold, switches too.
func (s *Space) Resting(m *schema.Mode) Filter {
	return Filter{name: "pins " + m.Addr, choices: []choice{s.pins(m, false)}}
}

// Parted keeps the states of a mode after a breakaway: the tow plugs are unmated whatever it pins.
func (s *Space) Parted(m *schema.Mode) Filter {
	c := choice{}
	if m != nil {
		c = s.pins(m, true)
	}
	for _, x := range s.Net.Plan.Connectors {
		if v := s.Net.Var(x.Addr); v >= 0 && x.Tow.True() {
			c[v] = []bool{true, false}
		}
	}
	name := "parted"
	if m != nil {
		name += " " + m.Addr
	}
	return Filter{name: name, choices: []choice{c}}
}

// Occupied keeps the states in which people may be aboard: those of some occupied mode; without
// modes all states.
func (s *Space) Occupied() Filter {
	f := Filter{name: "occupied"}
	for _, m := range s.Net.Plan.Modes {
		if s.Aboard(m) {
			f.choices = append(f.choices, s.pins(m, true))
		}
	}
	if len(s.Net.Plan.Modes) == 0 {
		return everything
	}
	return f
}

// OneOf keeps the states of any of the modes at the addresses; all states where there is none.
func (s *Space) OneOf(modes schema.Refs) Filter {
	if len(modes.List) == 0 {
		return everything
	}
	f := Filter{}
	var names []string
	for _, r := range modes.List {
		if m, ok := schema.Lookup[*schema.Mode](s.Net.Plan, r.Addr); ok {
			f.choices = append(f.choices, s.pins(m, true))
			names = append(names, m.Addr)
		}
	}
	sort.Strings(names)
	f.name = "modes " + strings.Join(names, " ")
	return f
}

// With narrows a filter to some positions of one variable.
func (s *Space) With(f Filter, variable int, ok func(position int) bool) Filter {
	out := f
	out.choices = nil
	at := make([]bool, len(s.Net.Vars[variable].Positions))
	for p := range at {
		at[p] = ok(p)
	}
	for _, c := range f.choices {
		narrow := choice{variable: slices.Clone(at)}
		for v, list := range c {
			if v != variable {
				narrow[v] = list
				continue
			}
			for p := range at {
				narrow[v][p] = at[p] && list[p]
			}
		}
		out.choices = append(out.choices, narrow)
	}
	out.name += fmt.Sprint(" with ", variable, at)
	return out
}

func (s *Space) pins(m *schema.Mode, reachable bool) choice {
	c := choice{}
	for _, pin := range m.State.List {
		v, at := s.Net.Var(pin.Ref.Addr), s.position(pin)
		if v < 0 || at < 0 || reachable && s.reachable(v, m) || s.loose[m.Addr] && pin.Position.Value == "present" {
			continue
		}
		allowed := make([]bool, len(s.Net.Vars[v].Positions))
		allowed[at] = true
		c[v] = allowed
	}
	return c
}

// reachable says whether somebody can throw the switch in the mode.
func (s *Space) reachable(v int, m *schema.Mode) bool {
	x, ok := schema.Lookup[*schema.Switch](s.Net.Plan, s.Net.Vars[v].Addr)
	if !ok || s.Net.Vars[v].Kind != network.SwitchVar || s.Net.Vars[v].Follower {
		return false
	}
	return !x.ReachableWhile.Set || x.ReachableWhile.Has(m.Addr)
}
