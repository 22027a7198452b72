package network

import "slices"

// Onward lists the zones that current from a live node reaches: its own, and those behind diodes. Where
// sources stand on each other in them it says so: a string then goes on in zones that are not listed.
func (n *Network) Onward(from NodeID) (zones []*Zone, stacked bool) {
	home := n.ZoneOf(from)
	if home == nil {
		return nil, false
	}
	zones = []*Zone{home}
	for i := 0; i < len(zones); i++ {
		for _, k := range zones[i].Inputs {
			z := n.ZoneOf(n.Converters[k].Out.Hot)
			if n.Converters[k].Kind.Value == "diode" && z != nil && !slices.Contains(zones, z) {
				zones = append(zones, z)
			}
		}
		for _, s := range zones[i].Sources {
			stacked = stacked || n.ZoneOf(n.Sources[s].Ret) != nil
		}
	}
	return zones, stacked
}

// JoinFed joins zones with all that can feed them, and with what their sources stand on.
func (n *Network) JoinFed(zones ...*Zone) *Zone {
	g := n.gather(false)
	for _, z := range zones {
		g.add(z)
	}
	g.feed()
	return g.join()
}
