package network

import (
	"fmt"

	"github.com/hashicorp/hcl/v2"

	"ferrule/schema"
)

// terminal is a terminal of a block before and after its nodes exist.
type terminal struct {
	addr, name, contact string
	single              schema.Pole // WholePair for a pair; else the one pole it has
	ac                  bool
	nodes               [3]NodeID // hot, return, ground
}

// has says whether the terminal has a node of its own in a slot.
func (t *terminal) has(s int) bool {
	return t.nodes[s] != None && (t.single == schema.WholePair || slot(t.single) == s)
}

type builder struct {
	*Network
	terms []*terminal
	byKey map[string]int
	diags hcl.Diagnostics

	wired   sets // what wires and direct contact join in every state
	shorted bool // then every positive is a return, and one report is enough
}

// Build wires a plan. A plan with errors gives the network of what could be read; the diagnostics
// say where alternating and direct current are joined, and which source is short-circuited by
// wires alone.
func Build(p *schema.Plan) (*Network, hcl.Diagnostics) {
	b := &builder{Network: &Network{Plan: p, vars: map[string]int{}, ports: map[string]NodeID{}, joined: map[string]*Zone{}}, byKey: map[string]int{}}
	b.declare()
	b.markAC()
	b.makeNodes()
	b.makeVariables()
	b.makeEdges()
	b.makePorts()
	b.index()
	b.markReturns()
	if b.findShorts(); !b.shorted {
		b.findReversed()
	}
	b.makeZones()
	return b.Network, b.diags
}

func key(addr, name, contact string) string { return addr + suffix(name) + suffix(contact) }

// declare lists the terminals of every block.
func (b *builder) declare() {
	add := func(addr, name, contact string, single schema.Pole) {
		b.byKey[key(addr, name, contact)] = len(b.terms)
		b.terms = append(b.terms, &terminal{addr: addr, name: name, contact: contact, single: single})
	}
	for _, blk := range b.Plan.Blocks() {
		a := blk.Header().Addr
		switch x := blk.(type) {
		case *schema.Source, *schema.Load:
			add(a, "", "", schema.WholePair)
		case *schema.Bus:
			add(a, "", "", busPole(x))
		case *schema.Fuse:
			add(a, "line", "", schema.WholePair)
			add(a, "load", "", schema.WholePair)
		case *schema.Converter:
			add(a, "in", "", schema.WholePair)
			add(a, "out", "", schema.WholePair)
		case *schema.Switch:
			for _, t := range x.Terminals.List {
				add(a, t.Value, "", schema.WholePair)
			}
		case *schema.Connector:
			for _, side := range []string{"fixed", "free"} {
				add(a, side, "", schema.WholePair)
				for _, c := range x.Contacts.List {
					add(a, side, c.Value, schema.Pos)
				}
			}
		}
	}
}

func busPole(x *schema.Bus) schema.Pole {
	switch x.Polarity.Value {
	case "positive":
		return schema.Pos
	case "negative", "chassis":
		return schema.Neg
	case "ground":
		return schema.Ground
	}
	return schema.WholePair
}

// term finds the terminal a reference names, nil where it did not resolve.
func (b *builder) term(r schema.Ref) *terminal {
	if i, ok := b.byKey[key(r.Addr, r.Terminal, r.Contact)]; ok && r.Addr != "" {
		return b.terms[i]
	}
	return nil
}

func (b *builder) makeNodes() {
	for _, t := range b.terms {
		t.nodes = [3]NodeID{None, None, None}
		switch {
		case t.single != schema.WholePair:
			id := b.node(t, t.single)
			t.nodes = [3]NodeID{id, id, id}
		case t.ac:
			for i, p := range []schema.Pole{schema.Line, schema.Neutral, schema.Ground} {
				t.nodes[i] = b.node(t, p)
			}
		default:
			t.nodes[0], t.nodes[1] = b.node(t, schema.Pos), b.node(t, schema.Neg)
		}
	}
}

