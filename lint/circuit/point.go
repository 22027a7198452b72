package circuit

import (
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// Charge is the corner that all batteries of a state stand at together.
type Charge uint8

// The charge corners. The zero value is invalid.
const (
	_           Charge = iota
	Empty              // empty, and alternators regulated down
	Rested             // rested full
	EndOfCharge        // at the highest setpoint that reaches them, taking nothing; arrays cold
)

// Setting says at which corner a state is solved.
type Setting struct {
	Charge   Charge
	High     bool           // batteries at their high resistance; else at the low one
	Runs     func(int) bool // which loads of the network run; nil means all that are there
	Starting int            // the load that is starting, counted from 1; 0 means none
	Dark     bool           // no sun
	// Share is the part of its figure, 0 to 1, that a load or a converter's input alone in the zone draws, by its
	// live node; nil means all.
	Share func(hot network.NodeID) float64

	stopped map[int]bool // converters that do not start, for want of input voltage
}

// Point is the operating point of a state: every voltage and current of the zone it was asked for.
type Point struct {
	Setting
	View   *explore.View
	Found  bool
	Margin float64          // where not Found: the share of all powers up to which there is a point
	Lacks  []derive.Missing // what the plan leaves out; the parts count as absent, wires as without resistance

	c        *Circuit
	wiring   *wiring
	solution *solve.Point
	parts    *parted // nil until asked for
	amps     map[int]derive.Number
}

// Point solves one state of the view's zone. A converter of which only one side lies in the zone
// stands there alone: its input draws what its output can give at most, its output is a supply that
// is on. Zones are joined beforehand (network.Join, Upstream, Whole) where the two sides are wanted
// together.
func (c *Circuit) Point(v *explore.View, s Setting) *Point {
	p := &Point{Setting: s, View: v, c: c}
	s.stopped = map[int]bool{}
	for range 1 + len(c.Net.Converters) {
		p.wiring = c.wire(v, s)
		p.Lacks = p.wiring.lacks
		if !p.solve() || !p.wiring.stopUntriggered(p) {
			break
		}
	}
	return p
}

func (p *Point) solve() bool {
	solution, err := p.c.Memory.Solve(&p.wiring.net)
	if err != nil {
		p.Lacks = merge(p.Lacks, derive.Missing{Subject: "plan", Attribute: "a network that is sparse enough to solve"})
		p.solution = &solve.Point{}
		return false
	}
	p.solution = solution
	p.Found, p.Margin = p.solution.Found, p.solution.Margin
	if !p.Found && !p.solution.Folds {
		p.Lacks = merge(p.Lacks, unsolved)
	}
	return p.Found
}

// unsolved is what is missing where the solver gives up.
var unsolved = derive.Missing{Subject: "plan", Attribute: "a solution of its circuit"}

// Volts is the voltage of a node against the reference of its island; ok is false where the zone
// does not know the node or nothing energises it.
func (p *Point) Volts(id network.NodeID) (v float64, ok bool) {
	i := p.View.Zone.Local(id)
	if !p.Found || i < 0 || !p.wiring.alive(int(i)) {
		return 0, false
	}
	return p.solution.Volts[i], true
}

// Across is the voltage of a port, in V.
func (p *Point) Across(port network.Port) (v float64, ok bool) {
	a, live := p.Volts(port.Hot)
	b, back := p.Volts(port.Ret)
	if !live || !back || !p.wiring.together(port) {
		return 0, false
	}
	return a - b, true
}

// Amps is the current in an edge from its A to its B; 0 where it is open or not of the zone.
func (p *Point) Amps(edge int) float64 {
	if k, ok := p.wiring.branch[edge]; ok && p.Found {
		return p.solution.Branch[k]
	}
	return 0
}

// SourceAmps is the current out of a source's positive; LoadAmps, InAmps and OutAmps are what a load
// and a converter's input take and what its output gives.
func (p *Point) SourceAmps(i int) float64 { return p.element(p.wiring.sources, i) }

// LoadAmps is the current that a load takes.
func (p *Point) LoadAmps(i int) float64 { return -p.element(p.wiring.loads, i) }

// InAmps is the current that a converter's input takes.
func (p *Point) InAmps(i int) float64 {
	if k, ok := p.wiring.converters[i]; ok && p.Found {
		return p.solution.In[k]
	}
	return -p.element(p.wiring.inputs, i)
}

// OutAmps is the current that a converter's output gives.
func (p *Point) OutAmps(i int) float64 {
	if k, ok := p.wiring.converters[i]; ok && p.Found {
		return p.solution.Out[k]
	}
	if k, ok := p.wiring.diodes[i]; ok && p.Found {
		return -p.solution.Element[k]
	}
	return p.element(p.wiring.outputs, i)
}

func (p *Point) element(of map[int]int, i int) float64 {
	if k, ok := of[i]; ok && p.Found {
		return p.solution.Element[k]
	}
	return 0
}

// Residual is the largest current that Kirchhoff's law leaves over at a node, in A.
func (p *Point) Residual() float64 {
	if !p.Found {
		return 0
	}
	w, s := p.wiring, p.solution
	sum := make([]float64, w.net.Nodes)
	put := func(a, b int, i float64) { sum[a], sum[b] = sum[a]-i, sum[b]+i }
	for k, b := range w.net.Branches {
		put(b.A, b.B, s.Branch[k])
	}
	for k, e := range w.net.Elements {
		put(e.N, e.P, s.Element[k])
	}
	for k, x := range w.net.Converters {
		put(x.InP, x.InN, s.In[k])
		put(x.OutN, x.OutP, s.Out[k])
	}
	most := 0.0
	for _, x := range sum {
		most = max(most, math.Abs(x))
	}
	return most
}
