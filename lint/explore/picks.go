package explore

import (
	"slices"

	"ferrule/lint/network"
)

// feedOrders lists the orders of the feeds among which limbs pick.
func (o *outline) feedOrders() [][]int {
	set := map[int]bool{}
	for _, l := range o.limbs {
		if len(l.clump) > 1 {
			for _, c := range l.clump {
				set[c] = true
			}
		}
	}
	var all []int
	for c := range set {
		all = append(all, c)
	}
	slices.Sort(all)
	out := [][]int{nil}
	for range all {
		var longer [][]int
		for _, order := range out {
			for _, c := range all {
				if !slices.Contains(order, c) {
					longer = append(longer, append(slices.Clone(order), c))
				}
			}
		}
		out = longer
	}
	return out
}

// stand lists the positions of a limb that may draw most, by an order of feeds; one behind which another
// limb is told apart feeds that one. It is empty where the limb has no position at all.
func (o *outline) stand(l *limb, order []int, to *limb) []int {
	near := slices.DeleteFunc(slices.Clone(l.near), func(id network.NodeID) bool { return !has(l.clump, id) })
	slices.SortStableFunc(near, func(a, b network.NodeID) int {
		return slices.Index(order, l.clump[a]) - slices.Index(order, l.clump[b])
	})
	if len(near) > 1 {
		if list := o.picked(l, near); len(list) > 0 {
			return list
		}
	} else if list := o.feeding(l, near[0], to); len(list) > 0 {
		return o.rivals(l, near[0], list)
	}
	if p := o.pinned.from(o.s, l.v, 0); p >= 0 {
		return []int{p}
	}
	return nil
}

// picked lists the positions of a limb with several feeds, dearest first, that no other is sure to outdo.
func (o *outline) picked(l *limb, near []network.NodeID) []int {
	var list, out []int
	for p := range o.s.Net.Vars[l.v].Positions {
		at, held := o.pinned[l.v]
		if (!held || at[p]) && slices.ContainsFunc(near, func(id network.NodeID) bool { return len(o.at(l, p, id).nodes) > 0 }) {
			list = append(list, p)
		}
	}
	for i, p := range list {
		if !slices.ContainsFunc(list, func(q int) bool {
			return q != p && o.surpasses(l, near, q, p) && (slices.Index(list, q) < i || !o.surpasses(l, near, p, q))
		}) {
			out = append(out, p)
		}
	}
	return out
}

// surpasses says whether a position draws no less than another, whatever an ampere weighs, as long as it weighs no
// less at a dearer feed: as much at every feed, or where the other draws at one alone, as much at that or a dearer one.
func (o *outline) surpasses(l *limb, near []network.NodeID, p, q int) bool {
	only, feeds, all := 0, 0, true
	for i, id := range near {
		mine, other := o.at(l, p, id), o.at(l, q, id)
		if all = all && mine.bulk.outdoes(other.bulk); len(other.nodes) > 0 {
			only, feeds = i, feeds+1
		}
	}
	if all || feeds != 1 {
		return all
	}
	other := o.at(l, q, near[only]).bulk
	return slices.ContainsFunc(near[:only+1], func(id network.NodeID) bool { return o.at(l, p, id).bulk.outdoes(other) })
}

// fed says whether the limbs before one leave it joined to what feeds them.
func (o *outline) fed(l *limb, pos []int) bool {
	for _, u := range o.limbs {
		if u.holds(l) && pos[u.v] >= 0 && !slices.ContainsFunc(u.near, func(near network.NodeID) bool {
			x := o.at(u, pos[u.v], near)
			return slices.ContainsFunc(l.near, func(id network.NodeID) bool { return x.nodes[id] })
		}) {
			return false
		}
	}
	return true
}
