package circuit

import (
	"math"
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
	"ferrule/schema"
)

// Drop is the voltage lost between a supply and a place, both runs, in one view.
type Drop struct {
	Volts derive.Number // V
	Ratio derive.Number // of the nominal voltage
	Path  explore.Path  // the live run, from the supply
	Home  int           // the edge that loses most where the way home loses more than the way there; else -1
	From  network.Port  // the supply
	View  *explore.View
	State []network.Position // that make it: on both runs, of the supply, and of what draws a good part of the current
	Lacks []derive.Missing

	at *Point
}

// DropTo is the voltage lost between a port and the battery, string of batteries or converter output that
// feeds it best, in one view of a LowZone, with everything on that may run together: the larger of what is
// lost with batteries empty, where constant powers draw most, and at the end of charge, where resistances
// do. Behind a diode it counts from the diode. ok is false where nothing feeds the port, or what does is
// starved: a limited supply alone gives what it can; and where no more is lost, nor anything missing, than
// at some volts that are known already.
func (c *Circuit) DropTo(v *explore.View, p network.Port, known float64) (best Drop, ok bool) {
	feeders := c.feeding(v, p)
	if len(feeders) == 0 {
		return best, false
	}
	s := c.solvedView(v)
	var folds []derive.Missing
	for _, low := range s.lows {
		for i := range low.Pulls {
			x := &low.Pulls[i]
			if !x.Folds || low.island(x.Port) != low.island(p) {
				continue
			}
			folds = merge(folds, derive.Missing{Subject: c.Net.Nodes[x.Port.Hot].Addr, Attribute: NoPoint})
			if x.Port == p {
				return Drop{From: feeders[0].port, View: v, Lacks: folds[len(folds)-1:]}, true
			}
		}
	}
	most := math.Inf(-1)
	for _, pt := range s.points {
		if from, lost, fed := pt.lost(feeders, p); fed && lost > most {
			most, best, ok = lost, Drop{From: from, View: v, at: pt}, true
		}
	}
	switch {
	case ok && len(s.lacks)+len(folds) == 0 && most <= known*(1+1e-9):
		return best, false
	case ok:
		c.explainDrop(&best, p, s.lacks)
		best.Lacks = merge(best.Lacks, folds...) // solved without what folds there, so the true loss is more
	case len(s.lacks) > 0: // what feeds it could not be solved
		return Drop{From: feeders[0].port, View: v, Lacks: s.lacks}, true
	}
	return best, ok
}

// solvedView is a view with everything on that may run together: at its low corner, and at the end of
// charge.
type solvedView struct {
	lows   []*Low
	points []*Point // those that there are
	lacks  []derive.Missing
}

func (c *Circuit) solvedView(v *explore.View) *solvedView {
	if s, ok := c.solved[v]; ok {
		return s
	}
	s := &solvedView{}
	take := func(p *Point) {
		s.lacks = merge(s.lacks, p.Lacks...)
		if p.Found {
			s.points = append(s.points, p)
		}
	}
	for _, o := range c.occasions(v.Zone) {
		low := c.Low(v, LowCase{Runs: o.runs})
		s.lows = append(s.lows, low)
		take(low.Rest())
		take(c.Point(v, Setting{Charge: EndOfCharge, High: true, Runs: o.runs}))
	}
	c.solved[v] = s
	return s
}

// lost is the least difference between the volts of a feeder that holds them and a port's; of all feeders
// where none does.
func (p *Point) lost(feeders []feeder, port network.Port) (from network.Port, lost float64, ok bool) {
	u, live := p.Across(port)
	if !live {
		return from, 0, false
	}
	lost = math.Inf(1)
	holding := false
	for _, f := range feeders {
		uf, live := p.Across(f.port)
		holds := live && p.holds(f)
		if !live || holding && !holds || holds == holding && uf-u >= lost {
			continue
		}
		holding, from, lost, ok = holds, f.port, uf-u, true
	}
	return from, max(lost, 0), ok
}

// holds says whether a feeder gives current at volts of its own: one that is off, or at its limit, stands
// at the volts of what feeds the port.
func (p *Point) holds(f feeder) bool {
	const some = 1e-6 // A, and as a share
	w, amps := p.wiring, p.OutAmps(f.output)
	k, element := w.outputs[f.output]
	if f.source >= 0 {
		amps = p.SourceAmps(f.source)
		k, element = w.sources[f.source]
	}
	if amps <= some {
		return false
	}
	if k, both := w.converters[f.output]; both && f.source < 0 {
		x := &w.net.Converters[k]
		u, _ := p.Across(f.port)
		return (x.Volts-u)/x.Ohms <= amps*(1+some)
	}
	return !element || w.net.Elements[k].Kind != solve.Regulated || amps < w.net.Elements[k].Amps*(1-some)
}

