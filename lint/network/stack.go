package network

// Stack joins a zone with those that sources join to it in series, above and below: the place to ask
// what a fault draws. Without such sources it is the zone itself.
func (n *Network) Stack(z *Zone) *Zone {
	g := n.gather(false)
	g.add(z)
	for grown := -1; grown != len(g.zones); {
		grown = len(g.zones)
		for i := range n.Sources {
			if s := &n.Sources[i]; g.has(s.Hot) || g.has(s.Ret) {
				g.add(n.ZoneOf(s.Hot))
				g.add(n.ZoneOf(s.Ret))
			}
		}
	}
	g.stacked = len(g.zones) > 1
	return g.join()
}

// Stacks lists the zones of the network, those that sources join in series as one.
func (n *Network) Stacks() []*Zone {
	var out []*Zone
	seen := map[*Zone]bool{}
	for _, z := range n.Zones {
		if s := n.Stack(z); !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}

// Mate is the other node of a node's terminal: its return, or for a return its positive or line. A named
// contact's is the negative of its side of the connector. None where the terminal has no other.
func (n *Network) Mate(id NodeID) NodeID {
	x := n.Nodes[id]
	if x.Contact != "" {
		return n.Node(x.Addr + suffix(x.Terminal) + ".neg")
	}
	other, ok := map[string]string{"pos": ".neg", "neg": ".pos", "line": ".neutral", "neutral": ".line"}[x.Pole.String()]
	if !ok {
		return None
	}
	return n.Node(x.Place() + other)
}
