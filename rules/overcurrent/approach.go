package overcurrent

import (
	"maps"
	"math"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// approach is the ways on which batteries feed a conductor from one end.
type approach struct {
	p      *lint.Pass
	f      *circuit.Faults
	h      explore.Hop
	ports  []network.Port // batteries; where too little is known of some, all that may be one
	opened map[int]bool   // devices
}

func newApproach(p *lint.Pass, f *circuit.Faults, h explore.Hop) *approach {
	return &approach{p: p, f: f, h: h, ports: stiff(p, f)}
}

// after is the same once a device has opened.
func (w *approach) after(device int) *approach {
	opened := maps.Clone(w.opened)
	if opened == nil {
		opened = map[int]bool{}
	}
	opened[device] = true
	return &approach{w.p, w.f.Without(device), w.h, w.ports, opened}
}

// open says whether some battery still feeds the conductor once devices have opened.
func (w *approach) open(opened func(device int) bool) bool {
	return reaches(w.spread(opened), w.ports)
}

// before says whether a device stands on a way to the conductor, not on one to the short from elsewhere.
func (w *approach) before(device int) bool {
	x, in := &w.p.Net.Edges[device], w.spread(func(int) bool { return false })
	return in[x.A] || in[x.B]
}

// spread is what is joined to the conductor's near end without it.
func (w *approach) spread(opened func(device int) bool) map[network.NodeID]bool {
	return spread(w.p, w.f.Section, w.h.From, func(e int) bool {
		x := &w.p.Net.Edges[e]
		return e == w.h.Edge || w.opened[e] || x.A == w.h.To || x.B == w.h.To || x.Kind == network.Element && opened(e)
	})
}

func (w *approach) bare() bool { return w.open(func(int) bool { return true }) }

// guarded says whether every way has a device that the fault opens and that lets the conductor carry no more
// than its ampacity for long: rated no more than it, by its share where several feed the conductor.
func (w *approach) guarded(s *circuit.Short, amps, iz float64) bool {
	return !w.open(func(d int) bool {
		f, through := w.p.Net.Edges[d].Fuse, math.Abs(s.Through(d))
		return f.Rating.Set && through >= circuit.MayCarry(f)*(1-1e-9) && f.Rating.Value*max(1, amps/through) <= iz*(1+1e-9)
	})
}

// next is the device that opens next, and how long it takes yet, in s: +Inf, and the one that is driven
// farthest, where none does. -1 where no device carries any of it.
func (w *approach) next(s *circuit.Short, borne map[int]float64) (device int, wait float64) {
	device, wait = -1, math.Inf(1)
	farthest := 0.0
	times := map[int]float64{}
	for _, d := range elements(w.p, w.f.Section.Edges) {
		f, through := w.p.Net.Edges[d].Fuse, math.Abs(s.Through(d))
		if w.opened[d] || through <= 1e-6*s.Amps() || !f.Rating.Set {
			continue
		}
		if ratio := through / f.Rating.Value; ratio > farthest && math.IsInf(wait, 1) {
			device, farthest = d, ratio
		}
		t, ok := circuit.OpensWithin(f, through)
		if !ok || through < circuit.MayCarry(f)*(1-1e-9) {
			continue
		}
		times[d] = t
		if left := t * (1 - min(borne[d], 1)); left < wait {
			device, wait = d, left
		}
	}
	for d, t := range times {
		borne[d] += wait / t
	}
	return device, wait
}
