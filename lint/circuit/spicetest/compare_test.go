package spicetest

import (
	"errors"
	"fmt"
	"math"

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
	states, found, none, linear, compared, back, elsewhere, unfinished int
	worst                                                              float64 // relative
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
	todo := make([]int, len(cases))
	for k := range todo {
		todo[k] = k
	}
	for round := 0; len(todo) > 0 && round <= len(c.Net.Converters); round++ {
		if todo, err = y.round(dir, c, cases, todo, most, stopped); err != nil {
			return err
		}
	}
	return nil
}

// round simulates the states that are left, and gives those in which a converter turns out not to start.
func (y *tally) round(dir string, c *circuit.Circuit, cases []state, todo []int, most []map[int]float64, stopped []map[int]bool) (again []int, err error) {
	var decks []*deck
	var jobs []job
	for _, k := range todo {
		d := write(c, cases[k].view, cases[k].set, most[k], stopped[k])
		decks, jobs = append(decks, d), append(jobs, job{d.idling(), coarse})
	}
	plots, err := simulate(dir, jobs)
	if err != nil {
		return nil, err
	}
	for n, k := range todo {
		d, p := decks[n], plots[n]
		if complete(p) && d.high(p, p.last()) && d.stops(p) {
			again = append(again, k)
			continue
		}
		if err := y.one(dir, d, p); err != nil {
			return nil, fmt.Errorf("%w\n%+v, state %v\n%s", err, d.set, d.v.State(d.v.Zone.Vars), d.idling())
		}
	}
	return again, nil
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

func complete(p *plot) bool { return p != nil && p.at(p.last(), "v(scale)") > 1-1e-9 }

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

// same compares a point that was found. Where the sweep ended elsewhere one is made the other way, from
// the point itself down to no power: that it is a solution, and that the branch from no power ends there.
func (y *tally) same(dir string, d *deck, p *plot, point *circuit.Point) error {
	err := errors.New("ngspice finds no operating point")
	if complete(p) {
		if err = y.differ(d, p, p.last(), point); err == nil {
			return nil
		}
	}
	plots, serr := simulate(dir, []job{{d.guess(point), "dc vs 1 0 -0.0078125"}})
	if serr != nil || plots[0] == nil {
		return errors.Join(err, serr)
	}
	back := plots[0]
	if y.differ(d, back, back.rows[0], point) != nil || back.at(back.last(), "v(scale)") > 1e-9 {
		return err
	}
	for _, row := range back.rows {
		if !d.high(back, row) {
			return err
		}
	}
	y.back++
	return nil
}

// nodeset is a point as the first guess; a point that was not found gives none.
func (d *deck) nodeset(point *circuit.Point) (out string) {
	base := map[int]float64{}
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
	return d.text.String() + d.nodeset(point) + ".end\n"
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
	plots, err := simulate(dir, []job{{d.idling(), fmt.Sprintf("dc vs 0 %.15g %.15g", below, below/100)}, {d.idling(), fine}})
	if err != nil {
		return err
	}
	if p := plots[0]; p == nil || p.at(p.last(), "v(scale)") < below*(1-1e-6) || !d.high(p, p.last()) {
		return fmt.Errorf("no operating point above a margin of %.6g, and ngspice loses it before", margin)
	}
	if p := plots[1]; complete(p) && d.high(p, p.last()) {
		if jump := d.jump(p, plots[0].last(), margin); jump < 0.02 {
			return fmt.Errorf("no operating point above a margin of %.6g, and ngspice passes it: jump %.3g", margin, jump)
		}
		y.elsewhere++
	}
	return nil
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
