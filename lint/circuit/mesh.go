package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// Bounds between which resistances are told apart in a fault, in ohm. A wire whose resistance is not
// known counts as the least that leaves it a share of the current.
const (
	leastOhms   = 1e-9
	unknownOhms = 1e-6
	mostOhms    = 1e6
)

// mesh is a section with its returns as a network to solve, without the short.
type mesh struct {
	f      *Faults
	short  bool // returns count as nothing
	local  map[network.NodeID]int
	nodes  []network.NodeID
	edges  []int // of the network, by branch
	of     map[int]int
	vague  []bool // by branch: its resistance is not known
	feeds  []feed
	grid   *solve.Grid
	err    error
	steady []float64 // currents into the nodes that flow without a short, A
	rest   []float64 // voltages that they make
}

// feed is something that pushes current: volts behind a resistance, or, where that is 0, a current.
type feed struct {
	port    network.Port
	source  int // index, -1 where it is a converter
	conv    int
	volts   float64
	ohms    float64
	amps    float64
	numbers []derive.Number
	hot     int // nodes of the mesh
	ret     int
	branch  int // of its resistance; -1 where it has none
}

func (f *Faults) mesh(short bool) *mesh {
	m := f.pair
	if short {
		m = f.bare
	}
	if m == nil {
		m = newMesh(f, short)
		if short {
			f.bare = m
		} else {
			f.pair = m
		}
	}
	return m
}

func newMesh(f *Faults, short bool) *mesh {
	m := &mesh{f: f, short: short, local: map[network.NodeID]int{}, of: map[int]int{}}
	for _, id := range f.Section.Nodes {
		m.node(id)
	}
	for i := range f.feeds {
		m.node(f.feeds[i].port.Hot)
		m.node(f.feeds[i].port.Ret)
	}
	for _, id := range f.Section.Nodes {
		if mate := f.c.Net.Mate(id); !f.elsewhere(mate) {
			m.node(mate)
		}
	}
	var branches []solve.Branch
	for _, e := range f.Section.Edges {
		branches = m.wire(e, branches)
	}
	own := len(f.Section.Nodes)
	for i := own; i < len(m.nodes); i++ {
		for _, e := range f.c.Net.At(m.nodes[i]) {
			far := f.c.Net.Edges[e].Other(m.nodes[i])
			if k, ok := m.local[far]; ok && k < own || f.elsewhere(far) || !f.Section.View.Conducts(e) {
				continue
			}
			branches = m.wire(e, branches)
		}
	}
	branches = m.supply(branches)
	m.grid, m.err = solve.NewGrid(len(m.nodes), branches)
	if m.err == nil {
		m.settle()
	}
	return m
}

// node numbers a node of the mesh.
func (m *mesh) node(id network.NodeID) int {
	if id == network.None {
		return -1
	}
	i, ok := m.local[id]
	if !ok {
		i = len(m.nodes)
		m.local[id] = i
		m.nodes = append(m.nodes, id)
	}
	return i
}

// wire adds an edge, once.
func (m *mesh) wire(e int, branches []solve.Branch) []solve.Branch {
	if _, ok := m.of[e]; ok || m.f.open[e] {
		return branches
	}
	x := &m.f.c.Net.Edges[e]
	n, lacks := m.f.c.Ohms(e, m.f.corner)
	ohms, vague := n.Value, lacks != nil
	switch {
	case m.short && m.back(x.A) && m.back(x.B):
		ohms, vague = 0, false
	case vague:
		ohms = unknownOhms
	case ohms < leastOhms:
		ohms = 0
	}
	m.of[e] = len(m.edges)
	m.edges, m.vague = append(m.edges, e), append(m.vague, vague)
	return append(branches, solve.Branch{A: m.node(x.A), B: m.node(x.B), Ohms: min(ohms, mostOhms)})
}

// back says whether a node is on the return side.
func (m *mesh) back(id network.NodeID) bool {
	return m.f.c.Net.Nodes[id].Return
}

// supply adds what feeds the section: resistances as branches behind those of the edges.
func (m *mesh) supply(branches []solve.Branch) []solve.Branch {
	for _, x := range m.f.feeds {
		x.hot, x.ret, x.branch = m.local[x.port.Hot], m.local[x.port.Ret], -1
		if x.ohms > 0 {
			x.branch = len(branches)
			branches = append(branches, solve.Branch{A: x.hot, B: x.ret, Ohms: min(max(x.ohms, leastOhms), mostOhms)})
			x.ohms = branches[x.branch].Ohms
		}
		m.feeds = append(m.feeds, x)
	}
	return branches
}

// settle finds what flows without a short: batteries, and what can push a current into them.
func (m *mesh) settle() {
	m.steady = make([]float64, len(m.nodes))
	for _, x := range m.feeds {
		if m.grid.Island(x.hot) == m.grid.Island(x.ret) {
			m.push(m.steady, &x)
		}
	}
	m.rest = m.grid.Volts(m.steady)
}

func (m *mesh) push(amps []float64, x *feed) {
	i := x.amps
	if x.branch >= 0 {
		i = x.volts / x.ohms
	}
	amps[x.hot] += i
	amps[x.ret] -= i
}

// at solves a short between two nodes. It is nil where nothing can flow, or they are one node.
func (m *mesh) at(hot, ret network.NodeID) *Short {
	h, okH := m.local[hot]
	r, okR := m.local[ret]
	if !okH || !okR || h == r || m.err != nil {
		return nil
	}
	s := &Short{At: hot, m: m, hot: h, ret: r, amps: make([]float64, len(m.nodes))}
	if m.grid.Island(h) == m.grid.Island(r) {
		s.amps[h], s.amps[r] = -1, 1
		one := m.grid.Volts(s.amps) // of a short of 1 A
		drop := one[r] - one[h]
		if drop <= 0 {
			return nil
		}
		s.ohms, s.total = drop, (m.rest[h]-m.rest[r])/drop
		s.volts = one
		for i := range one {
			s.volts[i] = m.rest[i] + one[i]*s.total
			s.amps[i] = m.steady[i] + s.amps[i]*s.total
		}
		return s.flowing()
	}
	for _, x := range m.feeds {
		if way := m.bridges(&x, h, r); way != 0 {
			s.total += way * x.amps
			m.push(s.amps, &x)
		}
	}
	for i, a := range m.steady {
		s.amps[i] += a
	}
	s.amps[h] -= s.total
	s.amps[r] += s.total
	s.volts = m.grid.Volts(s.amps)
	return s.flowing()
}

func (s *Short) flowing() *Short {
	if s.total == 0 {
		return nil
	}
	return s
}

// bridges says whether a short between two nodes closes the way of a feed whose poles nothing else
// joins: 1 where its hot side is the short's, -1 where it is the other way round, else 0.
func (m *mesh) bridges(x *feed, h, r int) float64 {
	a, b := m.grid.Island(x.hot), m.grid.Island(x.ret)
	switch hot, ret := m.grid.Island(h), m.grid.Island(r); {
	case hot == ret:
	case a == hot && b == ret:
		return 1
	case a == ret && b == hot:
		return -1
	}
	return 0
}