// explainDrop gives a drop its way and its derivation. lacks is what is missing at any corner.
func (c *Circuit) explainDrop(d *Drop, to network.Port, lacks []derive.Missing) {
	out, back := d.at.ways(to)
	hot, ret := out.To(d.From.Hot), back.To(d.From.Ret)
	d.Path, d.Home = hot.Back(), -1
	if worst, lost := d.at.most(ret); worst >= 0 {
		if _, there := d.at.most(hot); lost > there {
			d.Home = worst
		}
	}
	d.State = c.dropState(d, hot, ret)
	sum := 0.0
	parts := append(d.at.losses(hot, -1), d.at.losses(ret, 1)...)
	on := map[string]bool{}
	for _, h := range append(append(explore.Path{}, hot...), ret...) {
		on[c.Net.Edges[h.Edge].Addr] = true
	}
	for _, n := range parts {
		sum += n.Value
	}
	for _, m := range lacks {
		if _, wire := c.Net.Plan.Block(m.Subject).(*schema.Conductor); !wire || on[m.Subject] {
			d.Lacks = merge(d.Lacks, m)
		}
	}
	d.Volts = derive.Compute("voltage drop, both runs", "dU", max(sum, 0), "V", "sum of R x I on the way there and back, currents solved for this state with everything on", parts...)
	vn, ok := c.Nominal(to.Hot)
	if !ok {
		d.Lacks = merge(d.Lacks, derive.Missing{Subject: c.Net.Nodes[to.Hot].Addr, Attribute: "rated_voltage"})
		return
	}
	d.Ratio = derive.Compute("drop as a share of nominal", "dU/Vn", d.Volts.Value/vn.Value, "", "dU / Vn", d.Volts, vn)
}

// share is the part of the current on the way from which another contact's current tells.
const share = 0.05

// dropState is the positions on both ways, of the supply, and of contacts that carry a good part of the current: those
// of switches that are taken as closed with everything on are not told.
func (c *Circuit) dropState(d *Drop, ways ...explore.Path) []network.Position {
	var edges, sources []int
	most := 0.0
	for _, w := range ways {
		for _, h := range w {
			edges, most = append(edges, h.Edge), max(most, math.Abs(d.at.Amps(h.Edge)))
		}
	}
	for _, list := range [][]int{d.View.Zone.Edges, d.View.Zone.Returns} {
		for _, e := range list {
			told := slices.ContainsFunc(c.Net.Edges[e].When, func(l network.Literal) bool { return !c.Space.Leaf(l.Var) })
			if told && d.View.Conducts(e) && math.Abs(d.at.Amps(e)) > share*most {
				edges = append(edges, e)
			}
		}
	}
	for i := range c.Net.Sources {
		if c.Net.Sources[i].Hot == d.From.Hot && d.View.HasSource(i) {
			sources = append(sources, i)
		}
	}
	return d.View.Witness(edges, sources...)
}

// most is the edge of a way that loses most, -1 where none does, and what the whole way loses, in V.
func (p *Point) most(way explore.Path) (worst int, lost float64) {
	worst, top := -1, 0.0
	for _, h := range way {
		r, _ := p.c.Ohms(h.Edge, Operating)
		u := math.Abs(p.Amps(h.Edge)) * r.Value
		if lost += u; u > top {
			worst, top = h.Edge, u
		}
	}
	return worst, lost
}

// feeder is what feeds a port: a source, of batteries in series the top one, or a converter's output.
type feeder struct {
	port           network.Port
	source, output int // index, -1 where it is the other
}

// feeding lists the batteries and strings of them, other stiff or regulated sources, and converter outputs
// that are joined to a port on both poles.
func (c *Circuit) feeding(v *explore.View, p network.Port) []feeder {
	var out []feeder
	for _, i := range v.Zone.Sources {
		s := &c.Net.Sources[i]
		if !v.HasSource(i) || s.Kind.Value == "solar" || !v.Joined(s.Ret, p.Ret) {
			continue
		}
		for _, top := range v.Series(i).Tops() {
			if t := &c.Net.Sources[top]; t.Kind.Value != "solar" && v.Joined(t.Hot, p.Hot) {
				out = append(out, feeder{network.Port{Hot: t.Hot, Ret: s.Ret, Ground: network.None}, top, -1})
			}
		}
	}
	for _, i := range v.Zone.Outputs {
		if x := &c.Net.Converters[i]; v.HasConverter(i) && v.Across(x.Out, p) {
			out = append(out, feeder{x.Out, -1, i})
		}
	}
	return out
}
