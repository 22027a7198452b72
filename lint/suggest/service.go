package suggest

import (
	"ferrule/lint"
	"ferrule/lint/network"
	"ferrule/schema"
)

// service is what a plan is for: which sources reach which loads and which batteries, through wires,
// contacts in any position and converters in their own direction. It counts ways that no one state has:
// it decides no hazard, and guards against changes that clear a finding by making a part useless.
type service struct {
	feeds   map[string]int  // by source: how many loads it reaches
	charges map[string]int  // by battery: how many sources that are none reach it
	fed     map[string]bool // loads that any source reaches, there and back
	stored  map[string]bool // loads that a battery does
	ends    map[string]int  // by switch: terminals that are wired
}

func serviceOf(n *network.Network) service {
	islands := islandsOf(n)
	s := service{map[string]int{}, map[string]int{}, map[string]bool{}, map[string]bool{}, wired(n)}
	for _, src := range n.Sources {
		reach, home := reached(n, islands, src.Port)
		for _, l := range n.Loads {
			if reach[islands[l.Hot]] && (l.Ret == network.None || home[islands[l.Ret]]) {
				s.feeds[src.Addr]++
				s.fed[l.Addr] = true
				s.stored[l.Addr] = s.stored[l.Addr] || src.Kind.Value == "battery"
			}
		}
		for _, b := range n.Sources {
			if src.Kind.Value != "battery" && b.Kind.Value == "battery" && reach[islands[b.Hot]] {
				s.charges[b.Addr]++
			}
		}
	}
	return s
}

// wired counts the terminals of each switch on which something ends.
func wired(n *network.Network) map[string]int {
	out := map[string]int{}
	seen := map[string]bool{}
	for i := range n.Nodes {
		x := &n.Nodes[i]
		if _, ok := schema.Lookup[*schema.Switch](n.Plan, x.Addr); !ok || seen[x.Place()] {
			continue
		}
		for _, e := range n.At(network.NodeID(i)) {
			if n.Edges[e].Addr != x.Addr && !seen[x.Place()] {
				seen[x.Place()] = true
				out[x.Addr]++
			}
		}
	}
	return out
}

// islandsOf numbers the nodes that edges join, whatever their positions.
func islandsOf(n *network.Network) []int {
	out := make([]int, len(n.Nodes))
	for i := range out {
		out[i] = -1
	}
	for i := range out {
		if out[i] >= 0 {
			continue
		}
		out[i] = i
		for queue := []network.NodeID{network.NodeID(i)}; len(queue) > 0; queue = queue[1:] {
			for _, e := range n.At(queue[0]) {
				if o := n.Edges[e].Other(queue[0]); out[o] < 0 {
					out[o] = i
					queue = append(queue, o)
				}
			}
		}
	}
	return out
}

// reached lists the islands that power from a port can come to, and those that it can come home by.
func reached(n *network.Network, islands []int, from network.Port) (out, home map[int]bool) {
	out, home = map[int]bool{islands[from.Hot]: true}, map[int]bool{}
	back := func(id network.NodeID) {
		if id != network.None {
			home[islands[id]] = true
		}
	}
	back(from.Ret)
	for grown := true; grown; {
		grown = false
		for _, c := range n.Converters {
			if in, to := islands[c.In.Hot], islands[c.Out.Hot]; out[in] && !out[to] {
				out[to], grown = true, true
				back(c.Out.Ret)
			}
		}
	}
	return out, home
}

// lost says what a part can no longer do, "" where each still does its work.
func (d *Desk) lost(after *Desk) string {
	was, is := d.service, after.service
	for _, src := range d.Plan.Sources {
		b := d.Plan.Block(src.Addr)
		switch {
		case was.feeds[src.Addr] > 0 && is.feeds[src.Addr] == 0:
			return lint.Quote(b) + " then feeds nothing"
		case was.charges[src.Addr] > 0 && is.charges[src.Addr] == 0:
			return "nothing then charges " + lint.Quote(b)
		}
	}
	for _, x := range d.Plan.Switches {
		if after.Plan.Block(x.Addr) != nil && was.ends[x.Addr] > 1 && is.ends[x.Addr] < 2 {
			return lint.Quote(x) + " then switches nothing"
		}
	}
	for _, l := range d.Plan.Loads {
		if was.fed[l.Addr] && !is.fed[l.Addr] {
			return "nothing then feeds " + lint.Quote(l)
		}
		if was.stored[l.Addr] && !is.stored[l.Addr] {
			return "no battery then feeds " + lint.Quote(l)
		}
	}
	return ""
}

// mains says whether a change is of a part that carries nothing but alternating current.
func mains(n *network.Network, changes []lint.Change) bool {
	parts := map[string]bool{}
	for _, c := range changes {
		parts[c.At] = false
	}
	direct := map[string]bool{}
	for _, x := range n.Nodes {
		if _, ok := parts[x.Addr]; ok {
			parts[x.Addr] = parts[x.Addr] || x.AC
			direct[x.Addr] = direct[x.Addr] || !x.AC
		}
	}
	for _, e := range n.Edges {
		if _, ok := parts[e.Addr]; ok && e.Wire != nil {
			parts[e.Addr] = parts[e.Addr] || n.Nodes[e.A].AC
			direct[e.Addr] = direct[e.Addr] || !n.Nodes[e.A].AC
		}
	}
	for addr, ac := range parts {
		if ac && !direct[addr] {
			return true
		}
	}
	return false
}
