package network

// Served lists the loads that have a converter as their only supply, whatever the positions: those on its
// output's side, where neither a source nor another converter gives anything, and on behind further
// converters there.
func (n *Network) Served(converter int) []int {
	var out []int
	seen := map[*Zone]bool{n.ZoneOf(n.Converters[converter].In.Hot): true, nil: true}
	for queue := []int{converter}; len(queue) > 0; queue = queue[1:] {
		z := n.ZoneOf(n.Converters[queue[0]].Out.Hot)
		if seen[z] || len(z.Sources) > 0 || len(z.Outputs) > 1 {
			continue
		}
		seen[z] = true
		out, queue = append(out, z.Loads...), append(queue, z.Inputs...)
	}
	return out
}
