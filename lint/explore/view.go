package explore

import (
	"slices"

	"ferrule/lint/network"
)

// Transit is a switch between two of its positions.
type Transit struct {
	Var   int
	Throw *network.Throw
}

// View is one network that a zone can be, with a state that makes it so.
type View struct {
	Zone    *network.Zone
	Transit *Transit // nil in a resting state

	net  *network.Network
	tick func()
	pos  []int   // by variable of the plan; -1 outside the zone's reach
	open string  // a part whose contacts and elements have opened
	root []int32 // by the zone's own numbering of nodes; nil until asked for
}

func (s *Space) view(z *network.Zone, pos []int, t *Transit) *View {
	return &View{Zone: z, Transit: t, net: s.Net, tick: s.Tick, pos: pos}
}

// Of is the same state seen from another zone.
func (v *View) Of(z *network.Zone) *View {
	return &View{Zone: z, Transit: v.Transit, net: v.net, tick: v.tick, pos: v.pos}
}

// At is the position of a variable, -1 where the zone does not depend on it.
func (v *View) At(variable int) int { return v.pos[variable] }

// meets says whether a literal holds: in an overlap either end position will do, in a gap both must.
func (v *View) meets(l network.Literal) bool {
	p := v.pos[l.Var]
	if p == anywhere {
		return slices.Contains(l.At, true)
	}
	if t := v.Transit; t != nil && t.Var == l.Var {
		if t.Throw.Overlap {
			return l.At[t.Throw.From] || l.At[t.Throw.To]
		}
		return l.At[t.Throw.From] && l.At[t.Throw.To]
	}
	return p >= 0 && l.At[p]
}

// Conducts says whether an edge is closed in the view.
func (v *View) Conducts(edge int) bool {
	if v.open != "" && v.net.Edges[edge].Addr == v.open && opens(v.net.Edges[edge].Kind) {
		return false
	}
	for _, l := range v.net.Edges[edge].When {
		if !v.meets(l) {
			return false
		}
	}
	return true
}

// there says whether a part that comes and goes with a variable is there.
func (v *View) there(variable int) bool {
	return variable < 0 || v.pos[variable] == 1 || v.pos[variable] == anywhere
}

// HasSource says whether a source of the network is there.
func (v *View) HasSource(i int) bool { return v.there(v.net.Sources[i].Present) }

// HasLoad says whether a load of the network is there.
func (v *View) HasLoad(i int) bool { return v.there(v.net.Loads[i].Present) }

// HasConverter says whether a converter of the network is there.
func (v *View) HasConverter(i int) bool { return v.there(v.net.Converters[i].Present) }

// Signature tells different networks of a zone apart: which edges conduct and what is there.
func (v *View) Signature() string {
	var b []byte
	put := func(on bool) {
		if on {
			b = append(b, 1)
		} else {
			b = append(b, 0)
		}
	}
	for _, list := range [][]int{v.Zone.Edges, v.Zone.Returns} {
		for _, e := range list {
			if len(v.net.Edges[e].When) > 0 {
				put(v.Conducts(e))
			}
		}
	}
	for _, i := range v.Zone.Sources {
		put(v.HasSource(i))
	}
	for _, i := range v.Zone.Loads {
		put(v.HasLoad(i))
	}
	for _, list := range [][]int{v.Zone.Inputs, v.Zone.Outputs} {
		for _, i := range list {
			put(v.HasConverter(i))
		}
	}
	return string(b)
}

// find gives the representative, in the zone's numbering, of everything that is joined to a node in
// the view; -1 for a node that the zone does not know.
func (v *View) find(id network.NodeID) int32 {
	if v.root == nil {
		v.tick()
		v.root = make([]int32, v.Zone.Size())
		for i := range v.root {
			v.root[i] = int32(i)
		}
		for _, list := range [][]int{v.Zone.Edges, v.Zone.Returns} {
			for _, e := range list {
				if v.Conducts(e) {
					v.union(v.Zone.Local(v.net.Edges[e].A), v.Zone.Local(v.net.Edges[e].B))
				}
			}
		}
	}
	if i := v.Zone.Local(id); i >= 0 {
		return v.top(i)
	}
	return -1
}

