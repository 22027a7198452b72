package switching

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// alternator is one alternator with the batteries that positions can join to it.
type alternator struct {
	*lint.Pass
	source    int
	batteries []int
	zone      *network.Zone
	vars      []int // what somebody moves, or what comes and goes, that the zone turns on
	own       bool  // a battery that nothing parts from it
	found     map[string]lint.Verdict
	asked     map[string]bool
}

func newAlternator(p *lint.Pass, source int, found map[string]lint.Verdict, asked map[string]bool) *alternator {
	a := &alternator{Pass: p, source: source, found: found, asked: asked}
	s := &p.Net.Sources[source]
	zones, stacked := p.Net.Onward(s.Hot)
	if len(zones) == 0 {
		return a
	}
	z := p.Net.Join(zones...)
	if stacked {
		z = p.Net.JoinFed(zones...)
	}
	keep := []network.NodeID{s.Hot}
	for _, i := range z.Sources {
		if b := &p.Net.Sources[i]; b.Kind.Value == "battery" {
			a.batteries, keep = append(a.batteries, i), append(keep, b.Hot)
		}
	}
	for i := range p.Net.Converters {
		if c := &p.Net.Converters[i]; c.Kind.Value == "diode" {
			keep = append(keep, c.In.Hot, c.Out.Hot)
		}
	}
	if len(a.batteries) > 0 {
		a.zone = p.Net.Trim(z, keep...)
		a.own = a.wired()
		a.vars = movers(p.Net, a.zone.Vars)
	}
	return a
}

// movers lists variables with what their followers follow in their place.
func movers(n *network.Network, vars []int) []int {
	var out []int
	var add func(i int)
	add = func(i int) {
		switch x := &n.Vars[i]; {
		case x.Follower:
			for _, f := range x.Follows {
				add(f)
			}
		case !slices.Contains(out, i):
			out = append(out, i)
		}
	}
	for _, i := range vars {
		add(i)
	}
	slices.Sort(out)
	return out
}

// wired says whether wire, devices and diodes alone join a battery that stays, or a string of them, across
// the alternator, the way back included.
func (a *alternator) wired() bool {
	n, s := a.Net, &a.Net.Sources[a.source]
	seen := map[network.NodeID]bool{s.Hot: true}
	queue := []network.NodeID{s.Hot}
	visit := func(id network.NodeID) {
		if id != network.None && !seen[id] {
			seen[id] = true
			queue = append(queue, id)
		}
	}
	passed := false
	for ; len(queue) > 0; queue = queue[1:] {
		for _, e := range n.At(queue[0]) {
			if k := &n.Edges[e]; k.Kind != network.Contact && k.Kind != network.Mate && len(k.When) == 0 {
				visit(k.Other(queue[0]))
			}
		}
		for i := range n.Converters {
			if c := &n.Converters[i]; c.Kind.Value == "diode" && c.Present < 0 && c.In.Hot == queue[0] {
				visit(c.Out.Hot)
			}
		}
		for _, i := range a.batteries {
			if b := &n.Sources[i]; b.Present < 0 && b.Hot == queue[0] {
				passed = passed || len(n.At(b.Ret)) == 0 || len(n.At(s.Ret)) == 0
				visit(b.Ret)
			}
		}
	}
	return passed || seen[s.Ret]
}

// held says whether the alternator has a battery in a view, but for one that is gone; -1 for none.
func (a *alternator) held(v *explore.View, gone int) bool {
	return v.Onward(a.Net.Sources[a.source].Port).Held(gone)
}

func (a *alternator) bare(v *explore.View) bool { return !a.held(v, -1) }
