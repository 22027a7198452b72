package spicetest

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// state is one question: a state of a plan at a setting.
type state struct {
	view *explore.View
	set  circuit.Setting
}

// tally counts what was compared.
type tally struct {
	states, found, none, linear, compared, back, elsewhere, pinned, lost, strayed, unfinished int
	worst                                                                                     float64 // relative
}

const (
	coarse = "dc vs 0 1 0.125"
	fine   = "dc vs 0 1 0.00390625"
)

// check compares states of a plan with ngspice.
func (y *tally) check(dir string, c *circuit.Circuit, cases []state) error {
	stopped := make([]map[int]bool, len(cases))
	for k := range stopped {
		stopped[k] = map[int]bool{}
	}
	most, err := tracked(dir, c, cases)
	if err != nil {
		return err
	}
	var todo []int
	for k := range cases {
		if most[k][lost] == 0 {
			todo = append(todo, k)
		} else {
			y.states, y.lost = y.states+1, y.lost+1
		}
	}
	for round := 0; len(todo) > 0 && round <= len(c.Net.Converters); round++ {
		if todo, err = y.round(dir, c, cases, todo, most, stopped); err != nil {
			return err
		}
	}
	return nil
}

// round simulates the states that are left, and gives those in which a converter turns out not to start.
func (y *tally) round(dir string, c *circuit.Circuit, cases []state, todo []int, most []map[int]float64, stopped []map[int]bool) (left []int, err error) {
	var decks []*deck
	var jobs []job
	for _, k := range todo {
		d := write(c, cases[k].view, cases[k].set, most[k], stopped[k])
		decks, jobs = append(decks, d), append(jobs, job{d.netlist(), coarse})
	}
	plots, err := simulate(dir, jobs)
	if err != nil {
		return nil, err
	}
	if err := again(dir, decks, plots); err != nil {
		return nil, err
	}
	for n, k := range todo {
		d, p := decks[n], plots[n]
		if d.fit(p) && d.high(p, p.last()) && d.stops(p) || !(d.fit(p) && d.high(p, p.last())) && d.stopsAt(c.Point(d.v, d.set)) {
			left = append(left, k)
			continue
		}
		if err := y.one(dir, d, p); err != nil {
			return nil, fmt.Errorf("%w\n%+v, state %v\n%s", err, d.set, d.v.State(d.v.Zone.Vars), d.idling())
		}
	}
	return left, nil
}

// again sweeps from the point without loads where a sweep from nothing failed.
func again(dir string, decks []*deck, plots []*plot) error {
	var jobs []job
	var of []int
	for k, p := range plots {
		if !decks[k].fit(p) {
			jobs, of = append(jobs, job{decks[k].idling(), coarse}), append(of, k)
		}
	}
	if len(jobs) == 0 {
		return nil
	}
	second, err := simulate(dir, jobs)
	for k, p := range second {
		if decks[of[k]].fit(p) {
			plots[of[k]] = p
		}
	}
	return err
}

// stops marks converters whose input stands below the voltage that starts them.
func (d *deck) stops(p *plot) (any bool) {
	for i := range d.inputs {
		x := &d.net.Converters[i]
		if t := x.Trigger; t.Set && !t.Ignition && !d.triggered[i] && d.volts(p, p.last(), x.In.Hot)-d.volts(p, p.last(), x.In.Ret) < t.Volts {
			d.triggered[i], any = true, true
		}
	}
	return any
}

// stopsAt marks those that give nothing in a point, where ngspice has no answer of its own, unless their
// output would be dead and is not.
func (d *deck) stopsAt(point *circuit.Point) (any bool) {
	for i := range d.inputs {
		x := &d.net.Converters[i]
		if t := x.Trigger; !t.Set || t.Ignition || d.triggered[i] || point.OutAmps(i) != 0 || !point.Found {
			continue
		}
		d.triggered[i] = true
		without := write(d.c, d.v, d.set, d.found, d.triggered)
		if _, gives := point.Volts(x.Out.Hot); gives == without.lit[without.island.top(int(x.Out.Hot))] {
			any = true
		} else {
			delete(d.triggered, i)
		}
	}
	return any
}

func complete(p *plot) bool { return p != nil && p.at(p.last(), "v(scale)") > 1-1e-9 }

// fit says whether a sweep came to full power and keeps Kirchhoff's law there: ngspice ends now and then
// with milliamperes left over at a node.
func (d *deck) fit(p *plot) bool {
	return complete(p) && d.leftOver(p, p.last(), nil) < 1e-3
}

// one compares one state, sweeping finer where ngspice lost its way.
func (y *tally) one(dir string, d *deck, p *plot) error {
	y.states++
	if d.unfinished {
		y.unfinished++
	}
	point := d.c.Point(d.v, d.set)
	switch {
	case point.Found:
		y.found++
		return y.same(dir, d, p, point)
	case point.Margin <= 0:
		return fmt.Errorf("no operating point and no margin, lacks %v", point.Lacks)
	}
	y.none++
	return y.folds(dir, d, point.Margin)
}

// same compares a point that was found. Where ngspice ended elsewhere it starts again from the point
// itself, down to no power: that it is a solution, and that the branch from no power ends there. Where
// ngspice finds nothing at all, the point is put into its netlist.
func (y *tally) same(dir string, d *deck, p *plot, point *circuit.Point) error {
	err := errLost
	if d.fit(p) && d.high(p, p.last()) {
		if err = y.differ(d, p, p.last(), point); err == nil {
			return nil
		}
	}
	plots, failed := simulate(dir, []job{{d.idling(), coarse}, {d.guess(point), "dc vs 1 0 -0.0078125"}, {d.pinned(point), "op"}})
	switch {
	case failed != nil:
		return failed
	case d.fit(plots[0]) && y.differ(d, plots[0], plots[0].last(), point) == nil:
		return nil
	case y.leads(d, plots[1], point):
		y.back++
		return nil
	case errors.Is(err, errLost) && plots[2] != nil:
		y.pinned++
		return d.balanced(plots[2])
	}
	return err
}

