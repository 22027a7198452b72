package network

// Series joins the zones of a source and of all that can be in series with it, and every zone that
// can feed those through converters: the place to ask what charges a battery that is drawn as one
// block of a string, or what voltage a stack of arrays has.
func (n *Network) Series(source int) *Zone {
	var zones []*Zone
	seen := map[int]bool{}
	add := func(id NodeID) {
		if z := n.ZoneOf(id); z != nil && !seen[z.ID] {
			seen[z.ID] = true
			zones = append(zones, z)
		}
	}
	in := func(id NodeID) bool { z := n.ZoneOf(id); return z != nil && seen[z.ID] }
	add(n.Sources[source].Hot)
	add(n.Sources[source].Ret)
	for grown := -1; grown != len(zones); {
		grown = len(zones)
		for i := range n.Sources {
			if s := &n.Sources[i]; in(s.Hot) || in(s.Ret) {
				add(s.Hot)
				add(s.Ret)
			}
		}
	}
	for i := 0; i < len(zones); i++ {
		for _, c := range zones[i].Outputs {
			add(n.Converters[c].In.Hot)
		}
	}
	switch len(zones) {
	case 0:
		return &Zone{ID: -1}
	case 1:
		return zones[0]
	}
	// The current of a string comes back to another zone's port: the returns are those of all ports together.
	z := n.Join(zones...)
	z.Returns = n.returnsOf(z, in)
	z.Vars = n.varsOf(z)
	n.number(z)
	return z
}
