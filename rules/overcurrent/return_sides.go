package overcurrent

import "ferrule/lint/network"

// sidesOf numbers the nodes by what everything closed joins; -1 where that has the positive or the line
// of anything, or alternating current. Where a selector or a reversing switch would join both sides of a
// source, which none of its positions does, its contacts are left out.
func sidesOf(n *network.Network) []int {
	comp := joinedBy(n, func(int) bool { return true })
	mixed := map[int]bool{}
	for i := range n.Sources {
		if s := &n.Sources[i]; s.Hot != network.None && s.Ret != network.None && comp[s.Hot] == comp[s.Ret] {
			mixed[comp[s.Hot]] = true
		}
	}
	if len(mixed) > 0 {
		comp = joinedBy(n, func(e int) bool { return !mixed[comp[n.Edges[e].A]] || !exclusive(n, e) })
	}
	live := map[int]bool{}
	for _, id := range hots(n) {
		if id != network.None {
			live[comp[id]] = true
		}
	}
	for i := range comp {
		if live[comp[i]] || n.Nodes[i].AC {
			comp[i] = -1
		}
	}
	return comp
}

// joinedBy numbers the nodes by what some edges join.
func joinedBy(n *network.Network, use func(e int) bool) []int {
	comp := make([]int, len(n.Nodes))
	for i := range comp {
		comp[i] = -2
	}
	for i := range comp {
		if comp[i] != -2 {
			continue
		}
		comp[i] = i
		for queue := []network.NodeID{network.NodeID(i)}; len(queue) > 0; queue = queue[1:] {
			for _, e := range n.At(queue[0]) {
				if to := n.Edges[e].Other(queue[0]); comp[to] == -2 && use(e) {
					comp[to] = i
					queue = append(queue, to)
				}
			}
		}
	}
	return comp
}

// exclusive says whether an edge is a contact of a switch that has others which never close with it.
func exclusive(n *network.Network, e int) bool {
	if n.Edges[e].Kind != network.Contact {
		return false
	}
	own := n.Var(n.Edges[e].Addr)
	at := func(k int) []bool {
		for _, l := range n.Edges[k].When {
			if l.Var == own {
				return l.At
			}
		}
		return nil
	}
	for _, k := range n.EdgesOf(n.Edges[e].Addr) {
		a, b := at(e), at(k)
		if n.Edges[k].Kind != network.Contact || a == nil || b == nil {
			continue
		}
		both := false
		for i := range a {
			both = both || a[i] && b[i]
		}
		if !both {
			return true
		}
	}
	return false
}

func hots(n *network.Network) []network.NodeID {
	var out []network.NodeID
	for i := range n.Sources {
		out = append(out, n.Sources[i].Hot)
	}
	for i := range n.Loads {
		out = append(out, n.Loads[i].Hot)
	}
	for i := range n.Converters {
		out = append(out, n.Converters[i].In.Hot, n.Converters[i].Out.Hot)
	}
	return out
}
