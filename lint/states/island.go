package states

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/network"
)

// Numbers of circuits that share nothing do not depend on each other, so that a length left out in
// one need not silence the other. Islands are what the state joins on the live side, parts counted
// as joints; those whose currents come home over one wire count as one.

// tie finds zones that share a wire home.
func (s *Survey) tie() {
	s.shares = make([]int, len(s.Net.Zones))
	for i := range s.shares {
		s.shares[i] = i
	}
	owner := map[int]int{}
	for i, z := range s.Net.Zones {
		for _, e := range z.Returns {
			if k := s.Net.Edges[e].Kind; k != network.Wire && k != network.Mate {
				continue
			}
			if o, ok := owner[e]; ok {
				s.merge(o, i)
			} else {
				owner[e] = i
			}
		}
	}
}

func (s *Survey) merge(a, b int) {
	from, to := s.shares[b], s.shares[a]
	for i, g := range s.shares {
		if g == from {
			s.shares[i] = to
		}
	}
}

// dropIdle forgets what is missing of conductors that carry nothing in the state, since they lead
// nowhere.
func (x *solved) dropIdle() {
	idle := x.idle()
	x.lacks = slices.DeleteFunc(x.lacks, func(m lint.Missing) bool {
		edges := x.s.Net.EdgesOf(m.Subject)
		return len(edges) > 0 && !slices.ContainsFunc(edges, func(e int) bool { return !idle[e] || x.s.Net.Edges[e].Wire == nil })
	})
}

// idle finds the edges in which no current can run: dead ends are cut back, and with them the parts
// that have lost a pole, until none is left.
func (x *solved) idle() map[int]bool {
	n := x.s.Net
	idle, ways := map[int]bool{}, make([]int, len(n.Nodes))
	for e := range n.Edges {
		if idle[e] = !x.view.Conducts(e); !idle[e] {
			ways[n.Edges[e].A]++
			ways[n.Edges[e].B]++
		}
	}
	ports := x.ports()
	for changed := true; changed; {
		changed = false
		keep := map[network.NodeID]bool{}
		for _, p := range ports {
			if p.Hot != network.None && p.Ret != network.None && ways[p.Hot] > 0 && ways[p.Ret] > 0 {
				keep[p.Hot], keep[p.Ret] = true, true
			}
		}
		for i := range n.Nodes {
			changed = x.cutBack(network.NodeID(i), keep, ways, idle) || changed
		}
	}
	return idle
}

// cutBack takes a dead end away, and those that this makes.
func (x *solved) cutBack(id network.NodeID, keep map[network.NodeID]bool, ways []int, idle map[int]bool) (any bool) {
	for ways[id] == 1 && !keep[id] {
		at := x.s.Net.At(id)
		e := at[slices.IndexFunc(at, func(e int) bool { return !idle[e] })]
		idle[e], any = true, true
		ways[id]--
		id = x.s.Net.Edges[e].Other(id)
		ways[id]--
	}
	return any
}

// ports lists where parts that are there meet the network.
func (x *solved) ports() []network.Port {
	n := x.s.Net
	var out []network.Port
	for i := range n.Sources {
		if x.view.HasSource(i) {
			out = append(out, n.Sources[i].Port)
		}
	}
	for i := range n.Loads {
		if x.view.HasLoad(i) {
			out = append(out, n.Loads[i].Port)
		}
	}
	for i := range n.Converters {
		if x.view.HasConverter(i) {
			out = append(out, n.Converters[i].In, n.Converters[i].Out)
		}
	}
	return out
}

// spread puts what is missing on the islands that it concerns.
func (x *solved) spread() {
	n := x.s.Net
	root := make([]int32, len(n.Nodes))
	for i := range root {
		root[i] = int32(i)
	}
	find := func(i network.NodeID) int32 {
		k := int32(i)
		for root[k] != k {
			root[k] = root[root[k]]
			k = root[k]
		}
		return k
	}
	x.island = find
	join := func(a, b network.NodeID) {
		if a != network.None && b != network.None && !n.Nodes[a].Return && !n.Nodes[b].Return {
			root[find(b)] = find(a)
		}
	}
	for e := range n.Edges {
		if x.view.Conducts(e) {
			join(n.Edges[e].A, n.Edges[e].B)
		}
	}
	x.through(join)
	x.blame(find)
}

// through joins what parts couple: converters their two sides, and one wire home all that is live on it.
func (x *solved) through(join func(a, b network.NodeID)) {
	n := x.s.Net
	for i := range n.Converters {
		if x.view.HasConverter(i) {
			join(n.Converters[i].In.Hot, n.Converters[i].Out.Hot)
		}
	}
	first := map[int]network.NodeID{}
	for i := range n.Nodes {
		id := network.NodeID(i)
		z := n.ZoneOf(id)
		if z == nil || len(x.live.At(id)) == 0 {
			continue
		}
		if f, ok := first[x.s.shares[z.ID]]; ok {
			join(f, id)
		} else {
			first[x.s.shares[z.ID]] = id
		}
	}
}

// blame finds the islands of what is missing; what has no live side of its own concerns everything.
func (x *solved) blame(find func(network.NodeID) int32) {
	n := x.s.Net
	for _, m := range x.lacks {
		var at []int32
		put := func(id network.NodeID) {
			if id != network.None && !n.Nodes[id].Return && !slices.Contains(at, find(id)) {
				at = append(at, find(id))
			}
		}
		for i := range n.Nodes {
			if n.Nodes[i].Addr == m.Subject {
				put(network.NodeID(i))
			}
		}
		for e := range n.Edges {
			if n.Edges[e].Addr == m.Subject {
				put(n.Edges[e].A)
				put(n.Edges[e].B)
			}
		}
		if len(at) == 0 {
			x.all = append(x.all, m)
		}
		for _, k := range at {
			x.short[k] = append(x.short[k], m)
		}
	}
}
