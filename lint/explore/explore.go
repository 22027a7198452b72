// Package explore answers over every state that a plan allows.
//
// A state gives every switch, connector and come-and-go source a position, minus what interlocks
// rule out and what followers fix; a switch in transit between two positions is a state of its own.
// Questions are asked of a zone (see package network): Views lists each different network that the
// zone can be, over all allowed states, once. Projection on the zone's own variables is exact: an
// assignment is kept only if some allowed state of the whole plan extends it.
//
// Views lists positions one after another, up to a bound that counts steps. A zone that exceeds the
// bound says so (Views returns complete == false), and so does the Space. What need not be listed is
// asked instead, at a cost that hardly grows with the number of states: Path, Cut and Seek look for
// one state, Weigh for the largest sums, Total and Distinct count.
package explore

import (
	"ferrule/lint/network"
	"ferrule/schema"
)

// DefaultBound is how many assignments of one zone are looked at. With mostKept it keeps a plan that
// is made to be large from taking more than about a minute and a few hundred megabytes.
const DefaultBound = 1 << 12

// mostKept bounds the positions that the assignments of one zone hold together.
const mostKept = 1 << 25

// Space is the allowed states of a network.
type Space struct {
	Net   *network.Network
	Bound int
	Stop  func() bool // asked now and then; true ends the search early
	Halts bool        // where Stop ends a search, unwind it by Halted: whoever sets this recovers
	Plain bool        // list limbs in every combination too: what telling them apart one by one is checked against

	never    []combo
	loose    map[string]bool // addresses of interlocks and modes that are not relied on
	groups   [][]int         // variables tied together by interlocks and followers, as connected groups
	groupOf  []int
	views    map[viewKey]*views
	asked    map[viewKey][]*posed
	small    map[*network.Zone]contracted
	ways     map[viewKey]*Ways
	leafOf   map[int]leaf
	limbsOf  *[]*limb
	outlines map[outlineKey]*outline
	tied     []bool // by group: an interlock reaches into it
	examined int
	ticks    int
	complete bool
}

// Halted is what a search panics with where its caller has stopped it and said that it recovers: a single
// question can take long, and half an answer is none.
type Halted struct{}

// Tick is called wherever much is worked out, so that a stop is heard there.
func (s *Space) Tick() {
	if s.ticks++; s.Halts && s.ticks%often == 0 && s.Stop != nil && s.Stop() {
		panic(Halted{})
	}
}

// often is how many ticks go by between two looks at the caller's stop.
const often = 32

type viewKey struct {
	zone   *network.Zone
	filter string
}

type outlineKey struct {
	filter string
	choice int
}

type views struct {
	list     []*View
	complete bool
}

// combo is one combination that cannot occur.
type combo struct {
	vars, at []int
	by       *schema.Interlock
}

// New prepares the states of a network.
func New(n *network.Network, bound int) *Space {
	if bound <= 0 {
		bound = DefaultBound
	}
	s := &Space{Net: n, Bound: bound, views: map[viewKey]*views{}, outlines: map[outlineKey]*outline{}, complete: true}
	for _, x := range n.Plan.Interlocks {
		for _, c := range x.Never.List {
			if k, ok := s.combo(c); ok {
				k.by = x
				s.never = append(s.never, k)
			}
		}
	}
	s.tie()
	return s
}

// Without is the same space with some interlocks taken away and some modes not relied on: what such a
// mode pins as present may be absent, and people may be aboard in it.
func (s *Space) Without(blocks ...schema.Block) *Space {
	out := &Space{Net: s.Net, Bound: s.Bound, Stop: s.Stop, Halts: s.Halts, Plain: s.Plain, views: map[viewKey]*views{}, outlines: map[outlineKey]*outline{}, complete: true, loose: map[string]bool{}}
	for addr := range s.loose {
		out.loose[addr] = true
	}
	for _, b := range blocks {
		out.loose[b.Header().Addr] = true
	}
	for _, c := range s.never {
		if !out.loose[c.by.Addr] {
			out.never = append(out.never, c)
		}
	}
	out.tie()
	return out
}

// Aboard says whether people may be aboard in a mode.
func (s *Space) Aboard(m *schema.Mode) bool { return !m.Occupied.False() || s.loose[m.Addr] }

// combo reads a combination; ok is false where it names a position that is not there, or one that
// a part never has: such a combination cannot occur anyway.
func (s *Space) combo(p schema.Pins) (combo, bool) {
	var c combo
	for _, pin := range p.List {
		v, at := s.Net.Var(pin.Ref.Addr), s.position(pin)
		switch {
		case v < 0 && alwaysAt(pin):
			continue
		case v < 0 || at < 0:
			return c, false
		}
		c.vars, c.at = append(c.vars, v), append(c.at, at)
	}
	return c, len(c.vars) > 0
}

