package network

import (
	"fmt"
	"slices"
)

// gathering is zones that are to be asked about together.
type gathering struct {
	n       *Network
	zones   []*Zone
	in      map[int]bool
	stacked bool // some of them are parts of one string of sources
}

func (g *gathering) has(id NodeID) bool {
	z := g.n.ZoneOf(id)
	return z != nil && g.in[z.ID]
}

func (g *gathering) add(z *Zone) bool {
	if z == nil || g.in[z.ID] {
		return false
	}
	g.in[z.ID] = true
	g.zones = append(g.zones, z)
	return true
}

// feed adds what can feed the zones through converters, and what sources of theirs stand on.
func (g *gathering) feed() {
	for i := 0; i < len(g.zones); i++ {
		for _, c := range g.zones[i].Outputs {
			g.add(g.n.ZoneOf(g.n.Converters[c].In.Hot))
		}
		for _, s := range g.zones[i].Sources {
			z := g.n.ZoneOf(g.n.Sources[s].Ret)
			g.add(z)
			g.stacked = g.stacked || z != nil
		}
	}
}

// join merges them; the same zones give the same joined zone, so that its states are listed once. The
// current of a string comes back to the port of another zone than it left: the returns are then
// those of all ports together.
func (g *gathering) join() *Zone {
	if len(g.zones) == 1 {
		return g.zones[0]
	}
	slices.SortFunc(g.zones, func(a, b *Zone) int { return a.ID - b.ID })
	key := fmt.Sprint(g.stacked)
	for _, z := range g.zones {
		key += fmt.Sprint(" ", z.ID)
	}
	if z, ok := g.n.joined[key]; ok {
		return z
	}
	z := &Zone{ID: -1}
	if len(g.zones) > 0 {
		z = g.n.Join(g.zones...)
	}
	if g.stacked && len(g.zones) > 0 {
		z.Returns = g.n.returnsOf(z, g.has)
		z.Vars = g.n.varsOf(z)
		g.n.number(z)
	}
	g.n.joined[key] = z
	return z
}

// Together joins the zones of nodes with what can feed them.
func (n *Network) Together(nodes ...NodeID) *Zone {
	g := n.gather(false)
	for _, id := range nodes {
		g.add(n.ZoneOf(id))
	}
	g.feed()
	return g.join()
}

func (n *Network) gather(stacked bool) *gathering {
	return &gathering{n: n, in: map[int]bool{}, stacked: stacked}
}

// Upstream joins a zone with every zone that can feed it through converters, and with those that its
// sources stand on where they are drawn in series.
func (n *Network) Upstream(z *Zone) *Zone {
	if up, ok := n.upstream[z]; ok {
		return up
	}
	g := n.gather(false)
	g.add(z)
	g.feed()
	if n.upstream == nil {
		n.upstream = map[*Zone]*Zone{}
	}
	n.upstream[z] = g.join() // the states of a zone are remembered by its address
	return n.upstream[z]
}

// Series joins the zones of a source and of all that can be in series with it, and every zone that
// can feed those through converters: the place to ask what charges a battery that is drawn as one
// block of a string, or what voltage a stack of arrays has.
func (n *Network) Series(source int) *Zone {
	g := n.gather(true)
	g.add(n.ZoneOf(n.Sources[source].Hot))
	g.add(n.ZoneOf(n.Sources[source].Ret))
	for grown := -1; grown != len(g.zones); {
		grown = len(g.zones)
		for i := range n.Sources {
			if s := &n.Sources[i]; g.has(s.Hot) || g.has(s.Ret) {
				g.add(n.ZoneOf(s.Hot))
				g.add(n.ZoneOf(s.Ret))
			}
		}
	}
	g.feed()
	return g.join()
}
