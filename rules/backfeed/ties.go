package backfeed

import (
	"cmp"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// tie is one contact of a voltage-sensing isolator.
type tie struct {
	p      *lint.Pass
	x      *schema.Switch
	edge   int
	ends   [2]network.NodeID
	sensed []network.NodeID
	bounds []bound

	worst    *crossing // of those that are too much, or may be
	most     *crossing // of all
	lacks    []lint.Missing
	complete bool
	left     *int // operating points that may still be solved
}

func newTie(p *lint.Pass, x *schema.Switch, contact int, left *int) *tie {
	e := &p.Net.Edges[contact]
	t := &tie{p: p, x: x, edge: contact, ends: [2]network.NodeID{e.A, e.B}, complete: true, left: left}
	t.bounds = bounds(p, chain(p.Net, contact))
	for _, end := range t.ends {
		if len(x.Senses.List) == 0 || slices.ContainsFunc(x.Senses.List, func(s schema.Text) bool { return s.Value == p.Net.Nodes[end].Terminal }) {
			t.sensed = append(t.sensed, end)
		}
	}
	return t
}

// drawer is a load or a converter's input on the side that takes.
type drawer struct {
	block schema.Block
	hot   network.NodeID
	amps  derive.Number
}

// side is one end of a tie, with all that is joined to it without the tie.
type side struct {
	end  network.NodeID
	near map[network.NodeID]float64
}

// crossing is a solved state in which the tie is closed and what draws is on one side alone: what draws on
// the other may be off, and would lessen it.
type crossing struct {
	side
	part    float64 // of its figure, that each thing on that side draws
	point   *circuit.Point
	closed  bool
	live    *explore.Energy
	drawers []drawer // largest first
	drawn   float64  // by all of them
	amps    float64  // of that, what comes through the tie
	over    *bound
	lacks   []lint.Missing
	alone   bool // batteries by themselves hold the isolator closed
}

// search solves the states in which the tie can be closed.
func (t *tie) search() {
	z := t.p.Net.Upstream(t.p.Net.ZoneOf(t.ends[0]))
	list := t.p.Circuit.Occasions(z)
	for _, o := range list {
		t.complete = t.complete && o.Complete
	}
	if !t.lifted(list) {
		return
	}
	for _, o := range list {
		for _, v := range o.Views {
			if v.Transit == nil && v.Conducts(t.edge) && *t.left > 0 {
				t.look(v, o.Runs)
			}
		}
	}
	t.complete = t.complete && *t.left > 0
}

// mostSolved bounds the operating points that the ties of a plan are solved at: beyond it the search has
// met its bound.
const mostSolved = 1 << 14

// add puts what is missing on a list once.
func add(list, more []lint.Missing) []lint.Missing {
	for _, m := range more {
		if !slices.Contains(list, m) {
			list = append(list, m)
		}
	}
	return list
}

// lifted says whether something can bring a sensed side to the volts at which the isolator closes.
func (t *tie) lifted(list []circuit.Occasion) bool {
	if !t.x.CutIn.Set {
		return true
	}
	var open []lint.Missing
	for _, o := range list {
		for _, v := range o.Views {
			if v.Transit != nil || v.Conducts(t.edge) {
				continue
			}
			live := v.Live(nil, nil)
			for _, end := range t.sensed {
				n, _, lacks := t.highest(v, live, end, true)
				if n.Value >= t.x.CutIn.Value*(1-1e-9) {
					return true
				}
				open = add(open, lacks)
			}
		}
	}
	t.lacks = open
	return false
}

// held is the volts that a supply holds by itself, a battery at rest; no unit where they are not known,
// or where it holds none.
func (t *tie) held(v *explore.View, s explore.Supply) (n derive.Number, lacks []lint.Missing) {
	if s.Source >= 0 {
		if t.p.Net.Sources[s.Source].Kind.Value == "solar" {
			return n, nil
		}
		x := sourceSupply(t.p, v, s.Source)
		return x.volts, x.unknown(t.p)
	}
	c := &t.p.Net.Converters[s.Converter]
	if c.Kind.Value == "diode" {
		n, _, lacks = t.p.Circuit.Highest(c.In.Hot)
		return n, lacks
	}
	return t.p.Circuit.HighOutput(c.Converter)
}

// highest is the highest volts that supplies hold at a node, batteries among them if asked.
func (t *tie) highest(v *explore.View, live *explore.Energy, id network.NodeID, batteries bool) (best derive.Number, by explore.Supply, lacks []lint.Missing) {
	for _, s := range live.At(id) {
		if !batteries && t.battery(s) {
			continue
		}
		n, m := t.held(v, s)
		if lacks = append(lacks, m...); n.Value > best.Value {
			best, by = n, s
		}
	}
	return best, by, lacks
}

func (t *tie) battery(s explore.Supply) bool {
	return s.Source >= 0 && t.p.Net.Sources[s.Source].Kind.Value == "battery"
}

// look solves a view at every charge and resistance.
func (t *tie) look(v *explore.View, runs func(int) bool) {
	live := v.Live(nil, nil)
	held, _, _ := t.highest(v, live, t.ends[0], false)
	charges := []circuit.Charge{circuit.Rested, circuit.Empty}
	if held.Kind != 0 {
		charges = append(charges, circuit.EndOfCharge)
	}
	suns := []bool{true}
	if slices.ContainsFunc(v.Zone.Sources, func(i int) bool { return t.p.Net.Sources[i].Kind.Value == "solar" && v.HasSource(i) }) {
		suns = append(suns, false)
	}
	for _, end := range t.ends {
		to := side{end, t.around(v, end).Dist}
		if !t.takes(v, to) {
			continue
		}
		for _, charge := range charges {
			for _, high := range []bool{false, true} {
				for _, dark := range suns {
					if c := t.solve(v, circuit.Setting{Charge: charge, High: high, Dark: dark, Runs: t.steady(runs)}, to); c != nil {
						c.live = live
						t.take(c)
					}
				}
			}
		}
	}
}

// takes says whether anything on a side draws.
func (t *tie) takes(v *explore.View, to side) bool {
	on := func(hot network.NodeID) bool { _, ok := to.near[hot]; return ok }
	return slices.ContainsFunc(v.Zone.Loads, func(i int) bool { return on(t.p.Net.Loads[i].Hot) }) ||
		slices.ContainsFunc(v.Zone.Inputs, func(i int) bool { return on(t.p.Net.Converters[i].In.Hot) })
}

// steady leaves out engines' starters, which turn for seconds.
func (t *tie) steady(runs func(int) bool) func(int) bool {
	starters := t.p.Circuit.Starters()
	return func(i int) bool { return runs(i) && !slices.Contains(starters, i) }
}

// solve is what the tie carries to one side in a state; nil where it does not stay closed in it. Where
// all that can draw pulls the volts too low, it stays closed while as much is drawn as leaves them.
func (t *tie) solve(v *explore.View, s circuit.Setting, to side) *crossing {
	c := t.at(v, s, to, 1)
	if c.closed {
		return c
	}
	if c.point.Found && c.over == nil && len(c.lacks) == 0 { // less that draws does not bring more
		return nil
	}
	best, solved := t.part(v, s, to)
	switch {
	case best != nil:
		t.weigh(best)
	case !solved && !c.point.Found:
		c.lacks = []lint.Missing{{Subject: t.x.Addr, Attribute: circuit.NoPoint}}
		return c
	}
	return best
}

// halvings is how closely the part is told that leaves an isolator closed.
const halvings = 12

// part finds the most that can be drawn, as a part of all, with the isolator closed; nil where it is open
// with the least too, for less that draws does not lower the volts. solved says whether any such part has an
// operating point.
func (t *tie) part(v *explore.View, s circuit.Setting, to side) (best *crossing, solved bool) {
	least := 1.0 / (1 << halvings)
	low, high := 0.0, 1.0
	for i := range halvings {
		x := t.probe(v, s, to, (low+high)/2)
		if solved = solved || x.point.Found; x.closed {
			best, low = x, x.part
			continue
		}
		if high = x.part; i == 0 {
			x = t.probe(v, s, to, least)
			if solved = solved || x.point.Found; !x.closed {
				return nil, solved
			}
		}
	}
	return best, solved
}

// at is what the tie carries to one side in a state, where a part of what can draws there.
func (t *tie) at(v *explore.View, s circuit.Setting, to side, part float64) *crossing {
	c := t.probe(v, s, to, part)
	if c.point.Found {
		t.weigh(c)
	}
	return c
}

// probe says whether the isolator stays closed in a state, where a part of what can draws.
func (t *tie) probe(v *explore.View, s circuit.Setting, to side, part float64) *crossing {
	*t.left--
	s.Share = func(hot network.NodeID) float64 {
		if _, ok := to.near[hot]; ok {
			return part
		}
		return 0
	}
	c := &crossing{side: to, part: part, point: t.p.Circuit.Point(v, s)}
	c.closed = c.point.Found && (!t.x.CutOut.Set || t.senses(c.point) >= t.x.CutOut.Value*(1-1e-9))
	return c
}

// weigh holds what the tie carries in a solved state against what it can carry.
func (t *tie) weigh(c *crossing) {
	amps := c.point.Amps(t.edge)
	if c.end == t.ends[0] {
		amps = -amps
	}
	t.draws(c)
	c.amps = min(max(amps, 0), c.drawn)
	c.over, c.lacks = t.weakest(c.amps)
	c.lacks = append(c.lacks, t.unsure(c)...)
}

// senses is the highest volts at a sensed terminal, against the negative of the same terminal if that is
// wired.
func (t *tie) senses(p *circuit.Point) (most float64) {
	for _, end := range t.sensed {
		u, ok := p.Across(network.Port{Hot: end, Ret: t.p.Net.Mate(end)})
		if !ok {
			u, _ = p.Volts(end)
		}
		most = max(most, u)
	}
	return most
}

// draws lists what draws on the side that the tie feeds.
func (t *tie) draws(c *crossing) {
	n, v := t.p.Net, c.point.View
	put := func(b schema.Block, hot network.NodeID, n derive.Number) {
		if _, ok := c.near[hot]; ok && n.Value > 1e-6 {
			c.drawers, c.drawn = append(c.drawers, drawer{b, hot, n}), c.drawn+n.Value
		}
	}
	for _, i := range v.Zone.Loads {
		put(n.Loads[i].Load, n.Loads[i].Hot, c.point.LoadNumber(i))
	}
	for _, i := range v.Zone.Inputs {
		put(n.Converters[i].Converter, n.Converters[i].In.Hot, c.point.InNumber(i))
	}
	slices.SortStableFunc(c.drawers, func(a, b drawer) int { return cmp.Compare(b.amps.Value, a.amps.Value) })
}

// unsure is what leaves open that the tie carries just that: figures of batteries, of the wires between
// and, unless it is too much already, of what draws; and whether the isolator is closed, if it is too much.
func (t *tie) unsure(c *crossing) (out []lint.Missing) {
	if c.over != nil && !t.x.CutIn.Set {
		out = append(out, lint.Missing{Subject: t.x.Addr, Attribute: "cut_in"})
	}
	if c.over != nil && !t.x.CutOut.Set {
		out = append(out, lint.Missing{Subject: t.x.Addr, Attribute: "cut_out"})
	}
	if len(c.point.Lacks) == 0 {
		return out
	}
	n, v, bears := t.p.Net, c.point.View, map[string]bool{"plan": true}
	for _, end := range t.ends {
		r := t.around(v, end)
		for _, i := range v.Zone.Sources {
			if _, ok := r.Dist[n.Sources[i].Hot]; ok {
				bears[n.Sources[i].Addr] = true
				for _, e := range r.To(n.Sources[i].Hot).Edges() {
					bears[n.Edges[e].Addr] = true
				}
			}
		}
	}
	draws := func(addr string, hot network.NodeID) {
		_, here := c.near[hot]
		bears[addr] = bears[addr] || here && c.over == nil
	}
	for _, i := range v.Zone.Loads {
		draws(n.Loads[i].Addr, n.Loads[i].Hot)
	}
	for _, i := range v.Zone.Inputs {
		draws(n.Converters[i].Addr, n.Converters[i].In.Hot)
	}
	for _, b := range t.bounds {
		bears[b.block.Header().Addr] = true
	}
	return append(out, slices.DeleteFunc(slices.Clone(c.point.Lacks), func(m lint.Missing) bool { return !bears[m.Subject] })...)
}

// around walks the live side from one end of the tie, without the tie.
func (t *tie) around(v *explore.View, end network.NodeID) *explore.Reach {
	n := t.p.Net
	return v.Reach(end, func(e int, at network.NodeID) bool { return e != t.edge && !n.Nodes[n.Edges[e].Other(at)].Return }, nil)
}
