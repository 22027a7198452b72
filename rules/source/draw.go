package source

import (
	"cmp"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
)

// mostShared is how many times the share of one battery is worked out.
const mostShared = 512

// draw looks for the most that one battery is asked for.
type draw struct {
	p       *lint.Pass
	battery int
	source  *schema.Source
	limit   derive.Number // Kind 0 where not known
	surge   derive.Number // Kind 0 where none is asked

	steady, start, unsure *asked
	word                  lint.Severity // the highest of any state
	shared                int
	complete              bool
}

// asked is what was asked of the battery in one state.
type asked struct {
	*ask
	amps float64
	own  circuit.Own
}

func seek(p *lint.Pass, battery int, limit, surge derive.Number) *draw {
	d := &draw{p: p, battery: battery, source: p.Net.Sources[battery].Source, limit: limit, surge: surge, word: lint.Notice, complete: true}
	z := fedZone(p.Net, battery)
	if z == nil {
		return d
	}
	all := drawersOf(p, z)
	for _, o := range p.Circuit.Occasions(z) {
		d.complete = d.complete && o.Complete
		for _, v := range o.Views {
			if v.HasSource(battery) {
				d.look(askOf(p.Net, v, battery, all, o.Runs))
			}
		}
	}
	return d
}

// look notes a state where it asks for more than those before.
func (d *draw) look(a *ask) {
	if len(a.on) == 0 {
		return
	}
	d.word = max(d.word, darkens(a))
	x := &asked{ask: a, amps: a.sum}
	if over := d.limit.Kind != 0 && a.sum > d.limit.Value; over && (d.steady == nil || a.sum > d.steady.amps) {
		x.amps = min(a.sum, d.p.Circuit.Passed(a.view, d.battery, a.parts(false)))
		if x.amps > d.limit.Value && (d.steady == nil || x.amps > d.steady.amps) {
			if !d.share(x) {
				return
			}
		}
	}
	if d.steady == nil || x.amps > d.steady.amps {
		d.steady = x
	}
	d.lookStarting(x)
	if a.doubt && d.unsure == nil && (d.limit.Kind == 0 || d.p.Circuit.Passed(a.view, d.battery, a.parts(true)) > d.limit.Value) {
		d.unsure = x
	}
}

// share takes off what batteries beside it give; false where the bound is met.
func (d *draw) share(x *asked) bool {
	if d.shared++; d.shared > mostShared {
		d.complete = false
		return false
	}
	x.own = d.p.Circuit.ShareOf(x.view, d.battery, x.parts(false))
	x.amps = min(x.amps, x.own.Amps)
	return true
}

// lookStarting adds what the hardest start adds; a device lets that pass.
func (d *draw) lookStarting(x *asked) {
	if d.surge.Kind == 0 || x.extra == nil {
		return
	}
	y := &asked{x.ask, x.amps + x.adds(), x.own}
	if d.start != nil && y.amps <= d.start.amps {
		return
	}
	if y.amps > d.surge.Value {
		if x.own.Amps == 0 && !d.share(x) {
			return
		}
		more := d.p.Circuit.ShareOf(x.view, d.battery, []circuit.Part{{Port: x.portOf(x.extra), Amps: x.adds()}})
		y.own = circuit.Own{Numbers: x.own.Numbers, Lacks: append(slices.Clip(x.own.Lacks), more.Lacks...)}
		y.amps = x.amps + more.Amps
	}
	if d.start == nil || y.amps > d.start.amps {
		d.start = y
	}
}

// takes is what a drawer takes in a state, in A: with its start where it is the one that starts.
func (d *drawer) takes(a *ask) float64 {
	if d == a.extra && d.steady.Kind == 0 {
		return d.surge.Value
	}
	return d.steady.Value
}

// largest lists what draws in a state, largest first.
func (x *asked) largest() []*drawer {
	on := slices.Clone(x.on)
	slices.SortStableFunc(on, func(a, b *drawer) int { return cmp.Compare(b.takes(x.ask), a.takes(x.ask)) })
	return on
}

// state is the positions that bring the battery to as much of what draws, largest first, as passes a limit.
func (x *asked) state(battery int, limit float64) []lint.Position {
	var edges []int
	total, all := 0.0, 0.0
	for _, d := range x.on {
		all += d.takes(x.ask)
	}
	for _, d := range x.largest() {
		if total > limit {
			break
		}
		edges = append(edges, x.row.Way(x.portOf(d))...)
		total += d.takes(x.ask) * x.amps / all
	}
	return x.view.Witness(edges, battery)
}

func (a *ask) portOf(d *drawer) network.Port {
	for i, x := range a.on {
		if x == d {
			return a.ports[i]
		}
	}
	return d.port
}

func (a *ask) lacks() []lint.Missing {
	var out []lint.Missing
	for _, d := range a.on {
		out = append(out, d.lacks...)
	}
	return out
}

// number is the current of a state with what it is made of, largest last.
func (d *draw) number(x *asked, starting bool) derive.Number {
	if x == nil {
		return derive.Number{}
	}
	var from []derive.Number
	for _, y := range x.on {
		if y.steady.Kind != 0 && y.steady.Value > 0 {
			from = append(from, y.steady)
		}
	}
	name, formula := "largest current that "+lint.Quote(d.source)+" is asked for", "sum of what can run together"
	if starting {
		name, formula = name+" on starting", formula+", one load starting"
		from = append(from, x.extra.surge)
	}
	if len(x.own.Numbers) > 0 {
		formula += ", shared by resistance with the batteries beside it"
		from = append(from, x.own.Numbers...)
	}
	if x.amps < x.sum && len(x.own.Numbers) == 0 {
		formula += ", no more than the devices on the way let pass"
		for _, at := range x.ports {
			from = append(from, d.p.Circuit.Devices(x.row.Way(at), x.sum)...)
		}
	}
	return derive.Compute(name, "Ib", x.amps, "A", formula, from...)
}

// darkens grades a state by what goes dark with the battery.
func darkens(a *ask) lint.Severity {
	word := lint.Notice
	for _, l := range a.loads {
		switch {
		case l.OwnBattery.True():
		case l.Critical.Value == "navigation":
			return lint.Warning
		case l.Critical.Value == "life-safety":
			word = lint.Caution
		}
	}
	return word
}
