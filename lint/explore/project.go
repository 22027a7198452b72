package explore

import (
	"ferrule/lint/network"
)

// Views lists the different networks that a zone can be over the allowed states that pass the
// filter, in a fixed order, resting states first. complete is false where the bound cut the list. Where
// telling limbs apart one by one meets it, listing them in every combination may not: a few switches of
// many rivals.
func (s *Space) Views(z *network.Zone, f Filter) (list []*View, complete bool) {
	k := viewKey{z, f.name}
	if v, ok := s.views[k]; ok {
		return v.list, v.complete
	}
	v := &views{complete: true}
	seen := map[string]bool{}
	for i, c := range f.choices {
		if !s.feasible(z, c) {
			continue
		}
		v.complete = (f.apart != nil && s.reduce(z, s.outlineOf(f, i), seen, v) || s.project(z, c, seen, v)) && v.complete
	}
	s.complete = s.complete && v.complete
	s.views[k] = v
	return v.list, v.complete
}

// closure is the zone's variables with all that are tied to them.
func (s *Space) closure(z *network.Zone) (set []int, groups map[int]bool) {
	groups = map[int]bool{}
	for _, v := range z.Vars {
		if g := s.groupOf[v]; !groups[g] {
			groups[g] = true
			set = append(set, s.groups[g]...)
		}
	}
	return set, groups
}

// feasible says whether the variables that the zone does not touch can be set at all under the
// choice: where they cannot, no state of the plan passes.
func (s *Space) feasible(z *network.Zone, c choice) bool {
	_, own := s.closure(z)
	for g := range s.groups {
		if own[g] || !s.tied[g] && !c.pins(s.groups[g]) {
			continue // free variables can always be set
		}
		if len(s.groups[g]) == 1 && !s.tied[g] {
			if c.from(s, s.groups[g][0], 0) < 0 {
				return false
			}
			continue
		}
		any := false
		whole := s.assignments(s.groups[g], c, func([]int) bool { any = true; return false })
		if !any && whole {
			return false
		}
	}
	return true
}

// pins says whether the choice pins any of some variables.
func (c choice) pins(set []int) bool {
	for _, v := range set {
		if _, ok := c[v]; ok {
			return true
		}
	}
	return false
}

// project adds the zone's networks under one choice. It is false where the bound cut it.
func (s *Space) project(z *network.Zone, c choice, seen map[string]bool, out *views) bool {
	set, _ := s.closure(z)
	allowed := map[string]bool{}
	var resting [][]int
	whole := s.assignments(set, c, func(pos []int) bool {
		allowed[pack(set, pos)] = true
		resting = append(resting, append([]int(nil), pos...))
		return true
	})
	add := func(v *View) {
		if k := v.Signature(); !seen[k] {
			seen[k] = true
			out.list = append(out.list, v)
		}
	}
	for _, pos := range resting {
		add(s.view(z, pos, nil))
	}
	for _, pos := range resting {
		for _, t := range s.transits(z, set, pos, allowed) {
			add(s.view(z, pos, t))
		}
	}
	return whole
}

// transits lists the throws that can start at a resting assignment, end positions both allowed.
func (s *Space) transits(z *network.Zone, set, pos []int, allowed map[string]bool) []*Transit {
	var out []*Transit
	for _, v := range z.Vars {
		for i, t := range s.Net.Vars[v].Throws {
			if t.From != pos[v] {
				continue
			}
			end := append([]int(nil), pos...)
			end[v] = t.To
			s.settle(set, end)
			if allowed[pack(set, end)] {
				out = append(out, &Transit{Var: v, Throw: &s.Net.Vars[v].Throws[i]})
			}
		}
	}
	return out
}

func pack(set, pos []int) string {
	b := make([]byte, len(set))
	for i, v := range set {
		b[i] = byte(pos[v])
	}
	return string(b)
}
