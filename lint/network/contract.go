package network

// Contracted is a zone as a network of its own, in which nodes that nothing ever parts are one.
// Variables, sources, loads and converters keep their numbers; edges that always conduct are gone.
type Contracted struct {
	*Network
	Zone  *Zone
	Edges []int // of the original, by edge

	node map[NodeID]NodeID
}

// At is the node that a node of the original has become; None where the zone does not know it.
func (c *Contracted) At(id NodeID) NodeID {
	if to, ok := c.node[id]; ok {
		return to
	}
	return None
}

// Contract makes a zone a network of its own: a small one to ask many questions of.
func (n *Network) Contract(z *Zone) *Contracted {
	one := newSets(z.Size())
	var parted []int
	for _, list := range [][]int{z.Edges, z.Returns} {
		for _, e := range list {
			if x := &n.Edges[e]; len(x.When) > 0 {
				parted = append(parted, e)
			} else {
				one.union(int(z.Local(x.A)), int(z.Local(x.B)))
			}
		}
	}
	c := &Contracted{Network: &Network{Plan: n.Plan, Vars: n.Vars, vars: n.vars, joined: map[string]*Zone{}}, node: map[NodeID]NodeID{}}
	number := map[int]NodeID{}
	for i, id := range z.Known() {
		r := one.find(i)
		if _, ok := number[r]; !ok {
			number[r] = NodeID(len(c.Nodes))
			c.Nodes = append(c.Nodes, n.Nodes[id])
		}
		c.node[id] = number[r]
	}
	c.contacts(n, parted)
	c.ports(n)
	c.zone(z)
	return c
}

func (c *Contracted) contacts(n *Network, parted []int) {
	c.adjacent = make([][]int, len(c.Nodes))
	for _, e := range parted {
		x := n.Edges[e]
		x.A, x.B = c.At(x.A), c.At(x.B)
		if x.A == x.B {
			continue
		}
		i := len(c.Edges)
		c.Network.Edges, c.Edges = append(c.Network.Edges, x), append(c.Edges, e)
		c.adjacent[x.A], c.adjacent[x.B] = append(c.adjacent[x.A], i), append(c.adjacent[x.B], i)
	}
}

func (c *Contracted) ports(n *Network) {
	for _, x := range n.Sources {
		x.Port = c.Port(x.Port)
		c.Sources = append(c.Sources, x)
	}
	for _, x := range n.Loads {
		x.Port = c.Port(x.Port)
		c.Loads = append(c.Loads, x)
	}
	for _, x := range n.Converters {
		x.In, x.Out = c.Port(x.In), c.Port(x.Out)
		c.Converters = append(c.Converters, x)
	}
}

// Port is a port of the original.
func (c *Contracted) Port(p Port) Port { return Port{c.At(p.Hot), c.At(p.Ret), c.At(p.Ground)} }

func (c *Contracted) zone(z *Zone) {
	out := &Zone{AC: z.AC, Vars: z.Vars, Sources: z.Sources, Loads: z.Loads, Inputs: z.Inputs, Outputs: z.Outputs}
	for i := range c.Nodes {
		out.Nodes = append(out.Nodes, NodeID(i))
	}
	for i := range c.Edges {
		out.Edges = append(out.Edges, i)
	}
	c.zoneOf = make([]int, len(c.Nodes))
	c.Zone, c.Zones = out, []*Zone{out}
	c.number(out)
}
