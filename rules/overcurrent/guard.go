package overcurrent

import (
	"cmp"
	"math"
	"slices"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// A patch is what wires and closed contacts join in a view without passing a device: every conductor
// of a patch is equally guarded. patches is the view cut into them, with the devices between them
// thinned to a forest in which the way between any two patches is the least protected one.
type patches struct {
	*area
	view *explore.View
	root []int32           // by the zone's own numbering of nodes
	next map[int32][]guard // devices at a patch, and the patch behind each
}

// guard is a device with the patch that it leads to.
type guard struct {
	device int
	to     int32
}

// rating is a device's rating in A; one without counts as no limit, so that ways through it are
// looked at first.
func (a *area) rating(device int) float64 {
	if f := a.n.Edges[device].Fuse; f.Rating.Set {
		return f.Rating.Value
	}
	return math.Inf(1)
}

// devices lists the devices of the zone, largest first.
func (a *area) devices() []int {
	var out []int
	for _, e := range a.zone.Edges {
		if a.n.Edges[e].Kind == network.Element && a.walkable(e) {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int { return cmp.Compare(a.rating(y), a.rating(x)) })
	return out
}

func (a *area) cut(v *explore.View, devices []int) *patches {
	p := &patches{area: a, view: v, root: forest(a.zone.Size()), next: map[int32][]guard{}}
	for _, e := range a.zone.Edges {
		if a.n.Edges[e].Kind != network.Element && a.walkable(e) && v.Conducts(e) {
			x, y := p.ends(e)
			join(p.root, x, y)
		}
	}
	tied := forest(a.zone.Size())
	for _, d := range devices {
		x, y := p.ends(d)
		if v.Conducts(d) && top(tied, x) != top(tied, y) {
			join(tied, x, y)
			p.next[x] = append(p.next[x], guard{d, y})
			p.next[y] = append(p.next[y], guard{d, x})
		}
	}
	return p
}

// ends gives the patches at an edge's two ends.
func (p *patches) ends(e int) (x, y int32) {
	return p.at(p.n.Edges[e].A), p.at(p.n.Edges[e].B)
}

// at is the patch of a live node of the zone.
func (p *patches) at(id network.NodeID) int32 { return top(p.root, p.zone.Local(id)) }

// guards is what limits a fault on the least protected way to a patch: the smallest device that has a
// rating, and those on the way that have none. device is -1 where no device with a rating is on it.
type guards struct {
	device  int
	unrated []int
}

// from finds what guards every patch that a feed reaches.
func (p *patches) from(f feed) map[int32]guards {
	start := p.at(f.at)
	out := map[int32]guards{start: {device: -1}}
	for queue := []int32{start}; len(queue) > 0; queue = queue[1:] {
		here := out[queue[0]]
		for _, g := range p.next[queue[0]] {
			if _, seen := out[g.to]; seen {
				continue
			}
			there := here
			switch {
			case math.IsInf(p.rating(g.device), 1):
				there.unrated = append(slices.Clip(here.unrated), g.device)
			case here.device < 0 || p.rating(g.device) < p.rating(here.device):
				there.device = g.device
			}
			out[g.to] = there
			queue = append(queue, g.to)
		}
	}
	return out
}

func forest(n int) []int32 {
	out := make([]int32, n)
	for i := range out {
		out[i] = int32(i)
	}
	return out
}

func top(f []int32, i int32) int32 {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

func join(f []int32, i, j int32) {
	if i, j = top(f, i), top(f, j); i != j {
		f[max(i, j)] = min(i, j)
	}
}
