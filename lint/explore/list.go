package explore

import (
	"slices"

	"ferrule/lint/network"
	"ferrule/schema"
)

// Ask says which states List gives.
type Ask struct {
	At       map[int]int      // variables that stand at one position
	Transits bool             // switches on their way between two positions too, as states of their own
	Moving   int              // with Throws: the variable that must be on its way
	Throws   []*network.Throw // only states in which Moving is at one of these; all with the same ends
}

// List gives the allowed states that fit, one after another as views of a zone, without holding them
// all: a plan may allow more than could ever be held. each returns false to stop. The result is
// false where the bound, which counts states, or the caller's stop ended the list early.
func (s *Space) List(z *network.Zone, a Ask, each func(*View) bool) bool {
	c := a.choice(s, -1)
	if !s.feasible(z, c) {
		return true
	}
	columns, whole := s.columns(z, c)
	at := make([]int, len(columns))
	for _, x := range columns {
		if len(x.rows) == 0 {
			return whole
		}
	}
	for steps := 0; ; steps++ {
		if steps >= s.Bound || steps%256 == 255 && s.Stop != nil && s.Stop() {
			return false
		}
		if !s.around(z, a, s.assemble(columns, at), each) {
			return true
		}
		i := 0
		for ; i < len(at); i++ {
			if at[i]++; at[i] < len(columns[i].rows) {
				break
			}
			at[i] = 0
		}
		if i == len(at) {
			return whole
		}
	}
}

// choice is what an ask pins; one variable may be left free.
func (a Ask) choice(s *Space, free int) choice {
	c := choice{}
	pin := func(v, at int) {
		c[v] = make([]bool, len(s.Net.Vars[v].Positions))
		c[v][at] = true
	}
	for v, at := range a.At {
		pin(v, at)
	}
	if len(a.Throws) > 0 {
		pin(a.Moving, a.Throws[0].From)
	}
	delete(c, free)
	return c
}

// column is the allowed assignments of one group of variables that are tied together.
type column struct {
	vars []int
	rows [][]byte
}

func (s *Space) columns(z *network.Zone, c choice) (out []column, whole bool) {
	_, groups := s.closure(z)
	whole = true
	for g := range s.groups {
		if !groups[g] {
			continue
		}
		x := column{vars: s.groups[g]}
		whole = s.assignments(x.vars, c, func(pos []int) bool {
			x.rows = append(x.rows, []byte(pack(x.vars, pos)))
			return true
		}) && whole
		out = append(out, x)
	}
	return out, whole
}

func (s *Space) assemble(columns []column, at []int) []int {
	pos := make([]int, len(s.Net.Vars))
	for i := range pos {
		pos[i] = -1
	}
	for i, x := range columns {
		for k, v := range x.vars {
			pos[v] = int(x.rows[at[i]][k])
		}
	}
	return pos
}

// around gives a resting state and the throws that start in it, as far as they were asked for.
func (s *Space) around(z *network.Zone, a Ask, pos []int, each func(*View) bool) bool {
	if len(a.Throws) > 0 {
		for _, t := range a.Throws {
			if s.ends(a, a.Moving, t, pos) && !each(s.view(z, pos, &Transit{a.Moving, t})) {
				return false
			}
		}
		return true
	}
	if !each(s.view(z, pos, nil)) {
		return false
	}
	for _, v := range z.Vars {
		if _, held := a.At[v]; held || !a.Transits {
			continue
		}
		for i := range s.Net.Vars[v].Throws {
			t := &s.Net.Vars[v].Throws[i]
			if t.From == pos[v] && s.ends(a, v, t, pos) && !each(s.view(z, pos, &Transit{v, t})) {
				return false
			}
		}
	}
	return true
}

// ends says whether a throw may end: its far position is allowed, and nothing that is held moves.
func (s *Space) ends(a Ask, v int, t *network.Throw, pos []int) bool {
	end := slices.Clone(pos)
	end[v] = t.To
	all := make([]int, 0, len(end))
	for i, p := range end {
		if p >= 0 {
			all = append(all, i)
		}
	}
	s.settle(all, end)
	return s.allowed(end) && a.choice(s, v).admits(s, all, end)
}

// Allows says whether any allowed state stands at positions; known is false where the bound ended
// the search without one.
func (s *Space) Allows(at map[int]int) (ok, known bool) {
	if len(s.forbid(at)) > 0 {
		return false, true
	}
	c := Ask{At: at}.choice(s, -1)
	for g := range s.groups {
		any := false
		if whole := s.assignments(s.groups[g], c, func([]int) bool { any = true; return false }); !any {
			return false, whole
		}
	}
	return true, true
}

// Excludes names the interlocks that forbid positions outright; where none does, those each of which,
// taken away alone, would let some state stand at them.
func (s *Space) Excludes(at map[int]int) []*schema.Interlock {
	out := s.forbid(at)
	if len(out) > 0 {
		return out
	}
	for _, x := range s.Net.Plan.Interlocks {
		if ok, _ := s.Without(x).Allows(at); ok {
			out = append(out, x)
		}
	}
	return out
}

// forbid lists the interlocks with a combination all of which is in the positions.
func (s *Space) forbid(at map[int]int) []*schema.Interlock {
	var out []*schema.Interlock
	for _, c := range s.never {
		hit := true
		for i, v := range c.vars {
			p, held := at[v]
			hit = hit && held && p == c.at[i]
		}
		if hit && !slices.Contains(out, c.by) {
			out = append(out, c.by)
		}
	}
	return out
}
