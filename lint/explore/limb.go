package explore

import (
	"slices"

	"ferrule/lint/network"
)

// limb is a selector or plug behind which only loads hang, which closes now one way and now another: it
// is no leaf, since no position closes all. What is asked of the rest of the plan it can only change by
// what it draws, and of its positions the one that draws most settles that (see weigh). So a limb is
// told apart by itself, with everything else as it stands at worst, and not in all combinations.
//
// It may pick among several feeds, if no position joins two of them. The picks of several limbs then go
// together: what a feed's share adds somewhere, less what another feed's share adds there, is the same
// number for every limb (Kirchhoff's laws are linear), so an ampere of each is worst at the feeds in one order. One
// that draws more at a later feed may stand there even so.
type limb struct {
	v     int
	far   map[network.NodeID]bool // what hangs behind it
	near  []network.NodeID        // its terminals on the supplying side, in order
	clump map[network.NodeID]int  // near terminals on one pole, by what they are always joined to
	loads []int                   // behind it
}

// limbs finds the limbs, outer ones before those that hang on them.
func (s *Space) limbs() []*limb {
	if s.limbsOf != nil {
		return *s.limbsOf
	}
	f := newLimbFinder(s)
	var out []*limb
	for v := range s.Net.Vars {
		if l := f.limb(v); l != nil {
			out = append(out, l)
		}
	}
	out = settled(s, out)
	if most := f.feeds(out); most > mostFeeds {
		out = slices.DeleteFunc(out, func(l *limb) bool { return len(l.clump) > 1 })
	}
	out = slices.DeleteFunc(out, func(l *limb) bool { // who picks among feeds stands before no other limb, and behind none
		return len(l.clump) > 1 && slices.ContainsFunc(out, func(u *limb) bool { return u.holds(l) })
	})
	out = settled(s, out)
	slices.SortStableFunc(out, func(a, b *limb) int { return len(b.far) - len(a.far) })
	s.limbsOf = &out
	return out
}

// mostFeeds bounds the feeds among which limbs pick: every order of them is looked at.
const mostFeeds = 4

// settled keeps the limbs behind which nothing but limbs and leaves opens and closes.
func settled(s *Space, list []*limb) []*limb {
	for {
		is := map[int]bool{}
		for _, l := range list {
			is[l.v] = true
		}
		kept := slices.DeleteFunc(slices.Clone(list), func(l *limb) bool {
			for id := range l.far {
				for _, e := range s.Net.At(id) {
					for _, w := range s.Net.Edges[e].When {
						if !is[w.Var] && !s.Leaf(w.Var) {
							return true
						}
					}
				}
			}
			return false
		})
		if len(kept) == len(list) {
			return kept
		}
		list = kept
	}
}

type limbFinder struct {
	s      *Space
	tied   map[int]bool
	ports  map[network.NodeID]bool
	clumps []int // by node: what wires, devices and fixed joints always join
	homes  map[network.NodeID]bool
}

func newLimbFinder(s *Space) *limbFinder {
	f := &limbFinder{s: s, tied: s.bound(), ports: s.supplyNodes(), homes: map[network.NodeID]bool{}}
	f.clumps = make([]int, len(s.Net.Nodes))
	for i := range f.clumps {
		f.clumps[i] = -1
	}
	for i := range f.clumps {
		f.clump(i)
	}
	return f
}

// clump marks all that is always joined to a node.
func (f *limbFinder) clump(from int) {
	if f.clumps[from] >= 0 {
		return
	}
	f.clumps[from] = from
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, e := range f.s.Net.At(network.NodeID(queue[0])) {
			x := &f.s.Net.Edges[e]
			if to := int(x.Other(network.NodeID(queue[0]))); len(x.When) == 0 && f.clumps[to] < 0 {
				f.clumps[to] = from
				queue = append(queue, to)
			}
		}
	}
}

// bound are the variables that interlocks and followers tie to others.
func (s *Space) bound() map[int]bool {
	tied := map[int]bool{}
	for _, c := range s.never {
		for _, v := range c.vars {
			tied[v] = true
		}
	}
	for i, v := range s.Net.Vars {
		tied[i] = tied[i] || v.Follower
		for _, f := range v.Follows {
			tied[f] = true
		}
	}
	return tied
}

