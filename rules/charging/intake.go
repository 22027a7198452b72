package charging

import (
	"cmp"
	"math"
	"slices"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// inflow is a charger that runs in a view, with what it gives.
type inflow struct {
	*charger
	port  network.Port // where it comes in, on the battery's own wires: its own port, or a diode's output
	gives derive.Number
	lacks []lint.Missing
}

// most is what it gives at most: without a figure, what devices let pass.
func (f *inflow) most() float64 {
	if len(f.lacks) > 0 {
		return math.Inf(1)
	}
	return f.gives.Value
}

// intake is what runs into a battery in a view.
type intake struct {
	p     *lint.Pass
	view  *explore.View
	row   explore.Series
	doors []door
	on    []*inflow
	sum   float64 // A, of all that is known
	doubt bool    // a figure is missing
	amps  float64 // the battery's own part of it, A
	own   circuit.Own
}

// door is a port at which current goes into a diode, and where it comes out on the battery's wires.
type door struct{ in, out network.Port }

// intakeOf finds what charges a battery in a view; skip leaves chargers out.
func intakeOf(p *lint.Pass, v *explore.View, battery int, all []*charger, skip func(*charger) bool) *intake {
	x := &intake{p: p, view: v, row: v.Series(battery)}
	x.open()
	fresh := x.fresh()
	for _, c := range all {
		if c.reverse || skip(c) || !c.there(v) || c.converter >= 0 && !fresh[c.converter] {
			continue
		}
		at, ok := x.port(c.at)
		if !ok || c.converter >= 0 && p.Net.Converters[c.converter].Kind.Value == "diode" {
			continue
		}
		f := &inflow{charger: c, port: at}
		f.gives, f.lacks = x.given(c, battery)
		x.on, x.sum = append(x.on, f), x.sum+f.gives.Value
		x.doubt = x.doubt || len(f.lacks) > 0
	}
	x.amps = x.sum
	return x
}

// open finds the diodes that lead to the battery.
func (x *intake) open() {
	n := x.p.Net
	passed := map[int]bool{}
	for grown := true; grown; {
		grown = false
		for _, i := range x.view.Zone.Outputs {
			c := &n.Converters[i]
			if c.Kind.Value != "diode" || passed[i] || !x.view.HasConverter(i) {
				continue
			}
			if at, ok := x.port(c.Out); ok {
				passed[i], grown = true, true
				x.doors = append(x.doors, door{c.In, at})
			}
		}
	}
}

// port is where, on the battery's own pair of wires, what comes out of a port comes in. A return that
// is drawn nowhere is taken to be joined.
func (x *intake) port(p network.Port) (network.Port, bool) {
	bare := len(x.p.Net.At(p.Ret)) == 0
	if x.row.Across(p) {
		return p, true
	}
	for _, i := range x.row.Tops() {
		if bare && x.view.Joined(x.p.Net.Sources[i].Hot, p.Hot) {
			return p, true
		}
	}
	for _, d := range x.doors {
		if x.view.Joined(d.in.Hot, p.Hot) && (bare || x.view.Joined(d.in.Ret, p.Ret)) {
			return d.out, true
		}
	}
	return network.Port{}, false
}

// fresh finds the converters that bring energy from elsewhere: one that the battery's own wires feed
// only turns round what is there.
func (x *intake) fresh() map[int]bool {
	on := map[int]bool{}
	for grown := true; grown; {
		grown = false
		for _, i := range slices.Concat(x.view.Zone.Outputs, x.view.Zone.Inputs) {
			c := &x.p.Net.Converters[i]
			if !on[i] && x.view.HasConverter(i) && !x.row.Across(c.In) && x.fed(c.In, on) {
				on[i], grown = true, true
			}
		}
	}
	return on
}

// fed says whether a source, or a converter that is on, feeds a port; one that nothing is wired to is
// taken to have power.
func (x *intake) fed(p network.Port, on map[int]bool) bool {
	n := x.p.Net
	for _, i := range x.view.Zone.Sources {
		if x.view.HasSource(i) && x.view.Joined(n.Sources[i].Hot, p.Hot) && x.view.Series(i).Across(p) {
			return true
		}
	}
	for i := range on {
		if x.view.Across(n.Converters[i].Out, p) {
			return true
		}
	}
	return len(n.At(p.Hot)) == 0
}

// given is what a charger gives.
func (x *intake) given(c *charger, battery int) (derive.Number, []lint.Missing) {
	if c.source >= 0 {
		g, lacks := x.p.Circuit.SourceGives(x.p.Net.Sources[c.source].Source)
		return g.N, lacks
	}
	k := &x.p.Net.Converters[c.converter]
	g, lacks := x.p.Circuit.OutputGives(k.Converter)
	sun, ok := x.sun(k, battery)
	if ok && (len(lacks) > 0 || sun.Value < g.N.Value) {
		return sun, nil
	}
	return g.N, lacks
}

// sun is what the arrays at a tracker's input give through it, where nothing else feeds it: no more
// than 1.25 times their power, into an empty battery.
func (x *intake) sun(k *network.Converter, battery int) (derive.Number, bool) {
	volts, lacks := x.p.Circuit.BatteryVolts(x.p.Net.Sources[battery].Source)
	if k.Kind.Value != "mppt" || len(lacks) > 0 || x.row.Stacked() {
		return derive.Number{}, false
	}
	var parts []derive.Number
	watts := 0.0
	for _, i := range x.view.Zone.Sources {
		s := &x.p.Net.Sources[i]
		if !x.view.HasSource(i) || !x.view.Joined(s.Hot, k.In.Hot) {
			continue
		}
		g, lacks := x.p.Circuit.SourceGives(s.Source)
		if s.Kind.Value != "solar" || len(lacks) > 0 || !s.Vmp.Set {
			return derive.Number{}, false
		}
		v := derive.Read("volts of "+lint.Quote(s.Source)+" at most power", "Vmp", s.Vmp.Value*float64(s.Series.Or(1)), "V", s.Addr, "vmp", s.Vmp.Range)
		watts += v.Value * g.N.Value
		parts = append(parts, g.N, v)
	}
	for _, i := range x.view.Zone.Outputs {
		if x.view.HasConverter(i) && x.view.Joined(x.p.Net.Converters[i].Out.Hot, k.In.Hot) {
			return derive.Number{}, false
		}
	}
	if len(parts) == 0 {
		return derive.Number{}, false
	}
	return derive.Compute("what the sun gives through "+lint.Quote(k.Converter), "Isun", watts/volts.Empty.Value, "A", "sum of I x Vmp, over empty volts", append(parts, volts.Empty)...), true
}

// parts are the currents at the ports where they come in; most counts those without a figure as endless.
func (x *intake) parts(most bool) []circuit.Part {
	var out []circuit.Part
	for _, f := range x.on {
		amps := f.gives.Value
		if most {
			amps = f.most()
		}
		out = append(out, circuit.Part{Port: f.port, Amps: amps})
	}
	return out
}

// largest lists what charges, largest first.
func (x *intake) largest() []*inflow {
	on := slices.Clone(x.on)
	slices.SortStableFunc(on, func(a, b *inflow) int { return cmp.Compare(b.gives.Value, a.gives.Value) })
	return on
}

// state is the positions by which as much charges the battery, largest first, as passes a limit.
func (x *intake) state(battery int, limit float64) []lint.Position {
	var edges []int
	sources := []int{battery}
	total := 0.0
	for _, f := range x.largest() {
		if total > limit {
			break
		}
		edges = append(edges, x.row.Way(f.port)...)
		if f.port != f.at {
			edges = append(edges, x.view.Between(f.at.Hot, x.inOf(f.port).Hot).Edges()...)
		}
		if f.source >= 0 {
			sources = append(sources, f.source)
		} else if f.behind != f.at {
			more, from := x.view.Live(nil, nil).Way(f.behind)
			edges, sources = append(edges, more...), append(sources, from...)
		}
		total += f.gives.Value * x.amps / x.sum
	}
	return x.view.Witness(edges, sources...)
}

func (x *intake) inOf(out network.Port) network.Port {
	for _, d := range x.doors {
		if d.out == out {
			return d.in
		}
	}
	return out
}
