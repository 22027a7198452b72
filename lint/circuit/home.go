package circuit

import (
	"fmt"

	"ferrule/lint/derive"
	"ferrule/lint/network"
)

// mostTraced bounds the return network for which every current is traced to what it is made of; a
// larger one says so in the formula.
const mostTraced = 6000

// homeway is one family's part of a return edge's current: by the ring that the edge lies in, or as
// a bridge where ring is nil.
type homeway struct {
	zones []*network.Zone
	ring  *ring
	hang  []sums // by the ring's nodes
}

// item is one thing that takes or gives current, with its figure.
type item struct {
	ret   network.NodeID
	takes derive.Number // Kind 0 where it takes nothing, or no figure bounds it
	gives derive.Number
}

// items lists what hangs on a family's zones.
func (c *Circuit) items(zones []*network.Zone) []item {
	var out []item
	for _, z := range zones {
		for _, i := range z.Sources {
			s := &c.Net.Sources[i]
			g, _ := c.SourceGives(s.Source)
			it := item{ret: s.Ret, gives: g.N}
			if s.Kind.Value == "battery" {
				it.takes, _, _ = c.Accepts(s.Source)
			}
			out = append(out, it)
		}
		for _, i := range z.Loads {
			out = append(out, item{ret: c.Net.Loads[i].Ret, takes: c.load(i).n})
		}
		for _, i := range z.Inputs {
			out = append(out, item{ret: c.Net.Converters[i].In.Ret, takes: c.input(i).n})
		}
		for _, i := range z.Outputs {
			g, _ := c.OutputGives(c.Net.Converters[i].Converter)
			out = append(out, item{ret: c.Net.Converters[i].Out.Ret, gives: g.N})
		}
	}
	return out
}

// traced lists the numbers that a return edge's current is made of.
func (c *Circuit) traced(e int, ways []homeway) []derive.Number {
	if len(c.Net.Nodes) > mostTraced {
		return nil
	}
	var out []derive.Number
	var near map[network.NodeID]bool
	for _, w := range ways {
		if w.ring != nil {
			out = append(out, c.throughRing(e, w)...)
			continue
		}
		if near == nil {
			near = c.apart(c.Net.Edges[e].A, e)
		}
		out = append(out, c.throughBridge(near, c.items(w.zones))...)
	}
	return out
}

// throughBridge lists what takes on the side that current comes home from, and what gives on the
// other: the direction in which more can run.
func (c *Circuit) throughBridge(near map[network.NodeID]bool, items []item) []derive.Number {
	list := func(from bool) (out []derive.Number, total float64) {
		for _, it := range items {
			if it.ret == network.None {
				continue
			}
			if side := near[it.ret] == from; side && it.takes.Kind != 0 {
				out, total = append(out, it.takes), total+it.takes.Value
			} else if !side && it.gives.Kind != 0 {
				out = append(out, it.gives)
			}
		}
		return out, total
	}
	a, ta := list(true)
	b, tb := list(false)
	if ta >= tb {
		return a
	}
	return b
}

// throughRing lists every current that comes home through a ring, times the largest share of it that
// the edge can get.
func (c *Circuit) throughRing(e int, w homeway) []derive.Number {
	f := w.ring.share[e]
	if f == nil {
		return nil
	}
	at := w.ring.attachment(c)
	var out []derive.Number
	for _, it := range c.items(w.zones) {
		k, ok := at[it.ret]
		if !ok {
			continue
		}
		for _, n := range []derive.Number{it.takes, it.gives} {
			share := w.largest(f, k)
			if n.Kind == 0 || share == 0 {
				continue
			}
			s := derive.Compute("largest share of it that comes home this way", "s", share, "", "by the resistances of the ring of returns", w.ring.ohms...)
			out = append(out, derive.Compute(fmt.Sprintf("part of the %s that comes home this way", n.Name), "I", share*n.Value, "A", "I = s x "+n.Symbol, s, n))
		}
	}
	return out
}

// largest is the largest share of a current between a ring's node and any that gives or takes.
func (w homeway) largest(f func(k, m int) float64, k int) float64 {
	most := 0.0
	for m, h := range w.hang {
		if m != k && h.ports > 0 {
			most = max(most, f(k, m))
		}
	}
	return most
}

// attachment tells for every node of the return network at which node of the ring it hangs.
func (r *ring) attachment(c *Circuit) map[network.NodeID]int {
	if r.at != nil {
		return r.at
	}
	r.at = map[network.NodeID]int{}
	queue := append([]network.NodeID(nil), r.nodes...)
	for i, id := range r.nodes {
		r.at[id] = i
	}
	for ; len(queue) > 0; queue = queue[1:] {
		for _, e := range c.returnEdges(queue[0]) {
			if to := c.Net.Edges[e].Other(queue[0]); !has(r.at, to) {
				r.at[to] = r.at[queue[0]]
				queue = append(queue, to)
			}
		}
	}
	return r.at
}

func has(m map[network.NodeID]int, id network.NodeID) bool {
	_, ok := m[id]
	return ok
}
