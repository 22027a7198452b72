package explore

import (
	"slices"

	"ferrule/lint/network"
)

// TrimResting is a zone less what means nothing to a question about some of its live nodes at rest: what
// network.Trim leaves away, and every limb behind which none of the nodes lies. No position of a limb
// joins two of its feeds, so nothing goes through it from one node to another while no switch is thrown.
func (s *Space) TrimResting(z *network.Zone, keep ...network.NodeID) *network.Zone {
	if s.Plain {
		return s.Net.Trim(z, keep...)
	}
	gone := map[network.NodeID]bool{}
	for _, l := range s.limbs() {
		if !slices.ContainsFunc(keep, func(id network.NodeID) bool { return l.far[id] }) {
			for id := range l.far {
				gone[id] = true
			}
		}
	}
	less := *z
	less.Nodes = slices.DeleteFunc(slices.Clone(z.Nodes), func(id network.NodeID) bool { return gone[id] })
	less.Edges = slices.DeleteFunc(slices.Clone(z.Edges), func(e int) bool { return gone[s.Net.Edges[e].A] || gone[s.Net.Edges[e].B] })
	return s.Net.Trim(&less, keep...)
}
