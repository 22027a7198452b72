package network

import "sort"

// Zone is a part of the network that wires, devices and contacts can join on the live side, with
// every contact closed. Converters separate zones; so do sources and loads. A question about what
// is joined on the live side can be answered inside one zone.
type Zone struct {
	ID    int
	AC    bool
	Nodes []NodeID // live nodes
	Edges []int    // edges between them
	// Returns are the edges through which current of this zone's ports can come back.
	Returns []int
	Vars    []int // variables on which any of it depends, ascending
	Sources []int // indices into Network.Sources whose hot node is here
	Loads   []int // likewise
	Inputs  []int // converters whose input is here
	Outputs []int // converters whose output is here

	local []int32 // by node: its own number, from 1; 0 for one that it does not know
	known []NodeID
}

// Size is the number of nodes that the zone knows.
func (z *Zone) Size() int { return len(z.known) }

// Known lists the nodes that the zone knows, in its own numbering.
func (z *Zone) Known() []NodeID { return z.known }

// Local is a node's number in the zone's own numbering, -1 where the zone does not know it.
func (z *Zone) Local(id NodeID) int32 {
	if id < 0 || int(id) >= len(z.local) {
		return -1
	}
	return z.local[id] - 1
}

// number gives the zone's nodes their own numbering.
func (n *Network) number(z *Zone) {
	z.local, z.known = make([]int32, len(n.Nodes)), nil
	add := func(id NodeID) {
		if id != None && z.local[id] == 0 {
			z.known = append(z.known, id)
			z.local[id] = int32(len(z.known))
		}
	}
	for _, id := range z.Nodes {
		add(id)
	}
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			add(n.Edges[e].A)
			add(n.Edges[e].B)
		}
	}
	for _, id := range n.returnPorts(z) {
		add(id)
	}
}

// makeZones splits the live side into zones.
func (b *builder) makeZones() {
	s := newSets(len(b.Nodes))
	for _, e := range b.Edges {
		if !b.Nodes[e.A].Return && !b.Nodes[e.B].Return {
			s.union(int(e.A), int(e.B))
		}
	}
	b.zoneOf = make([]int, len(b.Nodes))
	byRoot := map[int]*Zone{}
	for i, n := range b.Nodes {
		b.zoneOf[i] = -1
		if n.Return {
			continue
		}
		z := byRoot[s.find(i)]
		if z == nil {
			z = &Zone{ID: len(b.Zones), AC: n.AC}
			byRoot[s.find(i)] = z
			b.Zones = append(b.Zones, z)
		}
		z.Nodes = append(z.Nodes, NodeID(i))
		b.zoneOf[i] = z.ID
	}
	for i, e := range b.Edges {
		for _, end := range []NodeID{e.A, e.B} {
			if z := b.ZoneOf(end); z != nil {
				z.Edges = append(z.Edges, i)
				break
			}
		}
	}
	b.attachPorts()
	for _, z := range b.Zones {
		z.Returns = b.returnsOf(z, func(id NodeID) bool { return b.zoneOf[id] == z.ID })
		z.Vars = b.varsOf(z)
		b.number(z)
	}
}

func (b *builder) attachPorts() {
	for i := range b.Sources {
		if z := b.ZoneOf(b.Sources[i].Hot); z != nil {
			z.Sources = append(z.Sources, i)
		}
	}
	for i := range b.Loads {
		if z := b.ZoneOf(b.Loads[i].Hot); z != nil {
			z.Loads = append(z.Loads, i)
		}
	}
	for i := range b.Converters {
		if z := b.ZoneOf(b.Converters[i].In.Hot); z != nil {
			z.Inputs = append(z.Inputs, i)
		}
		if z := b.ZoneOf(b.Converters[i].Out.Hot); z != nil {
			z.Outputs = append(z.Outputs, i)
		}
	}
}

// returnPorts lists the return nodes of everything attached to a zone.
func (n *Network) returnPorts(z *Zone) []NodeID {
	var out []NodeID
	for _, i := range z.Sources {
		out = append(out, n.Sources[i].Ret)
	}
	for _, i := range z.Loads {
		out = append(out, n.Loads[i].Ret)
	}
	for _, i := range z.Inputs {
		out = append(out, n.Converters[i].In.Ret)
	}
	for _, i := range z.Outputs {
		out = append(out, n.Converters[i].Out.Ret)
	}
	return out
}

