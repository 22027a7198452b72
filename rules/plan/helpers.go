package plan

import "ferrule/lint/network"

// ways tells where current can go with every contact closed and every device whole: the nodes that
// are joined then, and from which of them sources and converter outputs lift it to which.
type ways struct {
	set   []int
	lifts map[int][]int
}

func newWays(n *network.Network) *ways {
	w := &ways{set: make([]int, len(n.Nodes)), lifts: map[int][]int{}}
	for i := range w.set {
		w.set[i] = i
	}
	for _, e := range n.Edges {
		w.set[w.find(int(e.A))] = w.find(int(e.B))
	}
	lift := func(p network.Port) {
		if p.Hot != network.None && p.Ret != network.None {
			from := w.find(int(p.Ret))
			w.lifts[from] = append(w.lifts[from], w.find(int(p.Hot)))
		}
	}
	for _, s := range n.Sources {
		lift(s.Port)
	}
	for _, c := range n.Converters {
		lift(c.Out)
	}
	return w
}

func (w *ways) find(i int) int {
	for w.set[i] != i {
		w.set[i] = w.set[w.set[i]]
		i = w.set[i]
	}
	return i
}

// ported tells on which of the joined nodes a source, a load or a converter is.
func (w *ways) ported(n *network.Network) map[int]bool {
	out := map[int]bool{}
	add := func(ports ...network.Port) {
		for _, p := range ports {
			for _, id := range []network.NodeID{p.Hot, p.Ret} {
				if id != network.None {
					out[w.find(int(id))] = true
				}
			}
		}
	}
	for _, x := range n.Sources {
		add(x.Port)
	}
	for _, x := range n.Loads {
		add(x.Port)
	}
	for _, x := range n.Converters {
		add(x.In, x.Out)
	}
	return out
}

// home says whether current that has gone through a port can come back to it: from its return through
// a source or more to its positive.
func (w *ways) home(p network.Port) bool {
	if p.Hot == network.None || p.Ret == network.None {
		return false
	}
	goal, seen := w.find(int(p.Hot)), map[int]bool{}
	queue := []int{w.find(int(p.Ret))}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, to := range w.lifts[at] {
			if to == goal {
				return true
			}
			if !seen[to] {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return false
}