// alwaysAt says whether a pin states what is always so: a fixed source present, a fixed connector mated.
func alwaysAt(p schema.Pin) bool { return p.Position.Value == "present" || p.Position.Value == "mated" }

func (s *Space) position(p schema.Pin) int {
	if v := s.Net.Var(p.Ref.Addr); v >= 0 {
		for i, name := range s.Net.Vars[v].Positions {
			if name == p.Position.Value {
				return i
			}
		}
	}
	return -1
}

// tie groups the variables that constrain each other.
func (s *Space) tie() {
	parent := make([]int, len(s.Net.Vars))
	for i := range parent {
		parent[i] = i
	}
	var find func(int) int
	find = func(i int) int {
		if parent[i] != i {
			parent[i] = find(parent[i])
		}
		return parent[i]
	}
	for i, v := range s.Net.Vars {
		for _, f := range v.Follows {
			parent[find(f)] = find(i)
		}
	}
	for _, c := range s.never {
		for _, v := range c.vars {
			parent[find(v)] = find(c.vars[0])
		}
	}
	s.groupOf = make([]int, len(parent))
	at := map[int]int{}
	for i := range parent {
		r := find(i)
		if _, ok := at[r]; !ok {
			at[r] = len(s.groups)
			s.groups = append(s.groups, nil)
		}
		s.groupOf[i] = at[r]
		s.groups[at[r]] = append(s.groups[at[r]], i)
	}
	s.tied = make([]bool, len(s.groups))
	for _, c := range s.never {
		s.tied[s.groupOf[c.vars[0]]] = true
	}
}

// Examined is the number of assignments looked at so far.
func (s *Space) Examined() int { return s.examined }

// Complete says whether every search so far stayed within its bound.
func (s *Space) Complete() bool { return s.complete }

// Skip says that somebody looks at fewer states than there are.
func (s *Space) Skip() { s.complete = false }

// assignments lists the allowed resting assignments of a closed set of variables: positions holds a
// position for each variable of the plan, -1 outside the set. each returns false to stop. The result
// is false where the bound or the caller's stop ended the list early.
func (s *Space) assignments(set []int, allowed choice, each func(positions []int) bool) bool {
	pos := make([]int, len(s.Net.Vars))
	for i := range pos {
		pos[i] = -1
	}
	var free []int
	for _, v := range set {
		if !s.Net.Vars[v].Follower {
			free = append(free, v)
		}
	}
	if !allowed.first(s, free, pos) {
		return true
	}
	bound := min(s.Bound, 1+mostKept/(1+len(pos)))
	for steps := 0; ; steps++ {
		if steps >= bound || steps%1024 == 1023 && s.Stop != nil && s.Stop() {
			return false
		}
		s.examined++
		s.settle(set, pos)
		if s.allowed(pos) && allowed.admits(s, set, pos) && !each(pos) {
			return true
		}
		if !s.next(free, allowed, pos) {
			return true
		}
	}
}

// next moves the free variables on to the next assignment that a choice allows, false after the last.
func (s *Space) next(free []int, allowed choice, pos []int) bool {
	for _, v := range free {
		if p := allowed.from(s, v, pos[v]+1); p >= 0 {
			pos[v] = p
			return true
		}
		pos[v] = allowed.from(s, v, 0)
	}
	return false
}

// settle puts followers where what they follow sends them; a follower may follow a follower.
func (s *Space) settle(set, pos []int) {
	done := map[int]bool{}
	var put func(v int)
	put = func(v int) {
		x := &s.Net.Vars[v]
		if !x.Follower || done[v] {
			return
		}
		done[v] = true
		closed := true
		for _, f := range x.Follows {
			put(f)
			closed = closed && pos[f] == closedAt(s.Net, f)
		}
		pos[v] = x.Closed
		if !closed {
			pos[v] = 1 - x.Closed
		}
	}
	for _, v := range set {
		put(v)
	}
}

// allowed says whether no interlock rules the assignment out. Combinations that reach outside the
// set do not speak here: the set is closed over the interlocks that touch it.
func (s *Space) allowed(pos []int) bool {
	for _, c := range s.never {
		hit := true
		for i, v := range c.vars {
			if pos[v] != c.at[i] {
				hit = false
				break
			}
		}
		if hit {
			return false
		}
	}
	return true
}
