package circuit

import (
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
	"ferrule/schema"
)

// wiring is a view as a network to solve: nodes in the zone's own numbering, and where each part of the
// plan went. The maps go from an edge, or an index of the network, to a branch, element or converter.
type wiring struct {
	net        solve.Net
	branch     map[int]int
	sources    map[int]int
	loads      map[int]int
	inputs     map[int]int // of converters with their input alone in the zone
	outputs    map[int]int
	diodes     map[int]int
	converters map[int]int
	notes      [][]note // what laws were made of: all but loads', then those of each load
	lacks      []derive.Missing

	c       *Circuit
	view    *explore.View
	set     Setting
	groups  []int32 // by node: nodes that edges and supplies connect, as representatives
	lit     []bool  // by representative: it has a supply
	numbers map[string]derive.Number
}

// note is a number that the law of the part at an address was made of.
type note struct {
	addr string
	n    derive.Number
}

// noted gives the notes by address and symbol, of several the last.
func (w *wiring) noted() map[string]derive.Number {
	if w.numbers == nil {
		w.numbers = map[string]derive.Number{}
		for _, list := range w.notes {
			for i := range list {
				w.numbers[list[i].addr+" "+list[i].n.Symbol] = list[i].n
			}
		}
	}
	return w.numbers
}

// wire makes a view's network at a setting.
func (c *Circuit) wire(v *explore.View, s Setting) *wiring {
	w := c.bareWiring(v, s)
	for _, i := range v.Zone.Sources {
		if v.HasSource(i) {
			w.source(i)
		}
	}
	w.supplies()
	for _, i := range v.Zone.Loads {
		if v.HasLoad(i) && (s.Runs == nil || s.Runs(i)) && w.fed(c.Net.Loads[i].Port) {
			w.load(i)
		}
	}
	w.takers()
	if s.Share != nil {
		for i, k := range w.loads {
			w.scale(k, s.Share(c.Net.Loads[i].Hot))
		}
		for i, k := range w.inputs {
			w.scale(k, s.Share(c.Net.Converters[i].In.Hot))
		}
	}
	w.references()
	return w
}

// scale lets what draws draw a part of its figure.
func (w *wiring) scale(k int, part float64) {
	if part <= 0 {
		w.silence(k)
		return
	}
	e := &w.net.Elements[k]
	e.Amps, e.Watts, e.Ohms = e.Amps*part, e.Watts*part, e.Ohms/part
}

// bareWiring is a view's edges, with nothing attached. Those of the view that was asked for last are at hand.
func (c *Circuit) bareWiring(v *explore.View, s Setting) *wiring {
	if c.bare == nil || c.bare.view != v {
		c.bare = &wiring{c: c, view: v, branch: make(map[int]int, len(v.Zone.Edges)+len(v.Zone.Returns))}
		c.bare.edges()
	}
	return &wiring{c: c, view: v, set: s, branch: c.bare.branch, sources: map[int]int{}, loads: map[int]int{}, inputs: map[int]int{}, outputs: map[int]int{},
		diodes: map[int]int{}, converters: map[int]int{}, notes: [][]note{nil}, net: c.bare.net, lacks: slices.Clip(c.bare.lacks), groups: slices.Clone(c.bare.groups), lit: make([]bool, len(c.bare.groups))}
}

func (w *wiring) edges() {
	z := w.view.Zone
	w.net.Nodes = z.Size()
	w.groups, w.lit = make([]int32, w.net.Nodes), make([]bool, w.net.Nodes)
	for i := range w.groups {
		w.groups[i] = int32(i)
	}
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			if _, have := w.branch[e]; have || !w.view.Conducts(e) {
				continue
			}
			edge := &w.c.Net.Edges[e]
			r, lacks := w.c.Ohms(e, Operating)
			w.lacks = merge(w.lacks, lacks...)
			a, b := z.Local(edge.A), z.Local(edge.B)
			w.branch[e] = len(w.net.Branches)
			w.net.Branches = append(w.net.Branches, solve.Branch{A: int(a), B: int(b), Ohms: r.Value})
			w.join(a, b)
		}
	}
}

func (w *wiring) top(i int32) int32 {
	for w.groups[i] != i {
		w.groups[i] = w.groups[w.groups[i]]
		i = w.groups[i]
	}
	return i
}

func (w *wiring) join(a, b int32) {
	if a, b = w.top(a), w.top(b); a != b {
		w.groups[max(a, b)] = min(a, b)
		w.lit[min(a, b)] = w.lit[a] || w.lit[b]
	}
}

// supply records that something between two nodes supplies.
func (w *wiring) supply(p network.Port) {
	a, b := w.view.Zone.Local(p.Hot), w.view.Zone.Local(p.Ret)
	w.join(a, b)
	w.lit[w.top(a)] = true
}

// alive says whether a node lies in an island that has a supply.
func (w *wiring) alive(i int) bool { return w.lit[w.top(int32(i))] }

// together says whether a port's two nodes lie in one island.
func (w *wiring) together(p network.Port) bool {
	a, b := w.view.Zone.Local(p.Hot), w.view.Zone.Local(p.Ret)
	return a >= 0 && b >= 0 && w.top(a) == w.top(b)
}

// fed says whether both nodes of a port lie in one island with a supply, and are not one node.
func (w *wiring) fed(p network.Port) bool {
	return w.known(p) && w.together(p) && w.alive(int(w.view.Zone.Local(p.Hot))) && !w.view.Joined(p.Hot, p.Ret)
}

func (w *wiring) known(p network.Port) bool {
	return p.Hot != network.None && p.Ret != network.None && w.view.Zone.Local(p.Hot) >= 0 && w.view.Zone.Local(p.Ret) >= 0 && p.Hot != p.Ret
}

// add puts an element across a port.
func (w *wiring) add(p network.Port, e solve.Element) int {
	e.P, e.N = int(w.view.Zone.Local(p.Hot)), int(w.view.Zone.Local(p.Ret))
	w.net.Elements = append(w.net.Elements, e)
	return len(w.net.Elements) - 1
}

// references lists the nodes that count as 0 V, best first: chassis and ground, the negatives of
// batteries, those of other supplies, any return.
func (w *wiring) references() {
	z, n := w.view.Zone, w.c.Net
	var first, rest []int
	for i := range z.Size() {
		id := z.Known()[i]
		if !n.Nodes[id].Return {
			continue
		}
		if b, ok := n.Plan.Block(n.Nodes[id].Addr).(*schema.Bus); ok && (b.Polarity.Value == "chassis" || b.Polarity.Value == "ground") {
			first = append(first, i)
		} else {
			rest = append(rest, i)
		}
	}
	negatives := func(batteries bool) {
		for _, i := range z.Sources {
			if (n.Sources[i].Kind.Value == "battery") == batteries && w.known(n.Sources[i].Port) {
				first = append(first, int(z.Local(n.Sources[i].Ret)))
			}
		}
	}
	negatives(true)
	negatives(false)
	for _, i := range z.Outputs {
		if w.known(n.Converters[i].Out) {
			first = append(first, int(z.Local(n.Converters[i].Out.Ret)))
		}
	}
	w.net.References = append(first, rest...)
}