func (v *View) top(i int32) int32 {
	for v.root[i] != i {
		v.root[i] = v.root[v.root[i]]
		i = v.root[i]
	}
	return i
}

func (v *View) union(a, b int32) {
	if a, b = v.top(a), v.top(b); a != b {
		v.root[max(a, b)] = min(a, b)
	}
}

// Joined says whether two nodes are joined by wires, devices and closed contacts.
func (v *View) Joined(a, b network.NodeID) bool {
	x, y := v.find(a), v.find(b)
	return x >= 0 && x == y || a == b && a != network.None
}

// Across says whether two ports are joined on both poles.
func (v *View) Across(a, b network.Port) bool {
	return v.Joined(a.Hot, b.Hot) && v.Joined(a.Ret, b.Ret)
}

// Supply is what feeds a place.
type Supply struct {
	Source    int // index of the source, -1 where it is a converter's output
	Converter int
}

// Live finds every port that is energised in the view: by sources that are there, and by converter
// outputs whose inputs are energised. back says whether current may also come out of a converter's
// input; nil means never: what a converter brings to one of its sides does not make it bring anything
// to the other. skip leaves sources out; nil means none.
func (v *View) Live(back func(*network.Converter) bool, skip func(*network.Source) bool) *Energy {
	e := &Energy{view: v, by: map[int32][]Supply{}}
	for _, i := range v.Zone.Sources {
		if s := &v.net.Sources[i]; v.HasSource(i) && (skip == nil || !skip(s)) {
			e.add(s.Port, Supply{Source: i, Converter: -1})
		}
	}
	on := map[int]bool{}
	for changed := true; changed; {
		changed = false
		for _, i := range converters(v.Zone) {
			c := &v.net.Converters[i]
			if !v.HasConverter(i) {
				continue
			}
			if !on[2*i] && e.feeds(c.In, i) {
				on[2*i], changed = true, true
				e.add(c.Out, Supply{Source: -1, Converter: i})
			}
			if back != nil && back(c) && !on[2*i+1] && e.feeds(c.Out, i) {
				on[2*i+1], changed = true, true
				e.add(c.In, Supply{Source: -1, Converter: i})
			}
		}
	}
	return e
}

func converters(z *network.Zone) []int {
	out := append([]int(nil), z.Inputs...)
	have := map[int]bool{}
	for _, i := range out {
		have[i] = true
	}
	for _, i := range z.Outputs {
		if !have[i] {
			out = append(out, i)
		}
	}
	return out
}

// Energy is what is energised in a view, and by what.
type Energy struct {
	view *View
	by   map[int32][]Supply // by representative of the hot side
}

func (e *Energy) add(p network.Port, s Supply) {
	if k := e.view.find(p.Hot); k >= 0 {
		e.by[k] = append(e.by[k], s)
	}
}

// At lists what energises a live node.
func (e *Energy) At(id network.NodeID) []Supply {
	return e.by[e.view.find(id)]
}

// Feeds says whether something that energises the port's hot side also has its return, or that of
// the string it stands on, joined to the port's: only then does current flow.
func (e *Energy) Feeds(p network.Port) bool { return e.feeds(p, -1) }

// feeds is Feeds by anything but one converter.
func (e *Energy) feeds(p network.Port, but int) bool {
	for _, s := range e.At(p.Hot) {
		if (s.Source >= 0 || s.Converter != but) && e.returns(s, p) {
			return true
		}
	}
	return false
}

// By lists what feeds a port, in the sense of Feeds.
func (e *Energy) By(p network.Port) []Supply {
	var out []Supply
	for _, s := range e.At(p.Hot) {
		if e.returns(s, p) {
			out = append(out, s)
		}
	}
	return out
}

func (e *Energy) returns(s Supply, p network.Port) bool {
	return e.view.Joined(e.port(s, p).Ret, p.Ret) || s.Source >= 0 && e.view.Series(s.Source).Across(p)
}

// port is the port through which a supply feeds p.
func (e *Energy) port(s Supply, p network.Port) network.Port {
	if s.Source >= 0 {
		return e.view.net.Sources[s.Source].Port
	}
	c := &e.view.net.Converters[s.Converter]
	if e.view.Joined(c.Out.Hot, p.Hot) {
		return c.Out
	}
	return c.In
}