// returnsOf finds the edges on some way between two return ports of the zone: everything reachable
// from them outside the zone's own live side, less what is pruned as a dead end.
func (n *Network) returnsOf(z *Zone, own func(NodeID) bool) []int {
	keep := map[NodeID]bool{} // a port is no dead end
	seen := map[NodeID]bool{}
	var queue []NodeID
	visit := func(id NodeID) {
		if id != None && !seen[id] && !own(id) {
			seen[id] = true
			queue = append(queue, id)
		}
	}
	for _, id := range n.returnPorts(z) {
		keep[id] = true
		visit(id)
	}
	for _, ei := range z.Edges { // where a contact or device leads from the live side onto a return
		for _, id := range []NodeID{n.Edges[ei].A, n.Edges[ei].B} {
			if !own(id) {
				keep[id] = true
				visit(id)
			}
		}
	}
	edges := map[int]bool{}
	degree := map[NodeID]int{}
	for i := 0; i < len(queue); i++ {
		for _, ei := range n.adjacent[queue[i]] {
			o := n.Edges[ei].Other(queue[i])
			if own(o) {
				continue
			}
			visit(o)
			if !edges[ei] {
				edges[ei] = true
				degree[n.Edges[ei].A]++
				degree[n.Edges[ei].B]++
			}
		}
	}
	for i := len(queue) - 1; i >= 0; i-- {
		n.prune(queue[i], keep, degree, edges)
	}
	out := make([]int, 0, len(edges))
	for ei := range edges {
		out = append(out, ei)
	}
	sort.Ints(out)
	return out
}

// prune takes away a dead end, and the next one that this makes.
func (n *Network) prune(id NodeID, keep map[NodeID]bool, degree map[NodeID]int, edges map[int]bool) {
	for degree[id] == 1 && !keep[id] {
		for _, ei := range n.adjacent[id] {
			if edges[ei] {
				delete(edges, ei)
				degree[id]--
				id = n.Edges[ei].Other(id)
				degree[id]--
				break
			}
		}
	}
}

func (n *Network) varsOf(z *Zone) []int {
	set := map[int]bool{}
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, ei := range list {
			for _, l := range n.Edges[ei].When {
				set[l.Var] = true
			}
		}
	}
	for _, i := range z.Sources {
		set[n.Sources[i].Present] = true
	}
	for _, i := range z.Loads {
		set[n.Loads[i].Present] = true
	}
	for _, list := range [][]int{z.Inputs, z.Outputs} {
		for _, i := range list {
			set[n.Converters[i].Present] = true
		}
	}
	delete(set, -1)
	out := make([]int, 0, len(set))
	for v := range set {
		out = append(out, v)
	}
	sort.Ints(out)
	return out
}

// Join merges zones into one, for questions that run through converters.
func (n *Network) Join(zones ...*Zone) *Zone {
	if len(zones) == 1 {
		return zones[0]
	}
	out := &Zone{ID: -1, AC: zones[0].AC}
	seen := map[int]bool{}
	returns, vars := map[int]bool{}, map[int]bool{}
	for _, z := range zones {
		if seen[z.ID] {
			continue
		}
		seen[z.ID] = true
		out.Nodes = append(out.Nodes, z.Nodes...)
		out.Edges = append(out.Edges, z.Edges...)
		out.Sources = append(out.Sources, z.Sources...)
		out.Loads = append(out.Loads, z.Loads...)
		out.Inputs = append(out.Inputs, z.Inputs...)
		out.Outputs = append(out.Outputs, z.Outputs...)
		for _, e := range z.Returns {
			returns[e] = true
		}
		for _, v := range z.Vars {
			vars[v] = true
		}
	}
	out.Returns, out.Vars = keys(returns), keys(vars)
	n.number(out)
	return out
}

func keys(m map[int]bool) []int {
	out := make([]int, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	sort.Ints(out)
	return out
}

// Whole is the whole network as one zone.
func (n *Network) Whole() *Zone {
	z := &Zone{ID: -1}
	for i := range n.Nodes {
		z.Nodes = append(z.Nodes, NodeID(i))
	}
	for i := range n.Edges {
		z.Edges = append(z.Edges, i)
	}
	for i := range n.Vars {
		z.Vars = append(z.Vars, i)
	}
	for i := range n.Sources {
		z.Sources = append(z.Sources, i)
	}
	for i := range n.Loads {
		z.Loads = append(z.Loads, i)
	}
	for i := range n.Converters {
		z.Inputs, z.Outputs = append(z.Inputs, i), append(z.Outputs, i)
	}
	n.number(z)
	return z
}
