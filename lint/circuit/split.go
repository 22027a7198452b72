package circuit

import (
	"slices"

	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// In a ring of live edges current divides by resistance. Seen from the batteries the network is linear
// in what is drawn and what limited supplies put in, so the most that an edge of a ring can carry is the
// sum of the shares that point one way, each part at its most. Batteries stand at one charge. A share
// only rises or only falls with the resistance of one battery, so the most is found where each is at its
// low or its high one: every combination is asked.

// splitter works out the shares of one view.
type splitter struct {
	c      *Circuit
	wires  *wiring // edges alone
	parts  []part
	spread [][]float64 // ohm, by corner and battery
	alone  bool        // one supply without a battery holds the volts, and takes up all currents
	system *solve.System
}

// part is something that draws from the network, or puts a limited current into it.
type part struct {
	port network.Port
	sums sums
	sign float64 // 1 where it puts current in, -1 where it draws
}

// split is ready to share a view's currents out; nil where what holds its volts is not known well
// enough, so that the sum over the whole ring stays.
func (c *Circuit) split(v *explore.View, runs func(int) bool) *splitter {
	c.Space.Tick()
	s := &splitter{c: c, wires: c.edgesOnly(v)}
	if len(s.wires.lacks) > 0 || !s.batteries(v) || !s.attach(v, runs) {
		return nil
	}
	s.wires.references()
	var err error
	if s.system, err = solve.New(&s.wires.net); err != nil {
		return nil
	}
	return s
}

// edgesOnly is a view's edges, none without resistance.
func (c *Circuit) edgesOnly(v *explore.View) *wiring {
	w := c.bareWiring(v, Setting{})
	w.net.Branches = slices.Clone(w.net.Branches)
	for k := range w.net.Branches {
		w.net.Branches[k].Ohms = max(w.net.Branches[k].Ohms, smallOhms)
	}
	return w
}

// batteries puts in what holds the volts: the batteries, or the one supply that is there.
func (s *splitter) batteries(v *explore.View) bool {
	var low, high []float64
	for _, i := range v.Zone.Sources {
		x := &s.c.Net.Sources[i]
		if x.Kind.Value != "battery" || !v.HasSource(i) {
			continue
		}
		l, h, _, lacks := s.c.BatteryOhms(x.Source)
		if lacks != nil || !s.wires.known(x.Port) {
			return false
		}
		s.wires.add(x.Port, solve.Element{Kind: solve.Battery, Ohms: l.Value})
		s.wires.supply(x.Port)
		low, high = append(low, l.Value), append(high, h.Value)
	}
	if len(low) == 0 {
		return s.lone(v)
	}
	return s.corners(low, high)
}

// mostSpread bounds the batteries whose resistances are told apart; with more the sum stays.
const mostSpread = 6

// corners lists every combination of low and high resistances; of one battery alone either will do.
func (s *splitter) corners(low, high []float64) bool {
	s.spread = [][]float64{low}
	var free []int
	for k := range low {
		if len(low) > 1 && high[k] > low[k] {
			free = append(free, k)
		}
	}
	if len(free) > mostSpread {
		return false
	}
	for _, k := range free {
		for _, have := range s.spread {
			corner := slices.Clone(have)
			corner[k] = high[k]
			s.spread = append(s.spread, corner)
		}
	}
	return true
}

// lone puts in the only supply of a view without a battery.
func (s *splitter) lone(v *explore.View) bool {
	var ports []network.Port
	for _, i := range v.Zone.Sources {
		if v.HasSource(i) {
			ports = append(ports, s.c.Net.Sources[i].Port)
		}
	}
	for _, i := range v.Zone.Outputs {
		if v.HasConverter(i) {
			ports = append(ports, s.c.Net.Converters[i].Out)
		}
	}
	if len(ports) != 1 || !s.wires.known(ports[0]) {
		return false
	}
	s.wires.add(ports[0], solve.Element{Kind: solve.Battery, Ohms: smallOhms})
	s.wires.supply(ports[0])
	s.spread, s.alone = [][]float64{{smallOhms}}, true
	return true
}

// attach lists what draws and what puts in; false where something has no limit, or no way home. What
// hangs on a contact that is open is in no ring.
func (s *splitter) attach(v *explore.View, runs func(int) bool) bool {
	c, ok := s.c, true
	add := func(p network.Port, x sums, sign float64) {
		if !s.fed(v, p.Hot) {
			return
		}
		ok = ok && s.wires.known(p) && s.wires.together(p) && x.endless == 0
		s.parts = append(s.parts, part{p, x, sign})
	}
	for _, i := range v.Zone.Loads {
		if v.HasLoad(i) && runs(i) {
			add(c.Net.Loads[i].Port, drawSums(c.load(i)), -1)
		}
	}
	for _, i := range v.Zone.Inputs {
		if v.HasConverter(i) {
			add(c.Net.Converters[i].In, s.takes(v, i), -1)
		}
	}
	for _, i := range v.Zone.Sources {
		if x := &c.Net.Sources[i]; v.HasSource(i) && x.Kind.Value != "battery" && !s.alone {
			add(x.Port, c.sourceSums(i), 1)
		}
	}
	for _, i := range v.Zone.Outputs {
		if v.HasConverter(i) && !s.alone {
			add(c.Net.Converters[i].Out, c.outputSums(i), 1)
		}
	}
	return ok
}

// fed says whether some supply of a view is joined to a live node.
func (s *splitter) fed(v *explore.View, id network.NodeID) bool {
	n := s.c.Net
	return slices.ContainsFunc(v.Zone.Sources, func(i int) bool {
		return v.HasSource(i) && (v.Joined(n.Sources[i].Hot, id) || v.Joined(n.Sources[i].Ret, id))
	}) ||
		slices.ContainsFunc(v.Zone.Outputs, func(i int) bool {
			return v.HasConverter(i) && (v.Joined(n.Converters[i].Out.Hot, id) || v.Joined(n.Converters[i].Out.Ret, id))
		})
}

// takes is what an input draws. What a diode lets through to batteries on charge is drawn too: they stand
// outside the view.
func (s *splitter) takes(v *explore.View, input int) sums {
	x := s.c.inputSums(v, input)
	var from sums
	for _, i := range v.Zone.Sources {
		if v.HasSource(i) {
			from = from.plus(s.c.sourceSums(i))
		}
	}
	for _, i := range v.Zone.Outputs {
		if v.HasConverter(i) {
			from = from.plus(s.c.outputSums(i))
		}
	}
	charge := charging(from, x)
	x.draws, x.lasting = x.draws+charge, x.lasting+charge
	return x
}

// leastShare is the share that is told from the rounding of none.
const leastShare = 1e-9

// corner sets the batteries' resistances.
func (s *splitter) corner(ohms []float64) bool {
	for k, r := range ohms {
		s.wires.net.Elements[k].Ohms = r
	}
	return s.system.Linear()
}

// share is what a part adds to the current in a branch for each ampere.
func (s *splitter) share(p part, influence []float64) float64 {
	z := s.wires.view.Zone
	return p.sign * (influence[z.Local(p.port.Hot)] - influence[z.Local(p.port.Ret)])
}

// bounds is the most that an edge can carry, over the corners.
func (s *splitter) bounds(edges []int, each func(edge int, a amount)) {
	for _, ohms := range s.spread {
		if !s.corner(ohms) {
			continue
		}
		for _, e := range edges {
			each(e, s.amount(s.system.Influence(s.wires.branch[e])))
		}
	}
}

func (s *splitter) amount(influence []float64) amount {
	var way [2]amount
	for _, p := range s.parts {
		f, k := s.share(p, influence), 0
		if f < 0 {
			f, k = -f, 1
		}
		if f < leastShare {
			continue
		}
		a, x := &way[k], p.sums
		a.steady, a.lasting = a.steady+f*(x.draws+x.gives), a.lasting+f*(x.lasting+x.gives)
		a.peak = max(a.peak, f*x.surge)
	}
	out := amount{used: true}
	for _, a := range way {
		out.steady, out.lasting = max(out.steady, a.steady), max(out.lasting, a.lasting)
		out.peak = max(out.peak, a.steady+a.peak)
	}
	return out
}

// refine lowers the bounds of a cut's rings to what resistance lets them carry, and lists their edges.
func (c *Circuit) refine(k *cut, v *explore.View, runs func(int) bool) (rings []int) {
	for e, a := range k.bounds {
		if _, bridge := k.isBridge(e); !bridge && a.used && a.steady > 0 {
			rings = append(rings, e)
		}
	}
	if len(rings) == 0 || c.opens(rings) {
		return nil
	}
	slices.Sort(rings)
	s := c.split(v, runs)
	if s == nil {
		return nil
	}
	most := map[int]amount{}
	s.bounds(rings, func(e int, a amount) {
		m := most[e]
		most[e] = amount{max(m.steady, a.steady), max(m.lasting, a.lasting), max(m.peak, a.peak), true, true}
	})
	for e, a := range most {
		k.bounds[e] = k.bounds[e].least(a)
	}
	return rings
}

// opens says whether a ring runs through a switch that was taken as closed: with it open, what it
// carried goes another way.
func (c *Circuit) opens(rings []int) bool {
	for _, e := range rings {
		for _, l := range c.Net.Edges[e].When {
			if c.Space.Leaf(l.Var) {
				return true
			}
		}
	}
	return false
}
