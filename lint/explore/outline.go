package explore

import (
	"math"
	"slices"

	"ferrule/lint/network"
)

// outline is how the limbs stand while something else is asked, under one choice.
type outline struct {
	s      *Space
	pinned choice
	apart  map[int]bool // limbs that are told apart in every position
	about  map[int]bool // limbs that are told apart at all; nil for every one
	limbs  []*limb      // outer ones first
	is     map[int]*limb
	reach  map[standing]*standings
	orders [][]int // of feeds
}

// standing is a limb at a position, fed at one of its terminals.
type standing struct {
	v, p int
	near network.NodeID
}

// standings is what is joined to that terminal behind the limb then.
type standings struct {
	nodes map[network.NodeID]bool // behind limbs further in by some position of theirs
	bulk  *bulk
}

// outlineOf prepares the limbs for one choice of a filter, once.
func (s *Space) outlineOf(f Filter, i int) *outline {
	k := outlineKey{f.name, i}
	if s.outlines[k] == nil {
		s.outlines[k] = s.outline(f.choices[i], f.apart)
		s.outlines[k].about = f.about
	}
	return s.outlines[k]
}

func (s *Space) outline(c choice, apart map[int]bool) *outline {
	o := &outline{s: s, pinned: c, apart: apart, limbs: s.limbs(), is: map[int]*limb{}, reach: map[standing]*standings{}}
	for _, l := range o.limbs {
		o.is[l.v] = l
	}
	o.orders = o.feedOrders()
	return o
}

// holds says whether another limb hangs behind this one.
func (l *limb) holds(other *limb) bool {
	return l != other && slices.ContainsFunc(other.near, func(id network.NodeID) bool { return l.far[id] })
}

// feeding lists the positions in which a terminal feeds something behind the limb, or another limb there.
func (o *outline) feeding(l *limb, near network.NodeID, to *limb) []int {
	var out []int
	for p := range o.s.Net.Vars[l.v].Positions {
		if at, held := o.pinned[l.v]; held && !at[p] {
			continue
		}
		x := o.at(l, p, near)
		if to == nil && len(x.nodes) > 0 || to != nil && slices.ContainsFunc(to.near, func(id network.NodeID) bool { return x.nodes[id] }) {
			out = append(out, p)
		}
	}
	return out
}

// rivals are the positions of a list that no other one is sure to outdo.
func (o *outline) rivals(l *limb, near network.NodeID, list []int) []int {
	var out []int
	for i, p := range list {
		mine := o.at(l, p, near).bulk
		if !slices.ContainsFunc(list, func(q int) bool {
			other := o.at(l, q, near).bulk
			return q != p && other.outdoes(mine) && (slices.Index(list, q) < i || !mine.outdoes(other))
		}) {
			out = append(out, p)
		}
	}
	return out
}

// at works out what is joined to a terminal behind a limb at a position, the limbs there at their most.
func (o *outline) at(l *limb, p int, near network.NodeID) *standings {
	k := standing{l.v, p, near}
	if x, ok := o.reach[k]; ok {
		return x
	}
	t := &tail{own: map[network.NodeID]bool{}}
	x := &standings{nodes: map[network.NodeID]bool{}, bulk: newBulk()}
	o.reach[k] = x
	for queue := []network.NodeID{near}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, e := range o.s.Net.At(at) {
			edge := &o.s.Net.Edges[e]
			to := edge.Other(at)
			if to == near || t.own[to] || !l.far[to] {
				continue
			}
			if u := o.limbOf(edge); u != nil && u != l {
				if !slices.Contains(t.limbs, u) && slices.Contains(u.near, at) {
					t.limbs = append(t.limbs, u)
					o.inside(x, u, at)
				}
			} else if o.closed(edge, l.v, p) {
				t.walk(o.s.Net, edge)
				t.own[to] = true
				queue = append(queue, to)
			}
		}
	}
	o.hang(x, l, t)
	return x
}

// tail is what lies between a terminal and the loads.
type tail struct {
	own   map[network.NodeID]bool
	limbs []*limb
	ohms  float64
	parts []string // what they are, all that matters of it
	alone bool     // some wire has its return elsewhere: nothing is known of that
}

func (t *tail) walk(n *network.Network, e *network.Edge) {
	t.ohms += ohmsOf(n, e)
	t.parts = append(t.parts, makeOf(e))
	if w := e.Wire; w != nil && w.Polarity.Set && w.Polarity.Value != "pair" {
		t.alone, t.ohms = true, math.Inf(1)
	}
}

// inside adds what a limb behind another one draws at most, and what it may join.
func (o *outline) inside(x *standings, u *limb, near network.NodeID) {
	list := o.feeding(u, near, nil)
	if len(list) == 0 {
		return
	}
	for _, p := range list {
		for id := range o.at(u, p, near).nodes {
			x.nodes[id] = true
		}
	}
	if list = o.rivals(u, near, list); len(list) == 1 {
		x.bulk.merge(o.at(u, list[0], near).bulk)
		return
	}
	for _, p := range list {
		x.bulk.either(u.v, o.at(u, p, near).bulk)
	}
}

// hang adds the loads that are joined to a terminal, and what the parts before them drop at most.
func (o *outline) hang(x *standings, l *limb, t *tail) {
	var last *network.Load
	count := len(t.limbs)
	for _, i := range l.loads {
		if load := &o.s.Net.Loads[i]; t.own[load.Hot] {
			x.bulk.add(load, i, o.cranks(load))
			last = load
			count++
		}
	}
	for id := range t.own {
		x.nodes[id] = true
	}
	if x.bulk.amps > 0 {
		x.bulk.drop += t.ohms * x.bulk.amps / lowVolts
	}
	if last != nil && count == 1 && !o.cranks(last) && !t.alone {
		slices.Sort(t.parts)
		x.bulk.single = makeOfLoad(last, t.parts)
	}
}

// cranks says whether a load is an engine's starter.
func (o *outline) cranks(l *network.Load) bool {
	return slices.ContainsFunc(o.s.Net.At(l.Hot), func(e int) bool {
		w := o.s.Net.Edges[e].Wire
		return w != nil && w.Cranking.True()
	})
}

func (o *outline) limbOf(e *network.Edge) *limb {
	for _, l := range e.When {
		if u := o.is[l.Var]; u != nil {
			return u
		}
	}
	return nil
}

// closed says whether an edge conducts with the limb at a position and leaves closed as far as they may.
func (o *outline) closed(e *network.Edge, v, p int) bool {
	for _, l := range e.When {
		switch at, held := o.pinned[l.Var]; {
		case l.Var == v:
			if !l.At[p] {
				return false
			}
		case held && !both(at, l.At):
			return false
		}
	}
	return true
}

// both says whether some position is in two sets.
func both(a, b []bool) bool {
	for i := range a {
		if a[i] && b[i] {
			return true
		}
	}
	return false
}
