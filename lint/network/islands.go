package network

// Islands numbers the nodes by what edges join, of those that count, whatever their positions: two nodes of one number are
// joined.
func (n *Network) Islands(counts func(*Edge) bool) []int {
	out := make([]int, len(n.Nodes))
	for i := range out {
		out[i] = -1
	}
	for i := range out {
		if out[i] >= 0 {
			continue
		}
		out[i] = i
		for queue := []NodeID{NodeID(i)}; len(queue) > 0; queue = queue[1:] {
			for _, e := range n.At(queue[0]) {
				if o := n.Edges[e].Other(queue[0]); out[o] < 0 && counts(&n.Edges[e]) {
					out[o] = i
					queue = append(queue, o)
				}
			}
		}
	}
	return out
}
