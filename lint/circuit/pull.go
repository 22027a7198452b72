package circuit

import (
	"math"
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// Pull is how a constant power stands in one state: the input of a converter, or a load.
type Pull struct {
	Converter, Load int // -1 where it is the other
	Port            network.Port
	Watts           float64
	Volts, Amps     float64 // at its port; where it folds, at the last point that there is
	Share           float64 // where it folds: the share of its power up to which there is a point
	Folds           bool    // no operating point: the wire does not let its power through
	Short           bool    // no operating point: what feeds it is limited, no battery is there, and more is asked
	Unsure          bool    // the solver gave up

	element, convert int // -1 where it is the other
	last             *solve.Point
}

// Cliff is the share of the voltage with nothing drawn below which a constant power stands too near to
// where its operating point ends, at one half.
const Cliff = 0.7

// list collects what draws a constant power.
func (l *Low) list() {
	w, n := l.wiring, l.c.Net
	for _, i := range w.view.Zone.Inputs {
		if k, ok := w.inputs[i]; ok {
			l.Pulls = append(l.Pulls, Pull{Converter: i, Load: -1, Port: n.Converters[i].In, Watts: w.net.Elements[k].Watts, element: k, convert: -1})
		} else if k, ok := w.converters[i]; ok {
			l.Pulls = append(l.Pulls, Pull{Converter: i, Load: -1, Port: n.Converters[i].In, element: -1, convert: k})
		}
	}
	for _, i := range w.view.Zone.Loads {
		if k, ok := w.loads[i]; ok && w.net.Elements[k].Kind == solve.Power {
			l.Pulls = append(l.Pulls, Pull{Converter: -1, Load: i, Port: n.Loads[i].Port, Watts: w.net.Elements[k].Watts, element: k, convert: -1})
		}
	}
	for _, e := range w.net.Elements {
		if e.Kind == solve.Battery || e.Kind == solve.Regulated {
			l.most = max(l.most, e.Volts)
		}
	}
}

// with is the network with some constant powers on, all times scale.
func (l *Low) with(on []bool, scale float64) *solve.Point {
	n := l.wiring.net
	n.Elements = slices.Clone(n.Elements)
	n.Converters = slices.Clone(n.Converters)
	for i, x := range l.Pulls {
		switch {
		case x.element >= 0 && on[i]:
			n.Elements[x.element].Watts *= scale
		case x.element >= 0:
			e := n.Elements[x.element]
			n.Elements[x.element] = solve.Element{Kind: solve.Steady, P: e.P, N: e.N}
		case on[i]:
			c := &n.Converters[x.convert]
			c.Efficiency, c.InAmps, c.Idle = c.Efficiency/scale, c.InAmps*scale, c.Idle*scale
		default:
			c := &n.Converters[x.convert]
			c.Amps, c.Idle, c.Back = 0, 0, false
		}
	}
	return l.c.pointOf(&n)
}

func (c *Circuit) pointOf(n *solve.Net) *solve.Point {
	p, err := c.Memory.Solve(n)
	if err != nil {
		return &solve.Point{}
	}
	return p
}

// beforeFold is how far along the way to the fold the last point is looked at.
const beforeFold = 1 - 1e-3

// part finds, island by island, what has no operating point: at the fold what folds stands near half
// of its voltage with nothing drawn, and the rest does not.
func (l *Low) part() {
	kept := make([]bool, len(l.Pulls))
	done := map[int]bool{}
	for i := range l.Pulls {
		if k := l.island(l.Pulls[i].Port); !done[k] {
			done[k] = true
			on := make([]bool, len(l.Pulls))
			for j := range on {
				on[j] = l.island(l.Pulls[j].Port) == k
			}
			l.settle(on)
			for j := range on {
				kept[j] = kept[j] || on[j]
			}
		}
	}
	l.rest = l.settle(kept) // islands that stand alone can still ask too much of a return that they share
}

// settle takes out of on, one after the other, what has no operating point, and solves what stays.
func (l *Low) settle(on []bool) *solve.Point {
	for {
		p := l.with(on, 1)
		if p.Found {
			l.read(p, func(i int) bool { return on[i] })
		}
		if p.Found || !slices.Contains(on, true) {
			return p
		}
		last := &solve.Point{}
		if p.Folds {
			last = l.with(on, p.Margin*beforeFold)
		}
		l.take(on, last, p.Margin)
	}
}

// take takes out of on what folds; all of it where nothing does, or where nothing is known.
func (l *Low) take(on []bool, last *solve.Point, margin float64) {
	found := false
	l.read(last, func(i int) bool { return on[i] && last.Found })
	for i := range l.Pulls {
		if x := &l.Pulls[i]; on[i] && last.Found && x.Volts < Cliff*l.Open(x.Port) {
			x.Folds, x.Share, on[i], found = true, margin, false, true
		}
	}
	for i := range l.Pulls {
		if x := &l.Pulls[i]; !found && on[i] {
			x.Short = last.Found || l.starving(l.with(make([]bool, len(on)), 1), l.island(x.Port))
			if x.Unsure, on[i] = !x.Short, false; x.Unsure {
				l.Lacks = merge(l.Lacks, unsolved)
			}
		}
	}
}

// Starved says whether all that feeds a port is limited and gives all it can: its bus browns out.
func (l *Low) Starved(p network.Port) bool {
	if x := l.Beside(p); x != nil && x.Short {
		return true
	}
	return l.rest != nil && l.wiring.known(p) && l.starving(l.rest, l.island(p))
}

func (l *Low) starving(p *solve.Point, island int) bool {
	if !p.Found {
		return false
	}
	w, starving := l.wiring, false
	for k, e := range w.net.Elements {
		switch {
		case l.bus(e.P) != island:
		case e.Kind == solve.Battery:
			return false
		case e.Kind == solve.Regulated:
			starving = starving || p.Element[k] >= e.Amps*(1-1e-6)
		}
	}
	for k, x := range w.net.Converters {
		starving = starving || l.bus(x.OutP) == island && x.Amps > 0 && p.Out[k] >= x.Amps*(1-1e-6)
	}
	return starving
}

// read notes where constant powers stand at a point; of several points the lowest.
func (l *Low) read(p *solve.Point, which func(int) bool) {
	if l.Found && l.rest == nil {
		l.rest = p
	}
	at := func(id network.NodeID) float64 { return p.Volts[l.wiring.view.Zone.Local(id)] }
	for i := range l.Pulls {
		x := &l.Pulls[i]
		if !which(i) {
			continue
		}
		if u := at(x.Port.Hot) - at(x.Port.Ret); x.last == nil || u < x.Volts {
			x.Volts, x.last = u, p
			if x.Amps = 0; x.element >= 0 {
				x.Amps = -p.Element[x.element]
			} else {
				x.Amps = p.In[x.convert]
			}
		}
	}
}

// Open is the voltage of a port with nothing drawn in the zone, in V; 0 where that is not known.
func (l *Low) Open(p network.Port) float64 {
	if l.bare == nil {
		n := l.wiring.net
		n.Elements = slices.Clone(n.Elements)
		for k := range n.Elements {
			switch e := &n.Elements[k]; e.Kind {
			case solve.Steady, solve.Power, solve.Resistor:
				*e = solve.Element{Kind: solve.Steady, P: e.P, N: e.N}
			}
		}
		n.Converters = slices.Clone(n.Converters)
		for k := range n.Converters {
			n.Converters[k].Idle = 0
		}
		l.bare = make([]float64, n.Nodes)
		if at := l.c.pointOf(&n); at.Found {
			l.bare = at.Volts
		}
	}
	z := l.wiring.view.Zone
	return l.bare[z.Local(p.Hot)] - l.bare[z.Local(p.Ret)]
}

// Steep says whether a constant power stands too near to the cliff, or over it.
func (l *Low) Steep(x *Pull) bool {
	return x.Folds || !x.Short && !x.Unsure && x.Volts < Cliff*l.most && x.Volts < Cliff*l.Open(x.Port)
}

// AmpsOf is what an edge carries of a constant power's current, and in all, in A.
func (l *Low) AmpsOf(x *Pull, edge int) (own, all float64) {
	k, ok := l.wiring.branch[edge]
	if !ok || x.last == nil {
		return 0, 0
	}
	all = math.Abs(x.last.Branch[k])
	return min(x.Amps, all), all
}

// Way is the way of least resistance from what feeds a port, both runs.
type Way struct {
	From  network.Port
	Live  explore.Path
	Edges []int
	Ohms  derive.Number
	Lacks []derive.Missing
}

// Way finds what feeds a port: the nearest battery, regulated source or converter's output.
func (l *Low) Way(p network.Port) (best Way, ok bool) {
	cost := func(e int) float64 {
		n, _ := l.c.Ohms(e, Operating)
		return n.Value + smallOhms
	}
	out, back := l.View.Reach(p.Hot, nil, cost), l.View.Reach(p.Ret, nil, cost)
	least := math.Inf(1)
	for _, f := range l.feeders() {
		a, there := out.Dist[f.Hot]
		b, home := back.Dist[f.Ret]
		if there && home && a+b < least {
			least, best.From = a+b, f
		}
	}
	if math.IsInf(least, 1) {
		return best, false
	}
	best.Live = out.To(best.From.Hot).Back()
	best.Edges = append(best.Live.Edges(), back.To(best.From.Ret).Edges()...)
	best.Ohms, best.Lacks = l.c.Loop(best.Edges, Operating)
	return best, true
}

// Terminals is the voltage of what feeds a port, at its own terminals; 0 where nothing known does.
func (l *Low) Terminals(p network.Port) float64 {
	way, ok := l.Way(p)
	if !ok {
		return 0
	}
	u, _ := l.AtMost(way.From)
	return u
}

// feeders lists the ports that can feed a zone's, arrays left out; of batteries in series each end counts
// with the other's.
func (l *Low) feeders() []network.Port {
	var out []network.Port
	n, v := l.c.Net, l.View
	for _, i := range v.Zone.Sources {
		if _, on := l.wiring.sources[i]; !on || n.Sources[i].Kind.Value == "solar" {
			continue
		}
		out = append(out, n.Sources[i].Port)
		for _, top := range v.Series(i).Tops() {
			if top != i {
				out = append(out, network.Port{Hot: n.Sources[top].Hot, Ret: n.Sources[i].Ret})
			}
		}
	}
	for _, i := range v.Zone.Outputs {
		_, alone := l.wiring.outputs[i]
		_, both := l.wiring.converters[i]
		_, diode := l.wiring.diodes[i]
		if alone || both || diode {
			out = append(out, n.Converters[i].Out)
		}
	}
	return out
}
