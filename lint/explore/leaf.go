package explore

import (
	"fmt"
	"slices"
	"strings"

	"ferrule/lint/network"
)

// leaf is a switch behind which only loads hang: its full position closes every contact that any
// position closes, and nothing on its far side supplies, converts or ties it to another part.
// Closing it can only add loads, so a question that more closing never settles otherwise (does a way
// exist, how large can a current be) is answered with it closed.
type leaf struct {
	full int                     // the position that closes everything
	far  map[network.NodeID]bool // what hangs behind it
}

// leaves finds the leaf switches, by variable.
func (s *Space) leaves() map[int]leaf {
	if s.leafOf != nil {
		return s.leafOf
	}
	s.leafOf = map[int]leaf{}
	tied := s.bound()
	ports := s.supplyNodes()
	for v := range s.Net.Vars {
		if x := &s.Net.Vars[v]; x.Kind == network.SwitchVar && !tied[v] {
			if l, ok := s.leaf(v, ports); ok {
				s.leafOf[v] = l
			}
		}
	}
	return s.leafOf
}

// Leaf says whether a variable is a switch that Closed keeps closed.
func (s *Space) Leaf(variable int) bool {
	_, ok := s.leaves()[variable]
	return ok
}

// supplyNodes are the nodes at which something other than a load is attached.
func (s *Space) supplyNodes() map[network.NodeID]bool {
	out := map[network.NodeID]bool{}
	for _, x := range s.Net.Sources {
		out[x.Hot], out[x.Ret] = true, true
	}
	for _, x := range s.Net.Converters {
		for _, p := range []network.Port{x.In, x.Out} {
			out[p.Hot], out[p.Ret] = true, true
		}
	}
	return out
}

func (s *Space) leaf(v int, ports map[network.NodeID]bool) (leaf, bool) {
	contacts := s.contactsOf(v)
	full := -1
	for p := range s.Net.Vars[v].Positions {
		all := len(contacts) > 0
		for _, e := range contacts {
			all = all && closes(&s.Net.Edges[e], v, p)
		}
		if all {
			full = p
			break
		}
	}
	if full < 0 {
		return leaf{}, false
	}
	l := leaf{full: full, far: map[network.NodeID]bool{}}
	return l, s.hangs(v, contacts, ports, l.far)
}

func (s *Space) contactsOf(v int) []int {
	var out []int
	for _, e := range s.Net.EdgesOf(s.Net.Vars[v].Addr) {
		if s.Net.Edges[e].Kind == network.Contact {
			out = append(out, e)
		}
	}
	return out
}

func closes(e *network.Edge, v, p int) bool {
	for _, l := range e.When {
		if l.Var == v {
			return l.At[p]
		}
	}
	return false
}

// hangs says whether at most one live terminal of the switch and one return have anything but loads on their
// side, and collects what is on the other sides. Two terminals on one supplying side are a way
// round the switch: it is no leaf then.
func (s *Space) hangs(v int, contacts []int, ports map[network.NodeID]bool, far map[network.NodeID]bool) bool {
	supplying := map[bool]int{}            // terminals, returns and live ones
	sides := map[network.NodeID]bool{}     // nodes walked, and whether their side supplies
	terminals := map[network.NodeID]bool{} // counted
	for _, e := range contacts {
		for _, end := range []network.NodeID{s.Net.Edges[e].A, s.Net.Edges[e].B} {
			if terminals[end] {
				continue
			}
			terminals[end] = true
			supplies, walked := sides[end]
			if !walked {
				var side []network.NodeID
				side, supplies = s.side(end, v, ports)
				for _, id := range side {
					sides[id] = supplies
					if !supplies {
						far[id] = true
					}
				}
			}
			if supplies {
				supplying[s.Net.Nodes[end].Return]++
			}
		}
	}
	return supplying[true] <= 1 && supplying[false] <= 1
}

// side is everything joined to a node with all contacts closed but those of one switch.
func (s *Space) side(from network.NodeID, v int, ports map[network.NodeID]bool) (side []network.NodeID, supplies bool) {
	in := map[network.NodeID]bool{from: true}
	side = []network.NodeID{from}
	for i := 0; i < len(side); i++ {
		supplies = supplies || ports[side[i]]
		for _, e := range s.Net.At(side[i]) {
			x := &s.Net.Edges[e]
			if to := x.Other(side[i]); !in[to] && (x.Kind != network.Contact && x.Kind != network.Mate || x.Addr != s.Net.Vars[v].Addr) {
				in[to] = true
				side = append(side, to)
			}
		}
	}
	return side, supplies
}

// Closed narrows a filter to the states in which every leaf switch is closed, except those with one
// of the nodes behind them. Use it for what closing more can only bring about.
func (s *Space) Closed(f Filter, except ...network.NodeID) Filter {
	out := Filter{name: f.name + " closed", apart: map[int]bool{}}
	open := map[int]bool{}
	for v, l := range s.leaves() {
		for _, id := range except {
			open[v] = open[v] || l.far[id]
		}
	}
	for _, l := range s.limbs() {
		for _, id := range except {
			out.apart[l.v] = out.apart[l.v] || l.far[id]
		}
	}
	if s.Plain {
		out.apart = nil
	}
	var kept []string
	for v := range s.Net.Vars {
		if open[v] || out.apart[v] {
			kept = append(kept, fmt.Sprint(v))
		}
	}
	out.name += " but " + strings.Join(kept, " ")
	for _, c := range f.choices {
		pinned := choice{}
		for v, at := range c {
			pinned[v] = at
		}
		for v, l := range s.leaves() {
			if at, ok := c[v]; open[v] || ok && !at[l.full] {
				continue
			}
			pinned[v] = make([]bool, len(s.Net.Vars[v].Positions))
			pinned[v][l.full] = true
		}
		out.choices = append(out.choices, pinned)
	}
	return out
}

// About narrows a Closed filter to a question about some nodes and what supplies and converters bring to
// them: limbs behind which none of them lies stand anywhere, since nothing comes through them to a node
// that is not behind them. One that joins two of its feeds on its way between them is told apart even so.
func (s *Space) About(f Filter, nodes ...network.NodeID) Filter {
	if f.apart == nil {
		return f
	}
	out := f
	out.about = map[int]bool{}
	var told []string
	for _, l := range s.limbs() {
		if slices.ContainsFunc(nodes, func(id network.NodeID) bool { return l.far[id] }) || f.apart[l.v] || len(l.clump) > 1 && s.overlaps(l.v) {
			out.about[l.v] = true
			told = append(told, fmt.Sprint(l.v))
		}
	}
	out.name += " about " + strings.Join(told, " ")
	return out
}

// overlaps says whether a switch joins two of its positions while it is thrown.
func (s *Space) overlaps(v int) bool {
	return slices.ContainsFunc(s.Net.Vars[v].Throws, func(t network.Throw) bool { return t.Overlap })
}
