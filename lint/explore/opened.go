package explore

import "ferrule/lint/network"

// Opened is the view after one part has opened: its element has blown, its contacts have let go or its
// halves are apart. Where the view has one such part already, the new one takes its place.
func (v *View) Opened(addr string) *View {
	out := *v
	out.root, out.open = nil, addr
	return &out
}

func opens(k network.EdgeKind) bool {
	return k == network.Element || k == network.Contact || k == network.Mate
}

// Agreeing looks for an allowed state of a zone that agrees with a view wherever the view's zone
// depends on anything, and of which ok is true. known is false where the bound ended the search
// without one. A switch that the view has in transit stands where it was thrown from.
func (s *Space) Agreeing(v *View, z *network.Zone, ok func(*View) bool) (found *View, known bool) {
	at := map[int]int{}
	for i, p := range v.pos {
		if p >= 0 {
			at[i] = p
		}
	}
	whole := s.List(z, Ask{At: at}, func(w *View) bool {
		if ok(w) {
			found = w
		}
		return found == nil
	})
	return found, whole || found != nil
}

// Tied says whether the states of a zone depend on a variable, by itself or through interlocks and
// what follows what.
func (s *Space) Tied(z *network.Zone, variable int) bool {
	for _, v := range z.Vars {
		if s.groupOf[v] == s.groupOf[variable] {
			return true
		}
	}
	return false
}
