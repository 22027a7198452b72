package circuit

import (
	"encoding/binary"
	"iter"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// Section is what wires, devices and closed contacts join on the live side in a state, and what a string
// of batteries joins to it: a short there draws on nothing else live. A state is a sum of sections, so
// there are far fewer of them than states.
type Section struct {
	View  *explore.View // a state in which it occurs
	Nodes []network.NodeID
	Edges []int // closed, with an end in it, those to a return included
	Anew  []int // those at which a short is another than in every section given before
	// What can push current into it and is there: sources by index, converters by index.
	Sources, Outputs, Inputs []int
}

// Fed says whether anything can push current into the section.
func (s *Section) Fed() bool { return len(s.Sources)+len(s.Outputs)+len(s.Inputs) > 0 }

// Sections gives the different sections of a zone over the states that pass a filter, in a fixed order;
// complete is false where the search met its bound. Ask it of network.Stacks: a string of batteries runs
// through several zones.
func (c *Circuit) Sections(z *network.Zone, f explore.Filter) (list iter.Seq[*Section], complete bool) {
	views, complete := c.Space.Views(z, f)
	return func(yield func(*Section) bool) {
		seen, told := map[string]bool{}, newTold(c)
		for _, v := range views {
			d := c.divide(v)
			returns := d.returns()
			for i, k := range d.keys() {
				if k += string(returns); seen[k] {
					continue
				}
				seen[k] = true
				s := d.section(i)
				if s.Anew = told.anew(s, returns); !yield(s) {
					return
				}
			}
		}
	}, complete
}

// division is the live side of a view, by the zone's own numbering of nodes.
type division struct {
	c     *Circuit
	view  *explore.View
	root  []int32
	roots []int32 // of sections, in order of their first node
	at    map[int32]int
}

func (c *Circuit) divide(v *explore.View) *division {
	d := &division{c: c, view: v, root: make([]int32, v.Zone.Size()), at: map[int32]int{}}
	for i := range d.root {
		d.root[i] = int32(i)
	}
	for _, e := range v.Zone.Edges {
		if x := &c.Net.Edges[e]; d.live(x.A) && d.live(x.B) && v.Conducts(e) {
			d.join(x.A, x.B)
		}
	}
	for _, i := range v.Zone.Sources {
		if s := &c.Net.Sources[i]; d.live(s.Hot) && d.live(s.Ret) && v.HasSource(i) {
			d.join(s.Hot, s.Ret)
		}
	}
	for _, id := range v.Zone.Nodes {
		if k := d.top(v.Zone.Local(id)); !d.known(k) {
			d.at[k] = len(d.roots)
			d.roots = append(d.roots, k)
		}
	}
	return d
}

func (d *division) known(k int32) bool {
	_, ok := d.at[k]
	return ok
}

// live says whether a node is of the zone's own live side: those are numbered first.
func (d *division) live(id network.NodeID) bool {
	if id == network.None {
		return false
	}
	i := d.view.Zone.Local(id)
	return i >= 0 && int(i) < len(d.view.Zone.Nodes)
}

func (d *division) top(i int32) int32 {
	for d.root[i] != i {
		d.root[i] = d.root[d.root[i]]
		i = d.root[i]
	}
	return i
}

func (d *division) join(a, b network.NodeID) {
	x, y := d.top(d.view.Zone.Local(a)), d.top(d.view.Zone.Local(b))
	if x != y {
		d.root[max(x, y)] = min(x, y)
	}
}

// of is the section of a node, -1 where it is of none.
func (d *division) of(id network.NodeID) int {
	if !d.live(id) {
		return -1
	}
	return d.at[d.top(d.view.Zone.Local(id))]
}

// edge is the section of a closed edge, -1 where it is of none.
func (d *division) edge(e int) int {
	x := &d.c.Net.Edges[e]
	if k := d.of(x.A); k >= 0 {
		return k
	}
	return d.of(x.B)
}

// keys tells sections of different views apart: by their first node, the closed edges that depend on a
// state, and what is there.
func (d *division) keys() []string {
	keys := make([][]byte, len(d.roots))
	for i, r := range d.roots {
		keys[i] = binary.AppendUvarint(nil, uint64(r))
	}
	add := func(section int, kind byte, i int) {
		if section >= 0 {
			keys[section] = binary.AppendUvarint(append(keys[section], kind), uint64(i))
		}
	}
	z := d.view.Zone
	for _, e := range z.Edges {
		if len(d.c.Net.Edges[e].When) > 0 && d.view.Conducts(e) {
			add(d.edge(e), 'e', e)
		}
	}
	d.feeds(func(section int, kind byte, i int) { add(section, kind, i) })
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = string(k)
	}
	return out
}

// returns tells how the returns of a view stand.
func (d *division) returns() []byte {
	var out []byte
	for _, e := range d.view.Zone.Returns {
		if len(d.c.Net.Edges[e].When) > 0 && d.view.Conducts(e) {
			out = binary.AppendUvarint(append(out, 'r'), uint64(e))
		}
	}
	return out
}

// feeds visits what can push current into a section and is there: a source, or a side of a converter.
func (d *division) feeds(visit func(section int, kind byte, i int)) {
	z, n := d.view.Zone, d.c.Net
	for _, i := range z.Sources {
		if d.view.HasSource(i) {
			visit(d.either(n.Sources[i].Port), 's', i)
		}
	}
	for _, i := range z.Outputs {
		if d.view.HasConverter(i) {
			visit(d.either(n.Converters[i].Out), 'o', i)
		}
	}
	for _, i := range z.Inputs {
		if d.view.HasConverter(i) {
			visit(d.either(n.Converters[i].In), 'i', i)
		}
	}
}

func (d *division) either(p network.Port) int {
	if k := d.of(p.Hot); k >= 0 {
		return k
	}
	return d.of(p.Ret)
}

func (d *division) section(i int) *Section {
	s := &Section{View: d.view}
	for _, id := range d.view.Zone.Nodes {
		if d.of(id) == i {
			s.Nodes = append(s.Nodes, id)
		}
	}
	for _, e := range d.view.Zone.Edges {
		if d.edge(e) == i && d.view.Conducts(e) {
			s.Edges = append(s.Edges, e)
		}
	}
	d.feeds(func(section int, kind byte, k int) {
		if section != i {
			return
		}
		switch kind {
		case 's':
			s.Sources = append(s.Sources, k)
		case 'o':
			s.Outputs = append(s.Outputs, k)
		default:
			s.Inputs = append(s.Inputs, k)
		}
	})
	return s
}