func (b *builder) node(t *terminal, p schema.Pole) NodeID {
	id := NodeID(len(b.Nodes))
	n := Node{Addr: t.addr, Terminal: t.name, Contact: t.contact, Pole: p, AC: t.ac}
	b.Nodes = append(b.Nodes, n)
	b.ports[n.Name()] = id
	if t.single != schema.WholePair {
		b.ports[n.Place()] = id
	}
	return id
}

// slot is a pole's index in terminal.nodes.
func slot(p schema.Pole) int {
	switch p {
	case schema.Neg, schema.Neutral:
		return 1
	case schema.Ground:
		return 2
	}
	return 0
}

// end is the node that one pole of a conductor's end lands on.
func (b *builder) end(r schema.Ref, pole schema.Pole) NodeID {
	t := b.term(r)
	if t == nil {
		return None
	}
	if r.Pole != schema.WholePair {
		pole = r.Pole
	}
	id := t.nodes[slot(pole)]
	if id == None && pole == schema.Ground { // grounding wire to a direct-current part: its negative
		id = t.nodes[1]
	}
	return id
}

func (b *builder) edge(e Edge) {
	if e.A == None || e.B == None || e.A == e.B {
		return
	}
	e.Pole = b.Nodes[e.A].Pole
	b.Edges = append(b.Edges, e)
}

// pair adds an edge per node of two terminals; a terminal with one node takes part with that one.
func (b *builder) pair(kind EdgeKind, addr string, x, y *terminal, when Condition, slots ...int) {
	if x == nil || y == nil {
		return
	}
	for _, s := range slots {
		if !x.has(s) || !y.has(s) {
			continue
		}
		b.edge(Edge{Kind: kind, Addr: addr, A: x.nodes[s], B: y.nodes[s], When: when})
	}
}

func (b *builder) makeEdges() {
	for _, blk := range b.Plan.Blocks() {
		when := b.whole(blk)
		switch x := blk.(type) {
		case *schema.Conductor:
			b.wire(x, when)
		case *schema.Fuse:
			b.fuse(x, when)
		case *schema.Switch:
			b.contacts(x, when)
		case *schema.Connector:
			b.mates(x, when)
		case *schema.Converter:
			if !x.Isolated.True() && b.at(x.Addr, "in").ac == b.at(x.Addr, "out").ac && !b.at(x.Addr, "in").ac {
				b.pair(Through, x.Addr, b.at(x.Addr, "in"), b.at(x.Addr, "out"), when, 1)
			}
		}
	}
	for _, l := range b.Plan.Links {
		when := append(b.wholeOf(l.A.Addr), b.wholeOf(l.B.Addr)...)
		if l.A.Pole != schema.WholePair || l.B.Pole != schema.WholePair {
			b.edge(Edge{Kind: Joint, Addr: l.B.Addr, A: b.end(l.A, l.A.Pole), B: b.end(l.B, l.B.Pole), When: when})
			continue
		}
		b.pair(Joint, l.B.Addr, b.term(l.A), b.term(l.B), when, 0, 1, 2)
	}
}

func (b *builder) at(addr, name string) *terminal {
	if i, ok := b.byKey[key(addr, name, "")]; ok {
		return b.terms[i]
	}
	return nil
}

func (b *builder) wire(c *schema.Conductor, when Condition) {
	add := func(p schema.Pole) {
		b.edge(Edge{Kind: Wire, Addr: c.Addr, A: b.end(c.From, p), B: b.end(c.To, p), When: when, Wire: c})
	}
	switch c.Polarity.Value {
	case "positive":
		add(schema.Pos)
	case "negative":
		add(schema.Neg)
	case "grounding":
		add(schema.Ground)
	default:
		add(schema.Pos)
		add(schema.Neg)
		if t := b.term(c.From); t != nil && t.ac && c.Grounding.Set {
			add(schema.Ground)
		}
	}
}

