package circuit

import (
	"slices"
	"sort"
	"strings"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// LowCase says what runs while a state is at its lowest.
type LowCase struct {
	Runs     func(load int) bool // nil means all
	Starting int                 // the load that is starting, counted from 1; 0 means none
	Full     bool                // batteries are rested full; else empty
	Cranking bool                // engines are cranked; else they are not
	Trigger  float64             // alternators stand at this many volts at least, as far as they go
}

// MostLows bounds the states of one zone that a question about low voltages is asked in: beyond it the
// search has met its bound.
const MostLows = 4096

// Low is a state at its lowest voltages: batteries empty at their high resistance, alternators
// regulated down, no sun, and no converter on that could hold up a bus where a battery is.
type Low struct {
	*Point
	Case  LowCase
	Pulls []Pull

	buses union     // nil until asked for
	most  float64   // V, the highest that a source of the zone stands at
	bare  []float64 // V by node, nothing drawn; nil until asked for
	rest  *solve.Point
}

// Top solves a view at its highest voltages with nothing drawn: batteries at the end of charge, arrays open
// in the cold.
func (c *Circuit) Top(v *explore.View) *Point {
	s := Setting{Charge: EndOfCharge, High: true, Runs: func(int) bool { return false }}
	w := c.wire(v, s)
	for _, k := range w.inputs {
		w.silence(k)
	}
	for k := range w.net.Converters {
		w.net.Converters[k].Idle = 0
	}
	p := &Point{Setting: s, View: v, Lacks: w.lacks, c: c, wiring: w}
	p.solve()
	return p
}

// LowZone is where the low voltages of a zone are asked: with what its batteries stand on in series,
// and with what feeds it where that comes through diodes.
func (c *Circuit) LowZone(z *network.Zone) *network.Zone {
	if z == nil {
		return nil
	}
	z = c.Net.Stack(z)
	for _, i := range z.Outputs {
		if c.Net.Converters[i].Kind.Value == "diode" {
			return c.Net.Upstream(z)
		}
	}
	return z
}

// Low solves a view of a LowZone. Where there is no operating point, Pulls tells what has none, and
// Across and Amps answer for the rest of the zone, without it.
func (c *Circuit) Low(v *explore.View, k LowCase) *Low {
	starters := c.Starters()
	s := Setting{Charge: Empty, High: true, Starting: k.Starting, Dark: true}
	s.Runs = func(i int) bool {
		return (k.Runs == nil || k.Runs(i)) && (k.Cranking || !slices.Contains(starters, i))
	}
	if k.Full {
		s.Charge = Rested
	}
	w := c.wire(v, s)
	w.lull()
	w.raise(k.Trigger)
	l := &Low{Point: &Point{Setting: s, View: v, Lacks: w.lacks, c: c, wiring: w}, Case: k}
	l.idle()
	l.list()
	if !l.solve() {
		l.part()
	}
	l.read(l.solution, func(int) bool { return l.Found })
	return l
}

// idle takes away the inputs of converters that the volts there do not start.
func (l *Low) idle() {
	for _, i := range sortedKeys(l.wiring.inputs) {
		if x := &l.c.Net.Converters[i]; x.Trigger.Set && !x.Trigger.Ignition && l.Open(x.In) < (1-starts)*x.Trigger.Volts {
			l.wiring.silence(l.wiring.inputs[i])
			delete(l.wiring.inputs, i)
		}
	}
}

// starts is how near to its trigger, as a share, a converter counts as started.
const starts = 0.01

// Started is Low for a converter that a voltage starts, in the state in which it has just that; ok is false
// where the view has no such state. For any other converter it is Low itself.
func (c *Circuit) Started(v *explore.View, k LowCase, converter int) (low *Low, ok bool) {
	x := &c.Net.Converters[converter]
	if !x.Trigger.Set || x.Trigger.Ignition {
		return c.Low(v, k), true
	}
	k.Trigger = x.Trigger.Volts
	for range 4 {
		low = c.Low(v, k)
		if _, ok := low.wiring.inputs[converter]; ok {
			return low, true
		}
		if z := v.Zone; z.Local(x.In.Hot) < 0 || z.Local(x.In.Ret) < 0 {
			break
		}
		k.Trigger += max(0, x.Trigger.Volts-low.Open(x.In))
	}
	return low, false
}

// lull turns off the converters that give where a battery is. The inputs of those with both sides in
// the zone then draw as if they stood alone: what they give lowers nothing, what they take does.
func (w *wiring) lull() {
	for _, i := range sortedKeys(w.outputs) {
		if w.held(w.c.Net.Converters[i].Out) {
			w.silence(w.outputs[i])
			delete(w.outputs, i)
		}
	}
	for _, i := range sortedKeys(w.converters) {
		if x := &w.c.Net.Converters[i]; w.held(x.Out) {
			w.net.Converters[w.converters[i]].Amps, w.net.Converters[w.converters[i]].Idle = 0, 0
			w.net.Converters[w.converters[i]].Back = false
			delete(w.converters, i)
			w.inputAlone(i)
		}
	}
}

func sortedKeys(m map[int]int) []int {
	out := make([]int, 0, len(m))
	for i := range m {
		out = append(out, i)
	}
	sort.Ints(out)
	return out
}

// silence makes an element draw and give nothing.
func (w *wiring) silence(k int) {
	e := w.net.Elements[k]
	w.net.Elements[k] = solve.Element{Kind: solve.Steady, P: e.P, N: e.N}
}

// held says whether a battery, or a string of them, lies across a port.
func (w *wiring) held(p network.Port) bool {
	for i, k := range w.sources {
		if w.net.Elements[k].Kind == solve.Battery && w.c.Net.Sources[i].Kind.Value == "battery" && w.view.Series(i).Across(p) {
			return true
		}
	}
	return false
}

// raise lifts alternators to a voltage, as far as their regulators go.
func (w *wiring) raise(volts float64) {
	for i, k := range w.sources {
		s := w.c.Net.Sources[i].Source
		e := &w.net.Elements[k]
		if s.Kind.Value != "alternator" || volts <= e.Volts {
			continue
		}
		if e.Volts = volts; s.RegulatedVoltage.Set {
			e.Volts = min(volts, max(s.RegulatedVoltage.Value, w.noted()[s.Addr+" Vlow"].Value))
		}
	}
}

// Across is the voltage of a port, in V; ok is false where nothing feeds it, or where it shares an
// island with what has no operating point: that is Beside's to answer.
func (l *Low) Across(p network.Port) (volts float64, ok bool) {
	if l.Beside(p) != nil {
		return 0, false
	}
	return l.AtMost(p)
}

// Rest is the state without what has no operating point: the state itself where everything has one.
func (l *Low) Rest() *Point {
	p := *l.Point
	p.solution, p.Found, p.amps = l.rest, l.rest != nil && l.rest.Found, nil
	return &p
}

// AtMost is the voltage of a port, in V, with all that has no operating point taken away: the true one
// is no higher.
func (l *Low) AtMost(p network.Port) (volts float64, ok bool) {
	w := l.wiring
	if l.rest == nil || !l.rest.Found || !w.fed(p) {
		return 0, false
	}
	return l.rest.Volts[w.view.Zone.Local(p.Hot)] - l.rest.Volts[w.view.Zone.Local(p.Ret)], true
}

// Beside is what has no operating point in the island of a port, the largest; nil where there is none.
func (l *Low) Beside(p network.Port) (most *Pull) {
	if l.Found || !l.wiring.known(p) {
		return nil
	}
	for i := range l.Pulls {
		x := &l.Pulls[i]
		if (x.Folds || x.Short) && l.island(x.Port) == l.island(p) && (most == nil || x.Watts > most.Watts) {
			most = x
		}
	}
	return most
}

// island is the bus that a port is on: what wires, devices and diodes join on the live side, by one of its
// nodes. Returns are common to most buses and tell nothing apart.
func (l *Low) island(p network.Port) int { return l.bus(int(l.wiring.view.Zone.Local(p.Hot))) }

func (l *Low) bus(node int) int {
	if l.buses == nil {
		l.findBuses()
	}
	return l.buses.find(node)
}

func (l *Low) findBuses() {
	n, z := l.c.Net, l.View.Zone
	l.buses = newUnion(z.Size())
	join := func(a, b network.NodeID) { l.buses.join(int(z.Local(a)), int(z.Local(b))) }
	for e := range l.wiring.branch {
		if x := &n.Edges[e]; !n.Nodes[x.A].Return && !n.Nodes[x.B].Return {
			join(x.A, x.B)
		}
	}
	for i := range l.wiring.diodes {
		join(n.Converters[i].In.Hot, n.Converters[i].Out.Hot)
	}
}

// Made lists the figures that the voltage of a port rests on: those of all that is joined to it.
func (l *Low) Made(p network.Port) []derive.Number {
	n := l.c.Net
	in := map[string]bool{}
	add := func(q network.Port, addr string) {
		in[addr] = in[addr] || l.wiring.known(q) && l.island(q) == l.island(p)
	}
	for i := range l.wiring.sources {
		add(n.Sources[i].Port, n.Sources[i].Addr)
	}
	for i := range l.wiring.loads {
		add(n.Loads[i].Port, n.Loads[i].Addr)
	}
	for i := range l.wiring.inputs {
		add(n.Converters[i].In, n.Converters[i].Addr)
	}
	for i := range l.wiring.outputs {
		add(n.Converters[i].Out, n.Converters[i].Addr)
	}
	var keys []string
	numbers := l.wiring.noted()
	for k := range numbers {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	var out []derive.Number
	for _, k := range keys {
		if in[k[:strings.LastIndexByte(k, ' ')]] {
			out = append(out, numbers[k])
		}
	}
	return out
}

// VoltsOf is a voltage of the state with all that it rests on.
func (l *Low) VoltsOf(name, symbol string, volts float64, p network.Port) derive.Number {
	if u, ok := l.Point.Across(p); ok && u == volts {
		if n, ok := l.VoltsAt(p); ok {
			n.Name, n.Symbol = name, symbol
			return n
		}
	}
	from := l.Made(p)
	if way, ok := l.Way(p); ok {
		from = append(from, way.Ohms)
	}
	corner := "batteries empty at high resistance"
	if l.Charge == Rested {
		corner = "batteries rested at high resistance"
	}
	return derive.Compute(name, symbol, volts, "V", "operating point by Kirchhoff's laws, "+corner+", alternators regulated down, nothing charging", from...)
}

// SourceAt says whether the part at addr is a source, or a converter's output, that is joined to a port.
func (l *Low) SourceAt(addr string, p network.Port) bool {
	for _, i := range l.View.Zone.Sources {
		if s := &l.c.Net.Sources[i]; s.Addr == addr && l.View.HasSource(i) && l.View.Joined(s.Hot, p.Hot) {
			return true
		}
	}
	for _, i := range l.View.Zone.Outputs {
		if x := &l.c.Net.Converters[i]; x.Addr == addr && l.View.HasConverter(i) && l.View.Joined(x.Out.Hot, p.Hot) {
			return true
		}
	}
	return false
}

// PartAt says whether the part at addr is a source, load or converter that is joined to a port.
func (l *Low) PartAt(addr string, p network.Port) bool {
	if l.SourceAt(addr, p) {
		return true
	}
	for _, i := range l.View.Zone.Loads {
		if x := &l.c.Net.Loads[i]; x.Addr == addr && (l.Runs == nil || l.Runs(i)) && l.View.HasLoad(i) && l.View.Joined(x.Hot, p.Hot) {
			return true
		}
	}
	for _, i := range l.View.Zone.Inputs {
		if x := &l.c.Net.Converters[i]; x.Addr == addr && l.View.HasConverter(i) && l.View.Joined(x.In.Hot, p.Hot) {
			return true
		}
	}
	return false
}
