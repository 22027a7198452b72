package conductor

import (
	"fmt"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/network"
	"ferrule/schema"
)

// homeward says whether an edge of direct current carries it home: between two nodes of the return, or
// two negatives behind a switch or a device.
func homeward(n *network.Network, e int) bool {
	home := func(id network.NodeID) bool {
		x := &n.Nodes[id]
		return !x.AC && (x.Return || x.Pole == schema.Neg)
	}
	return home(n.Edges[e].A) && home(n.Edges[e].B)
}

// open takes one return of a ring after another to be open and asks the others what they then carry.
// What the open one carried finds other ways, so none gets more than that on top of its own.
func (r *returns) open() {
	for _, gone := range r.legs {
		if _, wire := gone.block.(*schema.Conductor); !wire || len(gone.home) == 0 || !r.ways.Ring(gone.home[0]) {
			continue
		}
		own := r.Circuit.Worst(gone.home[0]).Steady.Value
		for _, l := range r.legs {
			for _, e := range l.home {
				if l == gone || !r.ways.Ring(e) || l.limit.Kind == 0 || r.Circuit.Worst(e).Steady.Value+own <= l.limit.Value*(1+1e-9) {
					continue
				}
				if !r.plain || !r.ways.Solved {
					r.unopened[l] = true
					continue
				}
				r.after(gone, l, e)
			}
		}
	}
}

// after notes a return that carries too much once another has opened.
func (r *returns) after(gone, l *leg, e int) {
	c := carried{n: r.ways.Most(e, gone.home[0], r.takersFor(l), "largest current in "+l.name()+" once "+gone.name()+" is open"), feed: -1}
	most := r.Circuit.Worst(e).Steady.Value + r.Circuit.Worst(gone.home[0]).Steady.Value
	if min(c.n.Value, most) <= l.limit.Value*(1+1e-9) || r.asStrong(l, c) || r.alone(gone, l, e) {
		return
	}
	addr := l.block.Header().Addr
	if old := r.opened[addr]; old.Outcome != 0 && old.Numbers[0].Value >= c.n.Value {
		return
	}
	v := lint.Verdict{Subject: l.block, Outcome: lint.Violated, Word: lint.Warning, Numbers: lint.Known(nil, c.n, l.limit), Group: "after " + gone.block.Header().Addr,
		State: []lint.Position{{Addr: "after", Position: gone.block.Header().Addr + ": return opens"}}}
	v.Message = fmt.Sprintf("Once %s is open, %s carries up to %s, and can carry %s.", gone.name(), l.name(), c.n.Text(), l.limit.Text())
	r.opened[addr] = r.graded(v, e, gone.home[0])
}

// alone says whether nothing joins the two ends of a pair but itself once another return is open: then
// what comes home through it is what its plus carries.
func (r *returns) alone(gone, l *leg, e int) bool {
	out := slices.Concat(gone.home, l.home, l.live)
	j := make(joins, len(r.Net.Nodes))
	for i := range j {
		j[i] = network.NodeID(i)
	}
	for i, x := range r.Net.Edges {
		if !slices.Contains(out, i) {
			j.join(x.A, x.B)
		}
	}
	var ports []network.NodeID
	for _, z := range r.Net.Zones {
		for _, x := range attached(r.Net, z) {
			ports = append(ports, x.Hot, x.Ret)
		}
	}
	for i := range r.Net.Converters {
		x := &r.Net.Converters[i]
		ports = append(ports, x.In.Hot, x.Out.Hot)
	}
	for i := 0; i < len(ports); i += 2 {
		if ports[i] != network.None && ports[i+1] != network.None {
			j.join(ports[i], ports[i+1])
		}
	}
	return len(l.live) == 1 && j.top(r.Net.Edges[e].A) != j.top(r.Net.Edges[e].B)
}

// takersFor lists what a return carries home; a starter's current only where it is not said to crank.
func (r *returns) takersFor(l *leg) []circuit.Taker {
	if l.cranking {
		return r.running
	}
	return r.takers
}

// needed is the part of a brake's or road light's current that makes a return one of theirs.
const needed = 0.1

// graded makes a verdict on a return graver where a trailer's brakes or road lights depend on it.
func (r *returns) graded(v lint.Verdict, e, gone int) lint.Verdict {
	if v.Outcome == lint.Holds || !r.ways.Knows(e) {
		return v
	}
	for _, t := range r.road {
		if r.ways.Part(e, gone, t) > needed {
			v.Word = lint.Danger
			v.Message += " A trailer's brakes or road lights come home through it."
			return v
		}
	}
	return v
}

// oneWay lowers a current above a limit to what runs one way, where returns are plain enough to tell.
func (r *returns) oneWay(c *carried, l *leg, e int) {
	if c.feed >= 0 || !r.plain || !r.ways.Knows(e) || c.n.Value <= l.limit.Value {
		return
	}
	if n := r.ways.Most(e, -1, r.takersFor(l), c.n.Name); n.Value < c.n.Value {
		c.n = n
	}
}

// onTheRoad says whether a load is a brake, or a light that is needed with the tow plug mated or that
// nothing but the tow plug feeds.
func onTheRoad(p *lint.Pass, i int) bool {
	l := &p.Net.Loads[i]
	if l.Kind.Value != "light" {
		return l.Kind.Value == "brake"
	}
	for _, r := range l.NeededIn.List {
		if m, ok := schema.Lookup[*schema.Mode](p.Plan, r.Addr); ok && slices.ContainsFunc(m.State.List, func(pin schema.Pin) bool { return towed(p.Plan, pin.Ref.Addr) && pin.Position.Value == "mated" }) {
			return true
		}
	}
	z := p.Net.ZoneOf(l.Hot)
	if z == nil {
		return false
	}
	without := joinedTo(p.Net, z, l.Hot, func(e int) bool { return !towed(p.Plan, p.Net.Edges[e].Addr) })
	with := joinedTo(p.Net, z, l.Hot, func(int) bool { return true })
	fed := false
	for _, x := range attached(p.Net, z) {
		if x.supplies && without[x.Hot] {
			return false
		}
		fed = fed || x.supplies && with[x.Hot]
	}
	return fed
}

func towed(plan *schema.Plan, addr string) bool {
	x, ok := schema.Lookup[*schema.Connector](plan, addr)
	return ok && x.Tow.True()
}

// joinedTo is all of a zone that edges which use admits join to a node, every contact closed.
func joinedTo(n *network.Network, z *network.Zone, from network.NodeID, use func(e int) bool) map[network.NodeID]bool {
	seen := map[network.NodeID]bool{from: true}
	for queue := []network.NodeID{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			if to := n.Edges[e].Other(queue[0]); !seen[to] && use(e) && n.ZoneOf(to) == z {
				seen[to] = true
				queue = append(queue, to)
			}
		}
	}
	return seen
}
