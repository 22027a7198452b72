package explore

// Contacts tells how everything that opens and closes in the zone stands in the view, whoever is
// there: two views with the same answer join the same nodes, and both rest or neither does.
func (v *View) Contacts() string {
	out := []byte{0}
	if v.Transit != nil {
		out[0] = 1
	}
	for _, list := range [][]int{v.Zone.Edges, v.Zone.Returns} {
		for _, e := range list {
			if len(v.net.Edges[e].When) == 0 {
				continue
			}
			on := byte(0)
			if v.Conducts(e) {
				on = 1
			}
			out = append(out, on)
		}
	}
	return string(out)
}
