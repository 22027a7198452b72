package explore

import (
	"slices"

	"ferrule/lint/network"
)

// reduce adds the zone's networks under one choice, each limb told apart by itself: everything else in
// every allowed state, and the other limbs where they draw most. It is false where the bound cut it.
func (s *Space) reduce(z *network.Zone, o *outline, seen map[string]bool, out *views) bool {
	set, _ := s.closure(z)
	r := &reduction{s: s, z: z, o: o, set: set, seen: seen, out: out}
	var core []int
	for _, v := range set {
		switch l := o.is[v]; {
		case l == nil:
			core = append(core, v)
		case o.about == nil || o.about[v]:
			r.limbs = append(r.limbs, l)
		default:
			r.still = append(r.still, v)
		}
	}
	r.picks = r.orders()
	var resting [][]int
	whole := s.assignments(core, o.pinned, func(pos []int) bool {
		resting = append(resting, slices.Clone(pos))
		return r.rest(pos)
	})
	for _, pos := range resting {
		if !r.move(pos) {
			break
		}
	}
	return whole && !r.cut
}

type reduction struct {
	s     *Space
	z     *network.Zone
	o     *outline
	set   []int
	limbs []*limb
	still []int // limbs that stand anywhere, since nobody asks about them
	picks [][]int

	moving *limb // the one that is thrown, nil for none
	from   int   // its position before

	seen  map[string]bool
	out   *views
	steps int
	cut   bool
}

// orders are the orders of feeds that tell this zone's limbs apart.
func (r *reduction) orders() [][]int {
	own := map[int]bool{}
	for _, l := range r.limbs {
		if len(l.clump) > 1 {
			for _, c := range l.clump {
				own[c] = true
			}
		}
	}
	var out [][]int
	for _, order := range r.o.orders {
		order = slices.DeleteFunc(slices.Clone(order), func(c int) bool { return !own[c] })
		if !slices.ContainsFunc(out, func(x []int) bool { return slices.Equal(x, order) }) {
			out = append(out, order)
		}
	}
	return out
}

// reach is how many times the bound may be looked at where limbs are told apart: it is meant for the rest of
// the plan, and each of its states is looked at once for every position of every limb.
const reach = 4

// step counts a look; false where the bound is met.
func (r *reduction) step() bool {
	r.steps++
	r.s.examined++
	if r.steps > reach*r.s.Bound || r.steps%1024 == 1023 && r.s.Stop != nil && r.s.Stop() {
		r.cut = true
	}
	return !r.cut
}

// rest adds the resting states around one of the rest of the plan.
func (r *reduction) rest(core []int) bool {
	add := func(pos []int) bool {
		if r.step() {
			r.add(r.s.view(r.z, pos, nil))
		}
		return !r.cut
	}
	for _, order := range r.picks {
		if !r.stands(core, order, nil, 0, add) {
			return false
		}
		for _, l := range r.limbs {
			for _, p := range r.told(l) {
				if !r.stands(core, order, l, p, add) {
					return false
				}
			}
		}
	}
	return true
}

func (r *reduction) add(v *View) {
	if k := v.Signature(); !r.seen[k] {
		r.seen[k] = true
		r.out.list = append(r.out.list, v)
	}
}

// stands gives states around one of the rest of the plan: the limbs where they draw most, but one at a
// position, with those before it so that they feed it. Where it is not sure which position of a limb draws
// most, each of them; of limbs that nothing feeds then any one will do.
func (r *reduction) stands(core []int, order []int, told *limb, at int, each func(pos []int) bool) bool {
	pos := slices.Clone(core)
	if !r.o.pinned.first(r.s, r.still, pos) {
		return true
	}
	var put func(i int) bool
	put = func(i int) bool {
		if i == len(r.limbs) {
			return each(slices.Clone(pos))
		}
		l := r.limbs[i]
		var list []int
		switch {
		case l == told:
			list = []int{at}
		case l == r.moving:
			list = []int{r.from}
		default:
			list = r.o.stand(l, order, r.before(l, told))
			if (r.moving == nil || !r.moving.holds(l)) && !r.o.fed(l, pos) { // on the way a limb feeds by either end
				list = list[:min(1, len(list))]
			}
		}
		for _, p := range list {
			pos[l.v] = p
			if !put(i + 1) {
				return false
			}
		}
		return true
	}
	return put(0)
}