// limb judges one variable; nil where it is none.
func (f *limbFinder) limb(v int) *limb {
	s := f.s
	contacts := s.movesOf(v)
	if s.Net.Vars[v].Kind == network.SourceVar || f.tied[v] || s.Leaf(v) || len(contacts) == 0 {
		return nil
	}
	l := &limb{v: v, far: map[network.NodeID]bool{}, clump: map[network.NodeID]int{}}
	walked := map[network.NodeID]bool{}
	for _, e := range contacts {
		for _, end := range []network.NodeID{s.Net.Edges[e].A, s.Net.Edges[e].B} {
			if l.far[end] || slices.Contains(l.near, end) {
				continue
			}
			side, supplies := s.side(end, v, f.ports)
			for _, id := range side {
				if !supplies {
					l.far[id] = true
				}
				walked[id] = true
			}
			if supplies {
				l.near = append(l.near, end)
			}
		}
	}
	for i := range s.Net.Loads {
		if x := &s.Net.Loads[i]; l.far[x.Hot] || l.far[x.Ret] {
			l.loads = append(l.loads, i)
			if x.Present >= 0 || !l.far[x.Hot] { // behind returns alone nothing is weighed
				return nil
			}
		}
	}
	if !f.picks(l, contacts) || !f.homeward(l) {
		return nil
	}
	return l
}

// movesOf lists the edges that open and close with a variable and with nothing else; nil where some
// other variable has a say in one of them.
func (s *Space) movesOf(v int) []int {
	var out []int
	for _, e := range s.Net.EdgesOf(s.Net.Vars[v].Addr) {
		switch when := s.Net.Edges[e].When; {
		case len(when) == 0:
		case len(when) > 1 || when[0].Var != v:
			return nil
		default:
			out = append(out, e)
		}
	}
	return out
}

// picks says whether the limb has feeds on live nodes, that no position joins, and no more than one return; it
// notes the feeds.
func (f *limbFinder) picks(l *limb, contacts []int) bool {
	taken := map[int]bool{}
	returns := 0
	for _, id := range l.near {
		if taken[f.clumps[id]] {
			return false
		}
		taken[f.clumps[id]] = true
		if f.s.Net.Nodes[id].Return {
			returns++
		} else {
			l.clump[id] = f.clumps[id]
		}
	}
	if returns > 1 || len(l.clump) == 0 {
		return false
	}
	for p := range f.s.Net.Vars[l.v].Positions {
		if f.joins(l, contacts, p) {
			return false
		}
	}
	return true
}

// joins says whether a position joins two terminals on the supplying side.
func (f *limbFinder) joins(l *limb, contacts []int, p int) bool {
	at := map[network.NodeID]network.NodeID{}
	for _, from := range l.near {
		for _, id := range f.s.behind(l, contacts, from, p) {
			if _, met := at[id]; met {
				return true
			}
			at[id] = from
		}
	}
	return false
}

// behind lists what a terminal on the supplying side reaches behind a limb at a position, with all else
// there closed. The terminal itself comes first.
func (s *Space) behind(l *limb, contacts []int, from network.NodeID, p int) []network.NodeID {
	out, seen := []network.NodeID{from}, map[network.NodeID]bool{from: true}
	for i := 0; i < len(out); i++ {
		for _, e := range s.Net.At(out[i]) {
			x := &s.Net.Edges[e]
			to := x.Other(out[i])
			switch own := slices.Contains(contacts, e); {
			case seen[to]:
			case own && !closes(x, l.v, p), !own && !l.far[out[i]]:
			default:
				seen[to] = true
				out = append(out, to)
			}
		}
	}
	return out
}

// feeds counts the feeds among which limbs pick.
func (f *limbFinder) feeds(list []*limb) int {
	all := map[int]bool{}
	for _, l := range list {
		if len(l.clump) > 1 {
			for _, c := range l.clump {
				all[c] = true
			}
		}
	}
	return len(all)
}

func has[T any](m map[network.NodeID]T, id network.NodeID) bool {
	_, ok := m[id]
	return ok
}

func sortedNodes(m map[network.NodeID]bool) []network.NodeID {
	out := make([]network.NodeID, 0, len(m))
	for id := range m {
		out = append(out, id)
	}
	slices.Sort(out)
	return out
}
