package circuit

import (
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// Faults is a section of the network as bolted shorts find it, in one corner. Batteries are a voltage
// behind a resistance, limited sources a current; what draws takes no part. A short's currents are
// linear in what feeds it, so one factoring serves every place.
type Faults struct {
	Section *Section

	c      *Circuit
	corner Corner
	slack  float64 // multiplies assumed battery resistances
	feeds  []feed
	lacks  []derive.Missing // without which the most (or least) is not known
	doubts []derive.Missing // what may not push anything at all, counted
	pair   *mesh            // as drawn
	bare   *mesh            // returns of no resistance
	open   map[int]bool     // edges that have opened meanwhile
	after  map[int]*Faults  // the same once another has, by edge
}

// Without is the same once a device has opened.
func (f *Faults) Without(device int) *Faults {
	if old := f.after[device]; old != nil {
		return old
	}
	out := *f
	out.pair, out.bare, out.after, out.open = nil, nil, nil, map[int]bool{device: true}
	for e := range f.open {
		out.open[e] = true
	}
	if f.after == nil {
		f.after = map[int]*Faults{}
	}
	f.after[device] = &out
	return &out
}

// Faults prepares a section. Prospective is the most that a short can draw, from everything; Least is
// the least that batteries give. What is doubted, a reverse current that nothing rules out, counts unless sure.
func (c *Circuit) Faults(s *Section, corner Corner, sure bool) *Faults {
	return c.faults(s, corner, sure, 1)
}

// FaultsWith is Faults with assumed battery resistances multiplied.
func (c *Circuit) FaultsWith(s *Section, corner Corner, slack float64) *Faults {
	return c.faults(s, corner, true, slack)
}

func (c *Circuit) faults(s *Section, corner Corner, sure bool, slack float64) *Faults {
	f := &Faults{Section: s, c: c, corner: corner, slack: slack}
	f.collect(sure)
	return f
}

// Short is a bolted short at one place.
type Short struct {
	At   network.NodeID
	Bare bool // to a return of no resistance

	m     *mesh
	hot   int // nodes of the mesh
	ret   int
	total float64   // A
	ohms  float64   // of all that stands behind it, as one; 0 where nothing but limited sources feeds it
	volts []float64 // by node of the mesh
	amps  []float64 // into the nodes
	flow  []float64 // by branch, once asked for
}

// elsewhere says whether a node is live in the section's own zones without being of the section.
func (f *Faults) elsewhere(id network.NodeID) bool {
	i := f.Section.View.Zone.Local(id)
	return i >= 0 && int(i) < len(f.Section.View.Zone.Nodes)
}

// At is the short between a live node and its own return there. Where one wire ends it is to the
// reference: with a return of no resistance for the most, with the drawn one for the least. ok is
// false where nothing flows; lacks then names what is missing, such as a drawn return.
func (f *Faults) At(id network.NodeID) (s *Short, lacks []derive.Missing, ok bool) {
	mate := f.c.Net.Mate(id)
	if mate != network.None && (f.corner == Least || !f.oneWire(id)) {
		if s = f.mesh(false).at(id, mate); s != nil {
			return s, f.lacking(s), true
		}
	}
	if f.corner == Least {
		return f.leastAt(id, mate)
	}
	m := f.mesh(true)
	for _, r := range append([]network.NodeID{mate}, f.references()...) {
		if x := m.at(id, r); x != nil && (s == nil || x.Amps() > s.Amps()) {
			s, x.Bare = x, true
		}
	}
	if s == nil {
		return nil, f.unsolved(m), false
	}
	return s, f.lacking(s), true
}

// leastAt is the least short of a place that has no return of its own: to the farthest bus that serves
// as one, where there is none to the farthest return of a part. What is itself a part needs its own.
func (f *Faults) leastAt(id, mate network.NodeID) (s *Short, lacks []derive.Missing, ok bool) {
	m := f.mesh(false)
	switch {
	case !f.Fed():
		return nil, f.unsolved(m), false
	case mate != network.None && f.port(id):
		return nil, merge(f.unsolved(m), derive.Missing{Subject: f.c.Net.Nodes[id].Addr, Attribute: "a return drawn to it"}), false
	}
	for _, bus := range []bool{true, false} {
		for _, r := range m.nodes {
			if !m.back(r) || bus != f.bus(r) || !bus && !f.port(r) {
				continue
			}
			if x := m.at(id, r); x != nil && (s == nil || x.Amps() < s.Amps()) {
				s = x
			}
		}
		if s != nil {
			return s, f.lacking(s), true
		}
	}
	return nil, merge(f.unsolved(m), derive.Missing{Subject: f.c.Net.Nodes[id].Addr, Attribute: "a return drawn beside it"}), false
}

func (f *Faults) bus(id network.NodeID) bool {
	_, ok := schema.Lookup[*schema.Bus](f.c.Net.Plan, f.c.Net.Nodes[id].Addr)
	return ok
}

// port says whether a node belongs to a part that gives or takes current.
func (f *Faults) port(id network.NodeID) bool {
	switch f.c.Net.Plan.Block(f.c.Net.Nodes[id].Addr).(type) {
	case *schema.Source, *schema.Load, *schema.Converter:
		return true
	}
	return false
}

// Fed says whether anything known pushes current into the section in this corner.
func (f *Faults) Fed() bool { return len(f.feeds) > 0 }

func (f *Faults) unsolved(m *mesh) []derive.Missing {
	if m.err != nil {
		return merge(f.lacks, derive.Missing{Subject: "plan", Attribute: m.err.Error()})
	}
	return f.lacks
}

// oneWire says whether a single wire ends at a node.
func (f *Faults) oneWire(id network.NodeID) bool {
	for _, e := range f.c.Net.At(id) {
		if w := f.c.Net.Edges[e].Wire; w != nil && w.Polarity.Set && w.Polarity.Value != "pair" {
			return true
		}
	}
	return false
}

// references lists the return nodes of what feeds the section.
func (f *Faults) references() []network.NodeID {
	var out []network.NodeID
	for _, x := range f.feeds {
		for _, id := range []network.NodeID{x.port.Ret, x.port.Hot} {
			if id != network.None && f.c.Net.Nodes[id].Return {
				out = append(out, id)
			}
		}
	}
	return out
}

// lacking is what a short's currents are not known without: for the least, the wires too.
func (f *Faults) lacking(s *Short) []derive.Missing {
	out := f.lacks
	if f.corner == Least {
		out = merge(append([]derive.Missing(nil), out...), s.Vague()...)
	}
	return out
}

// Amps is the whole current of the short.
func (s *Short) Amps() float64 { return math.Abs(s.total) }

// Through is the current in an edge, from A to B, in A.
func (s *Short) Through(edge int) float64 {
	k, ok := s.m.of[edge]
	if !ok {
		return 0
	}
	return s.currents()[k]
}

func (s *Short) currents() []float64 {
	if s.flow == nil {
		s.flow = s.m.grid.Currents(s.volts, s.amps)
	}
	return s.flow
}

// small is the share of a short below which a current counts as none.
const small = 1e-6

// carries says whether a branch carries a part of the short.
func (s *Short) carries(amps float64) bool { return math.Abs(amps) > small*math.Abs(s.total) }

// Vague names the wires of unknown resistance that carry the short: they count as nothing, so the
// short is then the most that it can be.
func (s *Short) Vague() []derive.Missing {
	var out []derive.Missing
	for k, vague := range s.m.vague {
		if vague && s.carries(s.currents()[k]) {
			_, lacks := s.m.f.c.Ohms(s.m.edges[k], s.m.f.corner)
			out = merge(out, lacks...)
		}
	}
	return out
}

// Ways lists the edges that carry the short, in order, and the sources that feed it.
func (s *Short) Ways() (edges, sources []int) {
	for k, e := range s.m.edges {
		if s.carries(s.currents()[k]) {
			edges = append(edges, e)
		}
	}
	for i := range s.m.feeds {
		if x := &s.m.feeds[i]; x.source >= 0 && s.carries(s.gives(x)) {
			sources = append(sources, x.source)
		}
	}
	return edges, sources
}

// Witness is the positions that matter to what carries the short.
func (s *Short) Witness() []network.Position {
	edges, sources := s.Ways()
	return s.m.f.Section.View.Witness(edges, sources...)
}

// gives is what a feed puts into the short, in A.
func (s *Short) gives(x *feed) float64 {
	if x.branch >= 0 {
		return (x.volts - s.volts[x.hot] + s.volts[x.ret]) / x.ohms
	}
	if a, b := s.m.grid.Island(x.hot), s.m.grid.Island(x.ret); a == b || s.ohms == 0 && s.m.bridges(x, s.hot, s.ret) != 0 {
		return x.amps
	}
	return 0
}

// Number is the current in an edge with its derivation; without an edge, -1, that of the whole short.
func (s *Short) Number(edge int) derive.Number {
	name, symbol := "most fault current at "+s.m.f.c.Net.Nodes[s.At].Place(), "Ipf"
	if s.m.f.corner == Least {
		name, symbol = "least fault current at "+s.m.f.c.Net.Nodes[s.At].Place(), "Imf"
	}
	from, formula := s.from()
	total := derive.Compute(name, symbol, s.Amps(), "A", symbol+formula, from...)
	if edge < 0 {
		return total
	}
	amps := math.Abs(s.Through(edge))
	if math.Abs(amps-s.Amps()) <= small*s.Amps() {
		return total
	}
	return derive.Compute("part of it that passes "+s.m.f.c.partName(edge), "Ie", amps, "A", "by Kirchhoff's laws over all that carries it", total)
}

// from lists the numbers that a short is made of: what feeds it, then what carries it.
func (s *Short) from() (from []derive.Number, formula string) {
	fed, loop := 0, true
	for i := range s.m.feeds {
		x := &s.m.feeds[i]
		if g := s.gives(x); s.carries(g) {
			fed++
			from = append(from, x.numbers...)
			loop = loop && x.branch >= 0
		}
	}
	for k, e := range s.m.edges {
		i := s.currents()[k]
		n, _ := s.m.f.c.Ohms(e, s.m.f.corner)
		if n.Kind == 0 || !s.carries(i) || s.m.short && s.m.back(s.m.f.c.Net.Edges[e].A) && s.m.back(s.m.f.c.Net.Edges[e].B) {
			continue
		}
		loop = loop && math.Abs(math.Abs(i)-s.Amps()) <= small*s.Amps()
		from = append(from, n)
	}
	switch {
	case fed == 1 && loop:
		return from, " = V / (Ri + sum of R of both runs)"
	case s.ohms == 0:
		return from, " = sum of what the limited sources give"
	}
	return from, " by Kirchhoff's laws over what feeds it and what carries it"
}

// Converters lists the converters that feed the short.
func (s *Short) Converters() []int {
	var out []int
	for i := range s.m.feeds {
		if x := &s.m.feeds[i]; x.conv >= 0 && s.carries(s.gives(x)) {
			out = append(out, x.conv)
		}
	}
	return out
}
