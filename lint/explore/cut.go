package explore

import "ferrule/lint/network"

// Cut looks for an allowed state of a filter in which nothing feeds a port: see View.Live for what
// back and skip mean, and Energy.Feeds for what it is to be fed. Ask it of a zone that what can feed
// the port lies in too (network.Upstream, Together). Vars are then positions that keep it dark
// wherever the other variables are.
func (s *Space) Cut(z *network.Zone, f Filter, port network.Port, back func(*network.Converter) bool, skip func(*network.Source) bool) Answer {
	small := s.contracted(z)
	port = small.net.Port(port)
	port.Ground = network.None
	small.space.Stop = s.Stop
	k := cutKey{f.name, port}
	if a, ok := small.dark[k]; ok && back == nil && skip == nil {
		return a
	}
	a := small.space.seek(small.net.Zone, f, func(sp *Span) Truth { return sp.Feeds(port, back, skip).Not() }, true)
	s.examined += a.Examined
	s.complete = s.complete && a.Exact()
	if a.View != nil {
		a.View = s.view(z, a.View.pos, a.View.Transit)
	}
	if back == nil && skip == nil && a.Exact() {
		small.dark[k] = a
	}
	return a
}

// contracted is a zone and its states with what nothing ever parts as one.
type contracted struct {
	net   *network.Contracted
	space *Space
	dark  map[cutKey]Answer // for what asks for nothing special
}

type cutKey struct {
	filter string
	port   network.Port
}

func (s *Space) contracted(z *network.Zone) contracted {
	if out, ok := s.small[z]; ok {
		return out
	}
	out := contracted{net: s.Net.Contract(z), dark: map[cutKey]Answer{}}
	out.space = &Space{Net: out.net.Network, Bound: s.Bound, never: s.never, groups: s.groups, groupOf: s.groupOf, tied: s.tied, loose: s.loose, complete: true}
	if s.small == nil {
		s.small = map[*network.Zone]contracted{}
	}
	s.small[z] = out
	return out
}

// rests lists what the feeding of a port rests on, on one way: edges, and variables of sources and
// converters that come and go. Nothing where no way is found.
func (e *Energy) rests(p network.Port) (edges, vars []int) {
	note := func(v int) {
		if v >= 0 {
			vars = append(vars, v)
		}
	}
	for seen := map[int]bool{}; ; {
		s, ok := e.feeder(p, seen)
		if !ok {
			return nil, nil
		}
		if s.Source >= 0 {
			row := e.view.Series(s.Source)
			for _, i := range append(row.below, row.above...) {
				note(e.view.net.Sources[i].Present)
			}
			return append(edges, row.way(p, e.view.between)...), vars
		}
		from := e.port(s, p)
		edges = append(edges, e.view.between(from.Hot, p.Hot)...)
		edges = append(edges, e.view.between(from.Ret, p.Ret)...)
		seen[s.Converter] = true
		c := &e.view.net.Converters[s.Converter]
		note(c.Present)
		if p = c.In; from == c.In {
			p = c.Out
		}
	}
}

// between lists the edges of a shortest way between two nodes; nil where there is none.
func (v *View) between(a, b network.NodeID) (out []int) {
	if a == b || !v.Joined(a, b) {
		return nil
	}
	via := make([]int32, len(v.net.Nodes))
	via[a] = -1
	for queue := []network.NodeID{a}; len(queue) > 0 && via[b] == 0; queue = queue[1:] {
		for _, e := range v.net.At(queue[0]) {
			if to := v.net.Edges[e].Other(queue[0]); via[to] == 0 && v.Conducts(e) {
				via[to] = int32(e) + 1
				queue = append(queue, to)
			}
		}
	}
	for n := b; via[n] > 0; n = v.net.Edges[via[n]-1].Other(n) {
		out = append(out, int(via[n]-1))
	}
	return out
}