func (b *builder) fuse(x *schema.Fuse, when Condition) {
	line, load := b.at(x.Addr, "line"), b.at(x.Addr, "load")
	b.edge(Edge{Kind: Element, Addr: x.Addr, A: line.nodes[0], B: load.nodes[0], When: when, Fuse: x})
	b.pair(Through, x.Addr, line, load, when, 1, 2)
	b.sits(x.On, x.Addr, line, when)
}

// sits joins a part's first terminal to the block that it sits on.
func (b *builder) sits(on schema.Ref, addr string, t *terminal, when Condition) {
	if !on.Set || t == nil {
		return
	}
	host := append(b.wholeOf(on.Addr), when...)
	if on.Pole != schema.WholePair {
		b.edge(Edge{Kind: Joint, Addr: addr, A: b.end(on, on.Pole), B: t.nodes[0], When: host})
		return
	}
	b.pair(Joint, addr, b.term(on), t, host, 0, 1, 2)
}

func (b *builder) mates(x *schema.Connector, when Condition) {
	if v := b.Var(x.Addr); v >= 0 {
		when = append(Condition{{Var: v, At: []bool{false, true}}}, when...)
	}
	fixed, free := b.at(x.Addr, "fixed"), b.at(x.Addr, "free")
	b.pair(Mate, x.Addr, fixed, free, when, 0, 1, 2)
	for _, c := range x.Contacts.List {
		f, g := b.terms[b.byKey[key(x.Addr, "fixed", c.Value)]], b.terms[b.byKey[key(x.Addr, "free", c.Value)]]
		b.edge(Edge{Kind: Mate, Addr: x.Addr, A: f.nodes[0], B: g.nodes[0], When: when})
	}
	b.sits(x.On, x.Addr, fixed, b.whole(x))
}

// contacts adds a switch's contacts: one edge per pair of terminals that some position joins.
func (b *builder) contacts(x *schema.Switch, when Condition) {
	if len(x.Terminals.List) == 0 {
		return
	}
	v := b.Var(x.Addr)
	for _, c := range contactsOf(x) {
		m := append(Condition{{Var: v, At: c.at}}, when...)
		s, t := b.at(x.Addr, c.a), b.at(x.Addr, c.b)
		b.pair(Contact, x.Addr, s, t, m, 0)
		if x.Poles.Or(1) >= 2 {
			b.pair(Contact, x.Addr, s, t, m, 1)
		}
	}
	first := b.at(x.Addr, x.Terminals.List[0].Value)
	for _, t := range x.Terminals.List[1:] {
		other := b.at(x.Addr, t.Value)
		if x.Poles.Or(1) < 2 {
			b.pair(Through, x.Addr, first, other, when, 1)
		}
		b.pair(Through, x.Addr, first, other, when, 2)
	}
	b.sits(x.On, x.Addr, first, when)
}

func (b *builder) makePorts() {
	port := func(t *terminal) Port { return Port{t.nodes[0], t.nodes[1], t.nodes[2]} }
	for _, x := range b.Plan.Sources {
		b.Sources = append(b.Sources, Source{x, port(b.at(x.Addr, "")), b.Var(x.Addr)})
	}
	for _, x := range b.Plan.Loads {
		b.Loads = append(b.Loads, Load{x, port(b.at(x.Addr, "")), b.presence(x)})
	}
	for _, x := range b.Plan.Converters {
		b.Converters = append(b.Converters, Converter{x, port(b.at(x.Addr, "in")), port(b.at(x.Addr, "out")), b.presence(x)})
	}
}

func (b *builder) index() {
	b.adjacent = make([][]int, len(b.Nodes))
	for i, e := range b.Edges {
		b.adjacent[e.A] = append(b.adjacent[e.A], i)
		b.adjacent[e.B] = append(b.adjacent[e.B], i)
	}
}

func (b *builder) problem(at hcl.Range, summary, detail string, args ...any) {
	b.diags = append(b.diags, &hcl.Diagnostic{Severity: hcl.DiagError, Summary: summary, Detail: fmt.Sprintf(detail, args...), Subject: &at})
}
