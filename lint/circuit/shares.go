package circuit

import (
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// attachment is one thing attached to the network, as far as currents care.
type attachment struct {
	network.Port
	addr     string
	supplies bool // a source or a converter's output
	present  func(v *explore.View) bool
}

func (c *Circuit) attached(z *network.Zone) []attachment {
	n := c.Net
	var out []attachment
	for _, i := range z.Sources {
		out = append(out, attachment{n.Sources[i].Port, n.Sources[i].Addr, true, func(v *explore.View) bool { return v.HasSource(i) }})
	}
	for _, i := range z.Outputs {
		out = append(out, attachment{n.Converters[i].Out, n.Converters[i].Addr, true, func(v *explore.View) bool { return v.HasConverter(i) }})
	}
	for _, i := range z.Loads {
		out = append(out, attachment{n.Loads[i].Port, n.Loads[i].Addr, false, func(v *explore.View) bool { return v.HasLoad(i) }})
	}
	for _, i := range z.Inputs {
		out = append(out, attachment{n.Converters[i].In, n.Converters[i].Addr, false, func(v *explore.View) bool { return v.HasConverter(i) }})
	}
	return out
}

// zoneAt is the zone that an edge lies in, nil for a return.
func (c *Circuit) edgeZone(edge int) *network.Zone {
	e := &c.Net.Edges[edge]
	if z := c.Net.ZoneOf(e.A); z != nil {
		return z
	}
	return c.Net.ZoneOf(e.B)
}

// apart is what stays joined to a node without an edge, contacts closed: of the ways home, or of one
// zone.
func (c *Circuit) apart(from network.NodeID, without int) map[network.NodeID]bool {
	home, z := c.comesHome(from), c.zoneAt(from)
	out := map[network.NodeID]bool{from: true}
	queue := []network.NodeID{from}
	for len(queue) > 0 {
		id := queue[0]
		queue = queue[1:]
		for _, e := range c.Net.At(id) {
			to := c.Net.Edges[e].Other(id)
			same := home && c.comesHome(to) || !home && c.zoneAt(to) == z
			if e != without && !out[to] && same {
				out[to] = true
				queue = append(queue, to)
			}
		}
	}
	return out
}

// FeedOf is a live edge that carries exactly what an edge on the way home carries, in every state:
// each of the two cuts the same parts off. -1 where there is none, as for a return that circuits
// share; a live edge is its own.
func (c *Circuit) FeedOf(edge int) int {
	f, ok := c.feeds[edge]
	if !ok {
		f = c.findFeed(edge)
		c.feeds[edge] = f
	}
	return f
}

func (c *Circuit) findFeed(edge int) int {
	e := &c.Net.Edges[edge]
	if !c.comesHome(e.A) || !c.comesHome(e.B) {
		return edge
	}
	beyond := c.apart(e.A, edge)
	if beyond[e.B] {
		return -1
	}
	var z *network.Zone
	for _, k := range c.Net.Zones {
		in, out := 0, 0
		for _, p := range c.attached(k) {
			switch {
			case p.Ret == network.None || !c.comesHome(p.Ret):
				return -1 // a string of sources: what comes home through where is not that simple
			case beyond[p.Ret]:
				in++
			default:
				out++
			}
		}
		if in > 0 && out > 0 {
			if z != nil {
				return -1
			}
			z = k
		}
	}
	if z == nil || c.sideOf(z) != outward {
		return -1
	}
	return c.feedAmong(z, beyond)
}

func (c *Circuit) feedAmong(z *network.Zone, beyond map[network.NodeID]bool) int {
	set := uint64(0)
	for i, p := range c.attached(z) {
		if beyond[p.Ret] {
			set ^= mark(i)
		}
	}
	best, least := -1, 0.0
	for _, f := range c.cutsOf(z)[set] {
		c.Space.Tick()
		if w := c.Worst(f).Capped.Value; best < 0 || w < least {
			best, least = f, w
		}
	}
	return best
}

// cutsOf lists the edges of a zone that cut some of its parts off, all contacts closed, by the marks of
// the parts on either side.
func (c *Circuit) cutsOf(z *network.Zone) map[uint64][]int {
	if m, ok := c.cuts[z]; ok {
		return m
	}
	edges := func(id network.NodeID) []int {
		var out []int
		for _, e := range c.Net.At(id) {
			if c.zoneAt(c.Net.Edges[e].Other(id)) == z {
				out = append(out, e)
			}
		}
		return out
	}
	k := newCut(c.Net, z.Nodes, edges, nil, false)
	below, all := map[network.NodeID]uint64{}, uint64(0)
	for i, p := range c.attached(z) {
		below[p.Hot] ^= mark(i)
		all ^= mark(i)
	}
	m := map[uint64][]int{}
	for i := len(k.order) - 1; i >= 0; i-- {
		id := k.order[i]
		if k.up[id] < 0 {
			continue
		}
		below[k.parent(id)] ^= below[id]
		if k.bridge(id) {
			f := k.up[id]
			m[below[id]] = append(m[below[id]], f)
			if other := all ^ below[id]; other != below[id] {
				m[other] = append(m[other], f)
			}
		}
	}
	for _, list := range m {
		slices.Sort(list)
	}
	c.cuts[z] = m
	return m
}

// mark is a number for a part, so spread out that different sets of parts have different sums.
func mark(i int) uint64 {
	x := uint64(i+1) * 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// LacksAt narrows what an edge's largest current lacks to what bears on that edge: a part counts
// only where something on the other side of the edge could supply it, or take from it.
func (c *Circuit) LacksAt(edge int) []derive.Missing {
	all := c.Worst(edge).Lacks
	z, e := c.edgeZone(edge), &c.Net.Edges[edge]
	if z == nil || c.sideOf(z) != outward || len(all) == 0 {
		return all
	}
	near := c.apart(e.A, edge)
	if near[e.B] {
		return all
	}
	ports := c.attached(z)
	count := map[bool]int{} // supplies by side
	both := map[bool]int{}
	for _, p := range ports {
		both[near[p.Hot]]++
		if p.supplies {
			count[near[p.Hot]]++
		}
	}
	var out []derive.Missing
	for _, m := range all {
		bears, found := false, false
		for _, p := range ports {
			if p.addr == m.Subject {
				found = true
				other := !near[p.Hot]
				bears = bears || count[other] > 0 || p.supplies && both[other] > 0
			}
		}
		if bears || !found {
			out = append(out, m)
		}
	}
	return out
}

// StateOf is the positions that make the largest current of a live edge: those on the ways to what
// supplies it and to what draws through it.
func (c *Circuit) StateOf(edge int) []network.Position { return c.StateIn(edge, c.Worst(edge).View) }

// StateIn is the same of the current in a given view.
func (c *Circuit) StateIn(edge int, v *explore.View) []network.Position {
	if v == nil || v.Zone != c.edgeZone(edge) {
		return nil
	}
	e := &c.Net.Edges[edge]
	use := func(i int, _ network.NodeID) bool { return i != edge && c.edgeZone(i) == v.Zone }
	reach := []*explore.Reach{v.Reach(e.A, use, nil), v.Reach(e.B, use, nil)}
	fed := make([]bool, 2)
	ports := c.attached(v.Zone)
	for i, r := range reach {
		for _, p := range ports {
			_, there := r.Dist[p.Hot]
			fed[i] = fed[i] || there && p.supplies && p.present(v)
		}
	}
	edges := []int{edge}
	var sources []int
	for i, r := range reach {
		for _, p := range ports {
			if _, there := r.Dist[p.Hot]; there && p.present(v) && (p.supplies || fed[1-i]) {
				edges = append(edges, r.To(p.Hot).Edges()...)
			}
		}
		for _, s := range v.Zone.Sources {
			if _, there := r.Dist[c.Net.Sources[s].Hot]; there && v.HasSource(s) {
				sources = append(sources, s)
			}
		}
	}
	return v.Witness(edges, sources...)
}