// told lists the positions of a limb that are looked at: those that close something that no other
// position closes with all the rest, and all of a plug or of one that is told apart.
func (r *reduction) told(l *limb) []int {
	contacts := r.s.movesOf(l.v)
	x := &r.s.Net.Vars[l.v]
	var out []int
	for p := range x.Positions {
		if at, held := r.o.pinned[l.v]; held && !at[p] {
			continue
		}
		if x.Kind == network.ConnectorVar || r.o.apart[l.v] || !r.outdone(l, contacts, p) {
			out = append(out, p)
		}
	}
	return out
}

// outdone says whether another allowed position closes all that one closes, and more.
func (r *reduction) outdone(l *limb, contacts []int, p int) bool {
	for q := range r.s.Net.Vars[l.v].Positions {
		if at, held := r.o.pinned[l.v]; held && !at[q] {
			continue
		}
		all, more := true, q < p
		for _, e := range contacts {
			a, b := closes(&r.s.Net.Edges[e], l.v, p), closes(&r.s.Net.Edges[e], l.v, q)
			all, more = all && (b || !a), more || b && !a
		}
		if q != p && all && more {
			return true
		}
	}
	return false
}

// before is the limb behind another one that it has to feed: the one that is told apart, or thrown.
func (r *reduction) before(l, told *limb) *limb {
	for _, to := range []*limb{told, r.moving} {
		if to != nil && l.holds(to) {
			return to
		}
	}
	return nil
}

// move adds the throws that can start in a state of the rest of the plan: of its own switches, and those
// of a limb that close two of its positions at once.
func (r *reduction) move(core []int) bool {
	for _, v := range r.z.Vars {
		l := r.o.is[v]
		if slices.Contains(r.still, v) {
			continue
		}
		for i := range r.s.Net.Vars[v].Throws {
			t := &r.s.Net.Vars[v].Throws[i]
			if l != nil && !t.Overlap && !r.o.apart[v] || l == nil && core[v] != t.From {
				continue
			}
			if !r.throw(core, v, l, t) {
				return false
			}
		}
	}
	return true
}

// throw adds one throw, the limbs where they draw most. What it joins while it lasts may be fed then and
// never at rest: there each other limb is told apart too.
func (r *reduction) throw(core []int, v int, l *limb, t *network.Throw) bool {
	r.moving, r.from = l, t.From
	defer func() { r.moving = nil }()
	add := func(pos []int) bool {
		if pos[v] == t.From && r.ends(pos, v, t) && r.step() {
			r.add(r.s.view(r.z, pos, &Transit{Var: v, Throw: t}))
		}
		return !r.cut
	}
	joins := t.Overlap && (l == nil || len(l.clump) > 1) // else only what hangs on it
	for _, order := range r.picks {
		if !r.stands(core, order, nil, 0, add) {
			return false
		}
		for _, u := range r.limbs {
			if u == l || !joins && !(t.Overlap && (l.holds(u) || u.holds(l))) {
				continue
			}
			for _, p := range r.told(u) {
				if !r.stands(core, order, u, p, add) {
					return false
				}
			}
		}
	}
	return true
}

// ends says whether a throw may start and end: both ends are allowed.
func (r *reduction) ends(pos []int, v int, t *network.Throw) bool {
	end := slices.Clone(pos)
	end[v] = t.To
	r.s.settle(r.set, end)
	return r.s.allowed(pos) && r.o.pinned.admits(r.s, r.set, pos) && r.s.allowed(end) && r.o.pinned.admits(r.s, r.set, end)
}
