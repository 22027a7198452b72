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
	s := Series{v, []int{source}, []int{source}}
	grow := func(list []int, next func(have, other *network.Source) bool) []int {
		in := map[int]bool{source: true}
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
	s.above = grow(s.above, func(have, other *network.Source) bool { return v.Joined(have.Hot, other.Ret) })
	s.below = grow(s.below, func(have, other *network.Source) bool { return v.Joined(have.Ret, other.Hot) })
	return s
}

// Across says whether a port is joined across the source, or across a string that it is part of.
func (s Series) Across(p network.Port) bool {
	top, bottom := false, false
	for _, i := range s.above {
		top = top || s.view.Joined(s.view.net.Sources[i].Hot, p.Hot)
	}
	for _, i := range s.below {
		bottom = bottom || s.view.Joined(s.view.net.Sources[i].Ret, p.Ret)
	}
	return top && bottom
}
