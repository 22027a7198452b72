package network

import (
	"strings"

	"ferrule/schema"
)

// markReturns finds the return set: what conductors, buses, pass-throughs and mated contacts always
// join to the reference of its island. On alternating current it is neutral and ground.
func (b *builder) markReturns() {
	for i := range b.Nodes {
		n := &b.Nodes[i]
		n.Return = n.AC && n.Pole != schema.Line && n.Pole != schema.Pos // a bar of one pole for lines is a Pos
	}
	var queue []NodeID
	mark := func(id NodeID) {
		if id != None && !b.Nodes[id].AC && !b.Nodes[id].Return {
			b.Nodes[id].Return = true
			queue = append(queue, id)
		}
	}
	for _, refs := range b.references() {
		for _, r := range refs {
			mark(r)
		}
	}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, ei := range b.adjacent[id] {
			if e := &b.Edges[ei]; e.Kind != Element && e.Kind != Contact {
				mark(e.Other(id))
			}
		}
	}
}

// references lists the reference nodes of every galvanic island of direct current: its chassis and
// ground buses; else the negatives of its batteries that meet no other source's positive; else
// those of its other sources and converter outputs; else the returns of what is left.
func (b *builder) references() map[int][]NodeID {
	island := b.islands()
	const ranks = 4
	byRank := [ranks]map[int][]NodeID{}
	for i := range byRank {
		byRank[i] = map[int][]NodeID{}
	}
	put := func(rank int, id NodeID) {
		if id != None && !b.Nodes[id].AC {
			k := island.find(int(id))
			byRank[rank][k] = append(byRank[rank][k], id)
		}
	}
	for _, x := range b.Plan.Buses {
		if p := x.Polarity.Value; p == "chassis" || p == "ground" {
			put(0, b.at(x.Addr, "").nodes[0])
		}
	}
	wired := b.alwaysJoined()
	hot := map[int]bool{}
	for _, s := range b.Sources {
		hot[wired.find(int(s.Hot))] = true
	}
	for _, s := range b.Sources {
		rank := 2
		if s.Kind.Value == "battery" {
			rank = 1
		}
		if !hot[wired.find(int(s.Ret))] {
			put(rank, s.Ret)
		}
	}
	for _, c := range b.Converters {
		put(2, c.Out.Ret)
		put(3, c.In.Ret)
	}
	for _, l := range b.Loads {
		put(3, l.Ret)
	}
	out := map[int][]NodeID{}
	for rank := ranks - 1; rank >= 0; rank-- {
		for k, ids := range byRank[rank] {
			out[k] = ids
		}
	}
	return out
}

// islands joins everything that any position, source or load joins.
func (b *builder) islands() sets {
	s := newSets(len(b.Nodes))
	for _, e := range b.Edges {
		s.union(int(e.A), int(e.B))
	}
	for _, x := range b.Sources {
		s.union(int(x.Hot), int(x.Ret))
	}
	for _, x := range b.Loads {
		s.union(int(x.Hot), int(x.Ret))
	}
	return s
}

// alwaysJoined joins what conductors, pass-throughs and direct contact join in every state.
func (b *builder) alwaysJoined() sets {
	s := newSets(len(b.Nodes))
	for _, e := range b.Edges {
		if e.Kind == Wire || e.Kind == Through || e.Kind == Joint {
			s.union(int(e.A), int(e.B))
		}
	}
	return s
}

// findShorts reports sources whose two poles are joined by wires alone. Where there is none it
// reports other parts that are: no current can run through them, and rules would find nothing wrong.
func (b *builder) findShorts() {
	b.wired = b.alwaysJoined()
	for _, s := range b.Sources {
		if !b.bridged(s.Port) {
			continue
		}
		b.shorted = true
		b.problem(s.Range, "A source is short-circuited", "The two poles of %q are joined by wires in every position: see %s.", s.Named(), b.bridges(s.Port))
	}
	for _, p := range b.users() {
		if b.bridged(p.Port) && !b.shorted {
			b.problem(p.Header().Range, "Both poles are joined", "The two poles of %s%s are joined by wires in every position, so no current runs through it: see %s.",
				p.Header().Addr, p.side, b.bridges(p.Port))
		}
	}
}

// bridged says whether wires alone join the two poles of a port.
func (b *builder) bridged(p Port) bool {
	return p.Hot != None && p.Ret != None && b.wired.find(int(p.Hot)) == b.wired.find(int(p.Ret))
}

// bridges names the single wires that lie on the poles of a bridged port.
func (b *builder) bridges(p Port) string {
	var by []string
	for _, c := range b.Plan.Conductors {
		if n := b.end(c.From, schema.Pos); c.Polarity.Set && c.Polarity.Value != "pair" && n != None && b.wired.find(int(n)) == b.wired.find(int(p.Hot)) {
			by = append(by, c.Addr)
		}
	}
	return strings.Join(by, ", ")
}

// user is a load, or one side of a converter.
type user struct {
	schema.Block
	side string
	Port
}

func (b *builder) users() []user {
	var out []user
	for _, l := range b.Loads {
		out = append(out, user{l.Load, "", l.Port})
	}
	for _, c := range b.Converters {
		out = append(out, user{c.Converter, " input", c.In}, user{c.Converter, " output", c.Out})
	}
	return out
}

// findReversed reports parts whose positive is always joined to the reference: drawn the wrong way
// round, or on a system with its positive grounded. No rule sees current there, so none may hold.
func (b *builder) findReversed() {
	parts := b.users()
	for _, s := range b.Sources {
		parts = append(parts, user{s.Source, "", s.Port})
	}
	for _, p := range parts {
		if p.Hot == None || b.Nodes[p.Hot].AC || !b.Nodes[p.Hot].Return || b.bridged(p.Port) {
			continue
		}
		b.problem(p.Header().Range, "A positive is joined to the return",
			"The positive of %s%s is joined to the reference of its circuit (the chassis, or a battery's negative) in every position. It is reversed, or the positive is "+
				"grounded, which is not covered.", p.Header().Addr, p.side)
	}
}