// leads says whether a sweep from a point down to no power stays on the branch.
func (y *tally) leads(d *deck, p *plot, point *circuit.Point) bool {
	if p == nil || d.leftOver(p, p.rows[0], nil) > 1e-3 || y.differ(d, p, p.rows[0], point) != nil || p.at(p.last(), "v(scale)") > 1e-9 {
		return false
	}
	for _, row := range p.rows {
		if !d.high(p, row) {
			return false
		}
	}
	return true
}

// pinned is the netlist with every node held at a point's voltage.
func (d *deck) pinned(point *circuit.Point) string {
	out := d.text.String()
	done := map[string]bool{}
	for i := range d.net.Nodes {
		u, _ := point.Volts(network.NodeID(i))
		if n := d.node(network.NodeID(i)); !done[n] {
			done[n] = true
			out += fmt.Sprintf("vp%d %s 0 %.17g\n", i, n, u)
		}
	}
	return out + ".end\n"
}

// balanced says whether nothing holds the pinned nodes.
func (d *deck) balanced(p *plot) error {
	for name := range p.column {
		if amps := p.at(p.last(), name); strings.HasPrefix(name, "i(vp") && math.Abs(amps) > 10*curved.amps {
			return fmt.Errorf("no solution: %s takes %g A to hold", name, amps)
		}
	}
	return nil
}

// nodeset is a point as the first guess, with one node of each island at 0 V, the first unless another is
// asked for; a point that was not found gives none.
func (d *deck) nodeset(point *circuit.Point, zero ...network.NodeID) (out string) {
	base := map[int]float64{}
	for _, id := range zero {
		base[d.island.top(int(id))], _ = point.Volts(id)
	}
	done := map[string]bool{}
	for i := range d.net.Nodes {
		id := network.NodeID(i)
		u, _ := point.Volts(id)
		k := d.island.top(i)
		if _, ok := base[k]; !ok {
			base[k] = u
		}
		if n := d.node(id); point.Found && !done[n] {
			done[n] = true
			out += fmt.Sprintf(".nodeset v(%s)=%.17g\n", n, u-base[k])
		}
	}
	return out
}

func (d *deck) guess(point *circuit.Point) string {
	return d.text.String() + d.ties + d.nodeset(point) + ".end\n"
}

// unloaded is the point without loads, which is near that without power.
func (d *deck) unloaded() *circuit.Point {
	set := d.set
	set.Runs, set.Starting = func(int) bool { return false }, 0
	return d.c.Point(d.v, set)
}

func (d *deck) idling() string { return d.guess(d.unloaded()) }

// folds checks that ngspice's branch too goes on to just below the margin and not to full power.
func (y *tally) folds(dir string, d *deck, margin float64) error {
	below := margin * (1 - 1e-3)
	near := func(steps float64) job {
		return job{d.netlist(), fmt.Sprintf("dc vs 0 %.15g %.15g", below, below/steps)}
	}
	plots, err := simulate(dir, []job{near(100), {d.netlist(), fine}, near(3000)})
	if err != nil {
		return err
	}
	stays := func(p *plot) bool {
		return p != nil && p.at(p.last(), "v(scale)") > below*(1-1e-6) && d.high(p, p.last())
	}
	switch {
	case astray(d, plots[0]) && astray(d, plots[2]):
		y.lost++
		return nil
	case margin < 1e-9: // a power stands below its floor as soon as there is any
		if stays(plots[0]) {
			return errors.New("no operating point at any power, and ngspice has one")
		}
		return nil
	case !stays(plots[0]) && !stays(plots[2]):
		y.strayed++ // to the low-voltage branch before the fold, as steps that are too bold do
		return nil
	case !stays(plots[0]):
		plots[0] = plots[2]
	}
	if p := plots[1]; complete(p) && d.high(p, p.last()) {
		if jump := d.jump(p, plots[0].last(), margin); jump < 0.02 {
			return fmt.Errorf("no operating point above a margin of %.6g, and ngspice passes it: jump %.3g", margin, jump)
		}
		y.elsewhere++
	}
	return nil
}

// astray says whether a sweep has no rows, or ends with a power below 0 V: what draws like a resistance
// below its floor cannot stand there, but iterations in rings of converters wander off so.
func astray(d *deck, p *plot) bool {
	if p == nil {
		return true
	}
	for _, w := range d.powers {
		if d.volts(p, p.last(), w.port.Hot)-d.volts(p, p.last(), w.port.Ret) < -1e-3 {
			return true
		}
	}
	return false
}

// jump is the largest change of a voltage, relative, between a row just below the margin and the next
// above it.
func (d *deck) jump(p *plot, below []float64, margin float64) (most float64) {
	for _, row := range p.rows {
		if p.at(row, "v(scale)") <= margin {
			continue
		}
		for _, w := range d.powers {
			u, was := d.volts(p, row, w.port.Hot)-d.volts(p, row, w.port.Ret), d.volts(p, below, w.port.Hot)-d.volts(p, below, w.port.Ret)
			most = math.Max(most, math.Abs(u-was)/math.Max(math.Abs(was), 1))
		}
		return most
	}
	return most
}
