package overcurrent

import (
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// beyond is what a current that leaves a conductor at one end can come to before it comes to an
// overcurrent device, whatever the positions.
type beyond struct {
	devices []int           // edges of the first devices
	far     map[int]float64 // the conductor to each of them, in m
	ports   int             // sources, and sides of converters
	users   int             // loads, and converters
}

// beyond looks on from a conductor in the direction of a hop through it.
func (a *area) beyond(h explore.Hop) *beyond {
	if b := a.ahead[h]; b != nil {
		return b
	}
	b := &beyond{far: map[int]float64{}}
	a.ahead[h] = b
	r := a.bare(a.open, h.To, h.Edge)
	reached := func(id network.NodeID) int {
		if _, ok := r.Dist[id]; ok {
			return 1
		}
		return 0
	}
	for _, e := range a.zone.Edges {
		x := &a.n.Edges[e]
		if x.Kind != network.Element || reached(x.A)+reached(x.B) == 0 {
			continue
		}
		b.devices = append(b.devices, e)
		b.far[e] = least(r, x.A, x.B)
	}
	for _, i := range a.zone.Loads {
		b.users += reached(a.n.Loads[i].Hot)
	}
	for i := range a.n.Converters {
		sides := reached(a.n.Converters[i].In.Hot) + reached(a.n.Converters[i].Out.Hot)
		b.ports, b.users = b.ports+sides, b.users+sides
	}
	for i := range a.n.Sources {
		b.ports += reached(liveEnd(a.n, a.n.Sources[i].Port))
	}
	return b
}

// least is the shorter of the distances to two nodes, at least one of which is reached.
func least(r *explore.Reach, x, y network.NodeID) float64 {
	dx, okX := r.Dist[x]
	dy, okY := r.Dist[y]
	if !okX || okY && dy < dx {
		return dy
	}
	return dx
}

// end gives the one device at the end of a conductor: every way on leads through it, and nothing
// feeds or draws before it. -1 where there is none such.
func (b *beyond) end() int {
	if len(b.devices) != 1 || b.users+b.ports > 0 {
		return -1
	}
	return b.devices[0]
}

// braking says whether a conductor, in the direction of a hop through it, serves brakes only: all
// that it leads to, whatever the positions, is brakes and breakaway switches.
func (a *area) braking(h explore.Hop) bool {
	r := a.open.Reach(h.To, func(e int, _ network.NodeID) bool {
		return e != h.Edge && a.walkable(e) && !a.breakaway(e)
	}, nil)
	serves := false
	for i := range a.n.Loads {
		if _, ok := r.Dist[a.n.Loads[i].Hot]; ok && a.n.Loads[i].Kind.Value != "brake" {
			return false
		} else if ok {
			serves = true
		}
	}
	for i := range a.n.Converters {
		_, in := r.Dist[a.n.Converters[i].In.Hot]
		_, out := r.Dist[a.n.Converters[i].Out.Hot]
		if in || out {
			return false
		}
	}
	for i := range a.n.Sources {
		if _, ok := r.Dist[liveEnd(a.n, a.n.Sources[i].Port)]; ok {
			return false
		}
	}
	for _, e := range a.zone.Edges {
		if x := &a.n.Edges[e]; a.breakaway(e) {
			_, ok := r.Dist[x.A]
			_, ok2 := r.Dist[x.B]
			serves = serves || ok || ok2
		}
	}
	return serves
}

// breakaway says whether an edge is a contact of a breakaway switch.
func (a *area) breakaway(e int) bool {
	x := &a.n.Edges[e]
	s, ok := schema.Lookup[*schema.Switch](a.n.Plan, x.Addr)
	return ok && x.Kind == network.Contact && s.Kind.Value == "breakaway"
}
