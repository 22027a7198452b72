package switching

import (
	"maps"
	"slices"

	"ferrule/lint/network"
	"ferrule/schema"
)

// sides finds the supply terminals of a switch, and a battery for every separate side that has one.
func sides(n *network.Network, x *schema.Switch) (supply map[string]bool, batteries []string) {
	supply = map[string]bool{}
	taken := map[network.NodeID]bool{}
	for _, t := range x.Terminals.List {
		at := hot(n, x, t.Value)
		seen := sideOf(n, x, at)
		first := !taken[at]
		for id := range seen {
			taken[id] = true
		}
		battery := ""
		for i := range n.Sources {
			if s := &n.Sources[i]; seen[s.Hot] {
				supply[t.Value] = true
				if s.Kind.Value == "battery" && battery == "" {
					battery = s.Addr
				}
			}
		}
		if first && battery != "" {
			batteries = append(batteries, battery)
		}
	}
	if x.Kind.Value != "disconnect" { // what a converter alone stands on is a feed
		for _, t := range x.Terminals.List {
			side := sideOf(n, x, hot(n, x, t.Value))
			supply[t.Value] = supply[t.Value] || fedByConverter(n, side) && !used(n, side)
		}
	}
	if !slices.Contains(slices.Collect(maps.Values(supply)), true) { // a circuit that only converters feed: their side is the supply
		for _, t := range x.Terminals.List {
			supply[t.Value] = fedByConverter(n, sideOf(n, x, hot(n, x, t.Value)))
		}
	}
	return supply, batteries
}

// used says whether anything on a side takes power.
func used(n *network.Network, side map[network.NodeID]bool) bool {
	return slices.ContainsFunc(n.Loads, func(l network.Load) bool { return side[l.Hot] }) ||
		slices.ContainsFunc(n.Converters, func(c network.Converter) bool { return side[c.In.Hot] })
}

func fedByConverter(n *network.Network, side map[network.NodeID]bool) bool {
	for i := range n.Converters {
		if side[n.Converters[i].Out.Hot] {
			return true
		}
	}
	return false
}

func hot(n *network.Network, x *schema.Switch, terminal string) network.NodeID {
	for _, pole := range []string{".pos", ".line"} {
		if id := n.Node(x.Addr + "." + terminal + pole); id != network.None {
			return id
		}
	}
	return network.None
}

// terminals lists the live nodes of a switch.
func terminals(n *network.Network, x *schema.Switch) []network.NodeID {
	var out []network.NodeID
	for _, t := range x.Terminals.List {
		if id := hot(n, x, t.Value); id != network.None {
			out = append(out, id)
		}
	}
	return out
}

// sideOf is everything on a terminal's live side with every other switch's contacts closed.
func sideOf(n *network.Network, x *schema.Switch, from network.NodeID) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{}
	if from == network.None {
		return seen
	}
	seen[from] = true
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			k := &n.Edges[e]
			to := k.Other(queue[0])
			if !seen[to] && !n.Nodes[to].Return && (k.Kind != network.Contact || k.Addr != x.Addr) {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}
