package network

import "ferrule/schema"

// Mains groups the circuits of alternating current: those that a neutral, a ground or a part joins
// are one zone. Its returns are every neutral and ground among them, and the returns of direct
// current by which grounds are joined.
func (n *Network) Mains() []*Zone {
	if n.mains == nil {
		n.mains = []*Zone{}
		s := n.powered()
		at := map[int]*Zone{}
		for _, z := range n.Zones {
			if !z.AC {
				continue
			}
			root := s.find(int(z.Nodes[0]))
			if at[root] == nil {
				at[root] = &Zone{ID: -1, AC: true}
				n.mains = append(n.mains, at[root])
			}
			at[root].take(z)
		}
		for root, z := range at {
			n.ground(z, func(id NodeID) bool { return s.find(int(id)) == root })
		}
	}
	return n.mains
}

// take adds what is live of another zone.
func (z *Zone) take(o *Zone) {
	z.Nodes, z.Edges = append(z.Nodes, o.Nodes...), append(z.Edges, o.Edges...)
	z.Sources, z.Loads = append(z.Sources, o.Sources...), append(z.Loads, o.Loads...)
	z.Inputs, z.Outputs = append(z.Inputs, o.Inputs...), append(z.Outputs, o.Outputs...)
}

// powered joins the nodes of each system of alternating current with the returns it is bonded to.
func (n *Network) powered() sets {
	s := newSets(len(n.Nodes))
	part := func(id NodeID) bool { return n.Nodes[id].AC || n.Nodes[id].Return }
	for _, e := range n.Edges {
		if part(e.A) && part(e.B) {
			s.union(int(e.A), int(e.B))
		}
	}
	port := func(p Port) {
		for _, id := range []NodeID{p.Ret, p.Ground} {
			if p.Hot != None && id != None && n.Nodes[p.Hot].AC {
				s.union(int(p.Hot), int(id))
			}
		}
	}
	for _, x := range n.Sources {
		port(x.Port)
	}
	for _, x := range n.Loads {
		port(x.Port)
	}
	for _, x := range n.Converters {
		port(x.In)
		port(x.Out)
	}
	return s
}

// ground gives a zone its returns: neutrals, grounds, and the returns of direct current that are no
// dead end.
func (n *Network) ground(z *Zone, in func(NodeID) bool) {
	keep, edges, degree := map[NodeID]bool{}, map[int]bool{}, map[NodeID]int{}
	back := func(id NodeID) bool { return n.Nodes[id].Return && in(id) }
	for i, e := range n.Edges {
		if back(e.A) && back(e.B) {
			edges[i] = true
			degree[e.A]++
			degree[e.B]++
		}
	}
	for i := range n.Nodes {
		keep[NodeID(i)] = n.Nodes[i].AC
	}
	for i := range n.Nodes {
		n.prune(NodeID(i), keep, degree, edges)
	}
	z.Returns = keys(edges)
	z.Vars = n.varsOf(z)
	n.number(z)
}

// Neutral says whether a node is a neutral of alternating current: neither line nor ground.
func (n *Network) Neutral(id NodeID) bool {
	x := &n.Nodes[id]
	return x.AC && (x.Pole == schema.Neutral || x.Pole == schema.Neg)
}

// Bond says whether an edge joins a neutral to a ground, or to a return of direct current.
func (n *Network) Bond(edge int) bool {
	e := &n.Edges[edge]
	return n.Nodes[e.A].Return && n.Nodes[e.B].Return && n.Neutral(e.A) != n.Neutral(e.B)
}
