package explore

import "ferrule/lint/network"

// Series is a source with what is in series with it in a view: sources whose negative sits on its
// positive or on that of one above, and so on down.
type Series struct {
	view         *View
	above, below []int // the source itself is in both
}

// Series finds what a source is in series with. Only sources that are there count.
func (v *View) Series(source int) Series {
	grow := func(next func(have, other *network.Source) bool) []int {
		list, in := []int{source}, map[int]bool{source: true}
		for i := 0; i < len(list); i++ {
			for _, o := range v.Zone.Sources {
				if !in[o] && v.HasSource(o) && next(&v.net.Sources[list[i]], &v.net.Sources[o]) {
					in[o] = true
					list = append(list, o)
				}
			}
		}
		return list
	}
	return Series{v,
		grow(func(have, other *network.Source) bool { return v.Joined(have.Hot, other.Ret) }),
		grow(func(have, other *network.Source) bool { return v.Joined(have.Ret, other.Hot) })}
}

// ends gives the member of the string whose positive, and the one whose negative, the port is
// joined to; -1 where there is none.
func (s Series) ends(p network.Port) (top, bottom int) {
	top, bottom = -1, -1
	for _, i := range s.above {
		if top < 0 && s.view.Joined(s.view.net.Sources[i].Hot, p.Hot) {
			top = i
		}
	}
	for _, i := range s.below {
		if bottom < 0 && s.view.Joined(s.view.net.Sources[i].Ret, p.Ret) {
			bottom = i
		}
	}
	return top, bottom
}

// Across says whether a port is joined across the source, or across a string that it is part of.
func (s Series) Across(p network.Port) bool {
	top, bottom := s.ends(p)
	return top >= 0 && bottom >= 0
}

// Way lists the edges that join a port across the source or its string; nil where none do.
func (s Series) Way(p network.Port) []int { return s.way(p, s.between) }

func (s Series) way(p network.Port, between func(a, b network.NodeID) []int) []int {
	top, bottom := s.ends(p)
	if top < 0 || bottom < 0 {
		return nil
	}
	at := func(i int) network.Port { return s.view.net.Sources[i].Port }
	edges := append(between(p.Hot, at(top).Hot), between(p.Ret, at(bottom).Ret)...)
	for _, i := range s.above[1:] {
		for _, j := range s.above {
			edges = append(edges, between(at(i).Ret, at(j).Hot)...)
		}
	}
	for _, i := range s.below[1:] {
		for _, j := range s.below {
			edges = append(edges, between(at(i).Hot, at(j).Ret)...)
		}
	}
	return edges
}

// Tops lists the sources at whose positive a string's current can leave, the source itself first.
func (s Series) Tops() []int { return s.above }

// Stacked says whether the source is in series with any other.
func (s Series) Stacked() bool { return len(s.above)+len(s.below) > 2 }

// Meets says whether the negatives of two strings, wherever each ends, are joined.
func (s Series) Meets(o Series) bool {
	for _, i := range s.below {
		for _, j := range o.below {
			if s.view.Joined(s.view.net.Sources[i].Ret, s.view.net.Sources[j].Ret) {
				return true
			}
		}
	}
	return false
}

func (s Series) between(a, b network.NodeID) []int {
	if !s.view.Joined(a, b) {
		return nil
	}
	return s.view.Between(a, b).Edges()
}

// Way tells how a port is fed: the edges on the way from what feeds it, back through converters to
// a source, and that source. Both are empty where nothing feeds it.
func (e *Energy) Way(p network.Port) (edges, sources []int) {
	for seen := map[int]bool{}; ; {
		s, ok := e.feeder(p, seen)
		if !ok {
			return edges, sources
		}
		if s.Source >= 0 {
			row := e.view.Series(s.Source)
			return append(edges, row.Way(p)...), append(sources, row.below...)
		}
		from := e.port(s, p)
		edges = append(edges, e.view.Between(from.Hot, p.Hot).Edges()...)
		edges = append(edges, e.view.Between(from.Ret, p.Ret).Edges()...)
		seen[s.Converter] = true
		c := &e.view.net.Converters[s.Converter]
		if p = c.In; from == c.In {
			p = c.Out
		}
	}
}

// feeder is what feeds a port, a source before a converter.
func (e *Energy) feeder(p network.Port, seen map[int]bool) (Supply, bool) {
	found, ok := Supply{}, false
	for _, s := range e.At(p.Hot) {
		if s.Source < 0 && (seen[s.Converter] || ok) || !e.returns(s, p) {
			continue
		}
		if found, ok = s, true; s.Source >= 0 {
			break
		}
	}
	return found, ok
}
