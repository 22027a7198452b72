package explore

import (
	"slices"

	"ferrule/lint/network"
)

// homeward says whether what the limb's loads draw comes home through one node, wherever the limb
// stands: then a return carries no more of one load than of another that draws as much. It needs none
// where every position that feeds anything feeds the same.
func (f *limbFinder) homeward(l *limb) bool {
	if f.alike(l) {
		return true
	}
	own := map[network.NodeID]bool{}
	for _, i := range l.loads {
		for _, id := range []network.NodeID{f.s.Net.Loads[i].Hot, f.s.Net.Loads[i].Ret} {
			if id != network.None && !l.far[id] {
				own[id] = true
			}
		}
	}
	if len(own) == 0 {
		return true
	}
	strangers := f.strangers(l)
	for _, w := range f.wayHome(own, strangers) {
		if f.parts(own, w, strangers) {
			return true
		}
	}
	return false
}

// alike says whether every position that feeds any load feeds all of them.
func (f *limbFinder) alike(l *limb) bool {
	contacts := f.s.movesOf(l.v)
	for p := range f.s.Net.Vars[l.v].Positions {
		reached := map[network.NodeID]bool{}
		for _, from := range l.near {
			for _, id := range f.s.behind(l, contacts, from, p)[1:] {
				reached[id] = true
			}
		}
		fed := 0
		for _, i := range l.loads {
			if reached[f.s.Net.Loads[i].Hot] {
				fed++
			}
		}
		if fed > 0 && fed < len(l.loads) {
			return false
		}
	}
	return true
}

// strangers are the nodes at which anything but the limb's loads is attached.
func (f *limbFinder) strangers(l *limb) map[network.NodeID]bool {
	out := map[network.NodeID]bool{}
	for id := range f.ports {
		out[id] = true
	}
	for i := range f.s.Net.Loads {
		if !slices.Contains(l.loads, i) {
			out[f.s.Net.Loads[i].Hot], out[f.s.Net.Loads[i].Ret] = true, true
		}
	}
	delete(out, network.None)
	return out
}

// wayHome is one way from the limb's returns to the nearest stranger: a node that parts them is on it.
func (f *limbFinder) wayHome(own, strangers map[network.NodeID]bool) []network.NodeID {
	came := map[network.NodeID]network.NodeID{}
	var queue []network.NodeID
	for _, id := range sortedNodes(own)[:1] {
		came[id] = network.None
		queue = append(queue, id)
	}
	for ; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if strangers[at] {
			var way []network.NodeID
			for ; at != network.None; at = came[at] {
				way = append(way, at)
			}
			return way
		}
		for _, e := range f.s.Net.At(at) {
			if to := f.s.Net.Edges[e].Other(at); !has(came, to) {
				came[to] = at
				queue = append(queue, to)
			}
		}
	}
	return sortedNodes(own)[:1]
}

// parts says whether a node lies between the limb's returns and every stranger.
func (f *limbFinder) parts(own map[network.NodeID]bool, w network.NodeID, strangers map[network.NodeID]bool) bool {
	seen := map[network.NodeID]bool{w: true}
	var queue []network.NodeID
	for _, id := range sortedNodes(own) {
		if !seen[id] {
			seen[id] = true
			queue = append(queue, id)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		if strangers[queue[0]] {
			return false
		}
		for _, e := range f.s.Net.At(queue[0]) {
			if to := f.s.Net.Edges[e].Other(queue[0]); !seen[to] {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return true
}
