package backfeed

import (
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// rank orders crossings by how sure and how grave they are.
func (c *crossing) rank() int {
	switch {
	case len(c.lacks) > 0:
		return 1
	case c.over == nil:
		return 0
	case c.over.fuse:
		return 2
	}
	return 3
}

// take keeps the gravest crossing; of like ones, one that needs no charger to hold it, then the largest.
func (t *tie) take(c *crossing) {
	if t.most == nil || c.amps > t.most.amps {
		t.most = c
	}
	r := c.rank()
	if r == 0 {
		return
	}
	c.alone = r == 1 || t.holdsAlone(c)
	w := t.worst
	switch {
	case w == nil, r > w.rank(), r == w.rank() && c.alone && !w.alone, r == w.rank() && c.alone == w.alone && c.amps > w.amps*(1+1e-6):
		t.worst = c
	}
}

// holdsAlone says whether the isolator stays closed with every charger gone.
func (t *tie) holdsAlone(c *crossing) bool {
	if c.point.Charge == circuit.EndOfCharge {
		return false
	}
	v := c.point.View
	for _, i := range v.Zone.Sources {
		if s := &t.p.Net.Sources[i]; s.Kind.Value != "battery" && s.Present >= 0 {
			v = v.Put(s.Present, slices.Index(t.p.Net.Vars[s.Present].Positions, "absent"))
		}
	}
	p := t.p.Circuit.Point(v, c.point.Setting)
	return p.Found && t.senses(p) >= t.x.CutOut.Value*(1-1e-9)
}

// state is the positions on the ways of the current and what must not be otherwise. That the isolator is
// closed says already that something holds it so.
func (t *tie) state(c *crossing) []lint.Position {
	n, v := t.p.Net, c.point.View
	edges, sources := []int{t.edge}, []int(nil)
	near, far := t.around(v, c.end), t.around(v, t.ends[0]+t.ends[1]-c.end)
	for sum, k := 0.0, 0; k < len(c.drawers) && sum*c.amps/c.drawn <= c.over.n.Value; k++ {
		edges, sum = append(edges, near.To(c.drawers[k].hot).Edges()...), sum+c.drawers[k].amps.Value
	}
	for _, s := range c.live.At(t.ends[0]) {
		if _, ok := far.Dist[t.hotOf(s)]; !ok || t.gives(c.point, s) <= 0.05*c.amps {
			continue
		}
		edges = append(edges, far.To(t.hotOf(s)).Edges()...)
		if s.Source >= 0 {
			sources = append(sources, s.Source)
			continue
		}
		more, from := c.live.Way(n.Converters[s.Converter].In)
		edges, sources = append(edges, more...), append(sources, from...)
	}
	told := v.Witness(edges, sources...)
	rest := slices.DeleteFunc(slices.Clone(v.Zone.Vars), func(i int) bool {
		return slices.ContainsFunc(told, func(p lint.Position) bool { return p.Addr == n.Vars[i].Addr })
	})
	kept := v.Keep(rest, func(o *explore.View) bool {
		y := t.at(o, c.point.Setting, c.side, c.part)
		return y.closed && y.rank() == c.rank()
	})
	return lint.SortState(append(told, v.State(kept)...))
}

// holder is what holds the isolator closed, in a sentence; "" where batteries do by themselves.
func (t *tie) holder(c *crossing) string {
	volts, by, _ := t.highest(c.point.View, c.live, t.ends[0], false)
	switch {
	case c.alone, volts.Kind == 0:
		return ""
	case by.Source >= 0:
		return lint.Quote(t.p.Net.Sources[by.Source].Source)
	}
	return lint.Quote(t.p.Net.Converters[by.Converter].Converter)
}

func (t *tie) hotOf(s explore.Supply) network.NodeID {
	if s.Source >= 0 {
		return t.p.Net.Sources[s.Source].Hot
	}
	return t.p.Net.Converters[s.Converter].Out.Hot
}

// gives is what a supply gives in a solved state, in A.
func (t *tie) gives(p *circuit.Point, s explore.Supply) float64 {
	if s.Source >= 0 {
		return p.SourceAmps(s.Source)
	}
	return p.OutAmps(s.Converter)
}
