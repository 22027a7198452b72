package conductor

import (
	"maps"
	"slices"

	"ferrule/lint"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// leastOhms stands for parts that count as without resistance, in ohm.
const leastOhms = 1e-7

// mostMeshed bounds the nodes at which ways meet that are taken together.
const mostMeshed = 300

// way is all that joins two nodes on one side, live or return.
type way struct {
	ohms  derive.Number
	edges []int          // in order of the network
	lacks []lint.Missing // without which the ohms are a least figure
	of    map[lint.Missing]bool
}

// unlike lists what a way back lacks that the way there does not lack too: the two runs of a pair are
// alike, whatever they are.
func (w way) unlike(there way) []lint.Missing {
	return slices.DeleteFunc(slices.Clone(w.lacks), func(m lint.Missing) bool { return there.of[m] })
}

// between takes all ways between two nodes of one side together.
func (r *returns) between(v *explore.View, a, b network.NodeID, side func(network.NodeID) bool, name, symbol string) way {
	w := way{edges: between(r.Net, v, a, b, side), of: map[lint.Missing]bool{}}
	var from []derive.Number
	m := mesh{}
	degree := map[network.NodeID]int{}
	single := true
	for _, e := range w.edges {
		n, lacks := r.bare(e)
		for _, x := range lacks {
			w.lacks, w.of[x] = append(w.lacks, x), true
		}
		if n.Kind != 0 {
			from = append(from, n)
		}
		x := &r.Net.Edges[e]
		m.join(x.A, x.B, 1/max(n.Value, leastOhms))
		for _, id := range []network.NodeID{x.A, x.B} {
			degree[id]++
			single = single && degree[id] <= 2
		}
	}
	ohms, ok := m.between(a, b)
	if !ok {
		w.lacks = append(w.lacks, lint.Missing{Subject: "plan", Attribute: "a simpler net of returns"})
	}
	how := "sum of the parts one after another, joints left out"
	if !single {
		how = "all ways that share, by their resistances, joints left out"
	}
	w.ohms = derive.Compute("resistance of the "+name, symbol, ohms, "ohm", how, from...)
	return w
}

// between lists the edges that lead from one node to another on one side, dead ends left out.
func between(n *network.Network, v *explore.View, a, b network.NodeID, side func(network.NodeID) bool) []int {
	at := map[network.NodeID][]int{a: nil}
	for queue := []network.NodeID{a}; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			to := n.Edges[e].Other(queue[0])
			if !v.Conducts(e) || !side(to) {
				continue
			}
			if _, seen := at[to]; !seen {
				at[to] = nil
				queue = append(queue, to)
			}
			at[queue[0]] = append(at[queue[0]], e)
		}
	}
	gone := map[int]bool{}
	left := func(id network.NodeID) []int {
		return slices.DeleteFunc(slices.Clone(at[id]), func(e int) bool { return gone[e] })
	}
	for id := range at {
		for id != a && id != b {
			rest := left(id)
			if len(rest) != 1 {
				break
			}
			gone[rest[0]] = true
			id = n.Edges[rest[0]].Other(id)
		}
	}
	edges := map[int]bool{}
	if _, reached := at[b]; reached && a != b {
		for _, list := range at {
			for _, e := range list {
				if !gone[e] {
					edges[e] = true
				}
			}
		}
	}
	return slices.Sorted(maps.Keys(edges))
}

// mesh is a net of resistances: conductance between neighbours, in siemens.
type mesh map[network.NodeID]map[network.NodeID]float64

func (m mesh) join(a, b network.NodeID, siemens float64) {
	for _, x := range [][2]network.NodeID{{a, b}, {b, a}} {
		if m[x[0]] == nil {
			m[x[0]] = map[network.NodeID]float64{}
		}
		if x[0] != x[1] {
			m[x[0]][x[1]] += siemens
		}
	}
}

// between is the resistance between two nodes, in ohm: the other nodes are taken out one after
// another, what joined them joins their neighbours instead. ok is false where that is too much work.
func (m mesh) between(a, b network.NodeID) (ohms float64, ok bool) {
	if a == b || len(m) == 0 {
		return 0, true
	}
	var plain []network.NodeID
	for _, id := range slices.Sorted(maps.Keys(m)) {
		if id != a && id != b {
			plain = append(plain, id)
		}
	}
	var core []network.NodeID
	for len(plain) > 0 {
		id := plain[len(plain)-1]
		plain = plain[:len(plain)-1]
		switch next := m[id]; {
		case next == nil:
		case len(next) > 2:
			core = append(core, id)
		default:
			for _, k := range m.takeOut(id) {
				if i := slices.Index(core, k); i >= 0 && len(m[k]) <= 2 {
					core, plain = slices.Delete(core, i, i+1), append(plain, k)
				}
			}
		}
	}
	if len(core) > mostMeshed {
		return 0, false
	}
	for len(core) > 0 {
		i := 0
		for k := range core {
			if len(m[core[k]]) < len(m[core[i]]) {
				i = k
			}
		}
		m.takeOut(core[i])
		core = slices.Delete(core, i, i+1)
	}
	return 1 / max(m[a][b], 1e-12), true
}

// takeOut replaces a node by what joins its neighbours, which it lists.
func (m mesh) takeOut(id network.NodeID) []network.NodeID {
	around := slices.Sorted(maps.Keys(m[id]))
	sum := 0.0
	for _, k := range around {
		sum += m[id][k]
	}
	for i, x := range around {
		for _, y := range around[:i] {
			m.join(x, y, m[id][x]*m[id][y]/sum)
		}
	}
	for _, k := range around {
		delete(m[k], id)
	}
	delete(m, id)
	return around
}

// joins tells what is wired to what, every contact closed.
type joins []network.NodeID

// newJoins joins all that edges join, and with through the two poles of every source.
func newJoins(n *network.Network, through bool) joins {
	j := make(joins, len(n.Nodes))
	for i := range j {
		j[i] = network.NodeID(i)
	}
	for _, e := range n.Edges {
		j.join(e.A, e.B)
	}
	for _, s := range n.Sources {
		if through && s.Hot != network.None && s.Ret != network.None {
			j.join(s.Hot, s.Ret)
		}
	}
	return j
}

func (j joins) top(id network.NodeID) network.NodeID {
	for j[id] != id {
		j[id] = j[j[id]]
		id = j[id]
	}
	return id
}

func (j joins) join(a, b network.NodeID) {
	if a, b = j.top(a), j.top(b); a != b {
		j[max(a, b)] = min(a, b)
	}
}
