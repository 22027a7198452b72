package overcurrent

import (
	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// eachSection visits every part of the plan in which a bolted short draws something, over all states or
// those of a filter; unfinished says that the search for them met its bound. Leaf switches are closed: that
// only adds places.
func eachSection(p *lint.Pass, f explore.Filter, visit func(s *circuit.Section, unfinished bool)) {
	for _, z := range p.Net.Stacks() {
		list, complete := p.Circuit.Sections(z, p.Space.Closed(f))
		for s := range list {
			if s.Fed() {
				visit(s, !complete)
			}
		}
	}
}

// elements lists the devices among the edges of a section.
func elements(p *lint.Pass, edges []int) []int {
	var out []int
	for _, e := range edges {
		if p.Net.Edges[e].Kind == network.Element {
			out = append(out, e)
		}
	}
	return out
}

// spread is everything live that is joined to a node in a section without passing an edge that stops it.
func spread(p *lint.Pass, s *circuit.Section, from network.NodeID, stops func(e int) bool) map[network.NodeID]bool {
	return spreadAll(p, s, []network.NodeID{from}, stops)
}

// spreadAll is what is so joined to any of some nodes.
func spreadAll(p *lint.Pass, s *circuit.Section, from []network.NodeID, stops func(e int) bool) map[network.NodeID]bool {
	in := map[network.NodeID]bool{}
	for _, id := range from {
		in[id] = true
	}
	for queue := from; len(queue) > 0; queue = queue[1:] {
		for _, e := range p.Net.At(queue[0]) {
			to := p.Net.Edges[e].Other(queue[0])
			if !in[to] && !p.Net.Nodes[to].Return && s.View.Conducts(e) && !stops(e) {
				in[to] = true
				queue = append(queue, to)
			}
		}
	}
	return in
}

// reaches says whether any port has a pole among nodes.
func reaches(in map[network.NodeID]bool, ports []network.Port) bool {
	for _, x := range ports {
		if in[x.Hot] || in[x.Ret] {
			return true
		}
	}
	return false
}

// ends gives the two directions in which a fault can pass a device or wire: to its far end, from the near one.
func ends(e *network.Edge) [2]explore.Hop {
	return [2]explore.Hop{{From: e.A, To: e.B}, {From: e.B, To: e.A}}
}

// towards is the current in an edge in the direction of its far end, in A.
func towards(p *lint.Pass, s *circuit.Short, edge int, far network.NodeID) float64 {
	if p.Net.Edges[edge].B == far {
		return s.Through(edge)
	}
	return -s.Through(edge)
}

// route tells the terminals from the source that feeds a short to its place.
func route(p *lint.Pass, section *circuit.Section, s *circuit.Short) []string {
	_, sources := s.Ways()
	for _, i := range sources {
		from := liveEnd(p.Net, p.Net.Sources[i].Port)
		if path := section.View.Reach(from, func(e int, at network.NodeID) bool { return !p.Net.Nodes[p.Net.Edges[e].Other(at)].Return }, nil).To(s.At); path != nil {
			return section.View.Places(from, path)
		}
	}
	return nil
}

// sourcesOf lists the addresses of what feeds a short.
func sourcesOf(p *lint.Pass, s *circuit.Short) []string {
	_, sources := s.Ways()
	var out []string
	for _, i := range sources {
		out = append(out, p.Net.Sources[i].Addr)
	}
	return out
}

// ratingLess names the rating that a device does not state.
func ratingLess(f *schema.Fuse) []lint.Missing {
	if f.Rating.Set {
		return nil
	}
	return []lint.Missing{{Subject: f.Addr, Attribute: "rating"}}
}

// supplies lists where sources and converters that are there give current to a section.
func supplies(p *lint.Pass, s *circuit.Section) []network.Port {
	var out []network.Port
	for _, i := range s.Sources {
		out = append(out, p.Net.Sources[i].Port)
	}
	for _, i := range s.Outputs {
		out = append(out, p.Net.Converters[i].Out)
	}
	return out
}

// stiff lists where batteries feed a section, converters that let current back included; where too little
// is known of some, all that may be one.
func stiff(p *lint.Pass, f *circuit.Faults) []network.Port {
	out := f.Ports(false)
	if len(f.Lacks()) == 0 {
		return out
	}
	out = append(out, supplies(p, f.Section)...)
	for _, i := range f.Section.Inputs {
		if c := &p.Net.Converters[i]; c.BlocksReverse.False() {
			out = append(out, c.In)
		}
	}
	return out
}
