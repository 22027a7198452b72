package network

// Trim is the zone less what means nothing to a question about some of its live nodes: loads,
// sources and converters that do not sit at one of them, dead ends that lead to none of them, and
// the variables on which only those depend. Between the nodes that are kept everything is joined as
// before, in every state; there are only fewer states to tell apart.
func (n *Network) Trim(z *Zone, keep ...NodeID) *Zone {
	kept := map[NodeID]bool{}
	for _, id := range keep {
		kept[id] = true
	}
	out := &Zone{ID: -1, AC: z.AC, Sources: only(z.Sources, func(i int) bool { return kept[n.Sources[i].Hot] }),
		Loads:   only(z.Loads, func(i int) bool { return kept[n.Loads[i].Hot] }),
		Inputs:  only(z.Inputs, func(i int) bool { return kept[n.Converters[i].In.Hot] }),
		Outputs: only(z.Outputs, func(i int) bool { return kept[n.Converters[i].Out.Hot] })}
	for _, id := range n.returnPorts(out) {
		kept[id] = true // live where sources stand on each other
	}
	own, edges, degree := map[NodeID]bool{}, map[int]bool{}, map[NodeID]int{}
	for _, id := range z.Nodes {
		own[id] = true
	}
	for _, e := range z.Edges {
		edges[e] = true
		for _, end := range []NodeID{n.Edges[e].A, n.Edges[e].B} {
			degree[end]++
			kept[end] = kept[end] || n.Nodes[end].Return // a contact onto the return side is no dead end
		}
	}
	for _, id := range z.Nodes {
		n.prune(id, kept, degree, edges)
	}
	for _, id := range z.Nodes {
		if kept[id] || degree[id] > 0 {
			out.Nodes = append(out.Nodes, id)
		}
	}
	out.Edges = only(z.Edges, func(e int) bool { return edges[e] })
	out.Returns = n.returnsOf(out, func(id NodeID) bool { return own[id] })
	out.Vars = n.varsOf(out)
	n.number(out)
	return out
}

func only(list []int, ok func(int) bool) []int {
	var out []int
	for _, i := range list {
		if ok(i) {
			out = append(out, i)
		}
	}
	return out
}
