package explore

import (
	"container/heap"
	"math"

	"ferrule/lint/network"
)

// Guard is the overcurrent protection of one place against one source: what limits a fault on the
// least protected way from the source. On a way it is the smallest device that counts.
type Guard struct {
	Reached bool
	Rating  float64 // A; +Inf where a way has no device at all
	Device  int     // edge of the device that decides; -1 where there is none
	Path    Path    // that way, from the source to the near end of the place
	Unknown []int   // devices on that way without a rating; they count as no device
}

// Guards finds, for every node that a source's hot node reaches in the view, the least protected
// way: the one whose smallest device is largest. It is a widest-path search, so loops and parallel
// ways are covered. Only the live side is walked.
func (v *View) Guards(from network.NodeID) *GuardMap {
	m := &GuardMap{view: v, from: from, width: map[network.NodeID]float64{from: math.Inf(1)}, via: map[network.NodeID]Hop{}}
	done := map[network.NodeID]bool{}
	q := &queue{{from, math.Inf(-1)}}
	for q.Len() > 0 {
		at := heap.Pop(q).(item).node
		if done[at] {
			continue
		}
		done[at] = true
		for _, e := range v.net.At(at) {
			to := v.net.Edges[e].Other(at)
			if done[to] || v.net.Nodes[to].Return || !v.Conducts(e) {
				continue
			}
			w := min(m.width[at], deviceWidth(&v.net.Edges[e]))
			if old, seen := m.width[to]; !seen || w > old {
				m.width[to], m.via[to] = w, Hop{e, at, to}
				heap.Push(q, item{to, -w}) // the widest comes first
			}
		}
	}
	return m
}

// deviceWidth is the rating of a device, +Inf for anything else and for a device without a rating.
func deviceWidth(e *network.Edge) float64 {
	if e.Kind == network.Element && e.Fuse.Rating.Set {
		return e.Fuse.Rating.Value
	}
	return math.Inf(1)
}

// GuardMap holds the guards of one source in one view.
type GuardMap struct {
	view  *View
	from  network.NodeID
	width map[network.NodeID]float64
	via   map[network.NodeID]Hop
}

// Of is the guard of an edge: of that end of it which is less protected.
func (m *GuardMap) Of(edge int) Guard {
	e := &m.view.net.Edges[edge]
	best := Guard{Device: -1}
	if !m.view.Conducts(edge) {
		return best
	}
	for _, end := range []network.NodeID{e.A, e.B} {
		if h, ok := m.via[end]; ok && h.Edge == edge {
			continue // reached through the edge itself
		}
		if w, ok := m.width[end]; ok && (!best.Reached || w > best.Rating) {
			best = m.at(end)
		}
	}
	return best
}

// At is the guard of a node.
func (m *GuardMap) At(id network.NodeID) Guard {
	if _, ok := m.width[id]; !ok {
		return Guard{Device: -1}
	}
	return m.at(id)
}

func (m *GuardMap) at(id network.NodeID) Guard {
	g := Guard{Reached: true, Rating: m.width[id], Device: -1}
	for n := id; n != m.from; {
		h := m.via[n]
		g.Path = append(g.Path, h)
		n = h.From
	}
	for i, j := 0, len(g.Path)-1; i < j; i, j = i+1, j-1 {
		g.Path[i], g.Path[j] = g.Path[j], g.Path[i]
	}
	for _, h := range g.Path {
		switch e := &m.view.net.Edges[h.Edge]; {
		case e.Kind != network.Element:
		case !e.Fuse.Rating.Set:
			g.Unknown = append(g.Unknown, h.Edge)
		case e.Fuse.Rating.Value == g.Rating && g.Device < 0:
			g.Device = h.Edge
		}
	}
	return g
}
