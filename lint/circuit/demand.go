package circuit

import (
	"slices"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// demand is the most that something draws, in A.
type demand struct {
	n     derive.Number // steady
	surge derive.Number // on starting; Kind 0 where none is stated
	brief bool          // runs less than three hours a day, or is a starter
	lacks []derive.Missing
}

const threeHours = 3 * 3600

// LoadCurrent is the largest current that load i of the network draws in steady use, in A, over its
// behaviour and the voltages it can see.
func (c *Circuit) LoadCurrent(i int) (derive.Number, []derive.Missing) {
	d := c.load(i)
	return d.n, d.lacks
}

func (c *Circuit) load(i int) demand {
	if d, ok := c.loads[i]; ok {
		return d
	}
	l := &c.Net.Loads[i]
	d := demand{brief: l.HoursPerDay.Set && l.HoursPerDay.Value < threeHours || slices.Contains(c.Starters(), i)}
	if l.Surge.Set {
		d.surge = read("starting current of "+quote(l.Load), "Is", l.Surge, "A", l.Load, "surge")
	}
	d.n, d.lacks = c.steady(i)
	c.loads[i] = d
	return d
}

func (c *Circuit) steady(i int) (derive.Number, []derive.Missing) {
	l := &c.Net.Loads[i]
	if !l.Draw.Set && !l.Power.Set && !l.Resistance.Set {
		return derive.Number{}, missing(l.Load, "draw")
	}
	if l.Draw.Set && l.Behavior.Value == "constant-current" {
		return read("draw of "+quote(l.Load), "I", l.Draw, "A", l.Load, "draw"), nil
	}
	vn, ok := c.rated(l)
	if !ok {
		if l.Draw.Set { // no source reaches it: its own figure is all there is
			return read("draw of "+quote(l.Load), "I", l.Draw, "A", l.Load, "draw"), nil
		}
		return derive.Number{}, missing(l.Load, "rated_voltage")
	}
	low, high := c.window(l, vn)
	if c.constantPower(l) {
		solved, lacks := c.solvedLow(func(s *lows) map[int]stand { return s.loads }, i, l.Port, low)
		if lacks != nil {
			return derive.Number{}, lacks
		}
		if !(l.VoltageMin.Set && l.VoltageMin.Value > solved.Value) {
			low = solved
		}
	}
	var lacks []derive.Missing
	if !c.constantPower(l) && (l.Resistance.Set || c.behavior(l, low, high, vn).Source == "resistive") {
		_, _, lacks = c.Highest(l.Hot)
	}
	switch {
	case l.Resistance.Set:
		r := read("resistance of "+quote(l.Load), "R", l.Resistance, "ohm", l.Load, "resistance")
		return derive.Compute("most current of "+quote(l.Load), "I", high.Value/r.Value, "A", "I = Vhigh / R", high, r), lacks
	case l.Power.Set:
		return c.fromPower(l, vn, low, high), lacks
	}
	return c.fromDraw(l, vn, low, high), lacks
}

// fromPower and fromDraw scale the stated figure to the voltage at which the behaviour draws most.
func (c *Circuit) fromPower(l *network.Load, vn, low, high derive.Number) derive.Number {
	p := read("power of "+quote(l.Load), "P", l.Power, "W", l.Load, "power")
	switch how := c.behavior(l, low, high, vn); how.Source {
	case "resistive":
		return derive.Compute("most current of "+quote(l.Load), "I", p.Value*high.Value/(vn.Value*vn.Value), "A", "I = P x Vhigh / Vn^2", known(p, vn, high)...)
	case "constant-current":
		return derive.Compute("current of "+quote(l.Load), "I", p.Value/vn.Value, "A", "I = P / Vn", known(p, vn)...)
	default:
		return derive.Compute("most current of "+quote(l.Load), "I", p.Value/low.Value, "A", "I = P / Vlow, constant power", known(p, low)...)
	}
}

func (c *Circuit) fromDraw(l *network.Load, vn, low, high derive.Number) derive.Number {
	d := read("draw of "+quote(l.Load), "I0", l.Draw, "A", l.Load, "draw")
	if c.behavior(l, low, high, vn).Source == "resistive" {
		return derive.Compute("most current of "+quote(l.Load), "I", d.Value*high.Value/vn.Value, "A", "I = I0 x Vhigh / Vn, resistive", known(d, vn, high)...)
	}
	return derive.Compute("most current of "+quote(l.Load), "I", d.Value*vn.Value/low.Value, "A", "I = I0 x Vn / Vlow, constant power", known(d, vn, low)...)
}

// constantPower says whether a load is known to draw a constant power.
func (c *Circuit) constantPower(l *network.Load) bool {
	return !l.Resistance.Set && (l.Behavior.Value == "constant-power" || l.Behavior.Value == "" && l.Kind.Value == "electronics")
}

// behavior is the stated behaviour, or constant power for electronics, or the worse of the two; only
// its Source is of use.
func (c *Circuit) behavior(l *network.Load, low, high, vn derive.Number) derive.Number {
	how := l.Behavior.Value
	if how == "" {
		how = "constant-power"
		if l.Kind.Value != "electronics" && high.Value/vn.Value > vn.Value/low.Value {
			how = "resistive"
		}
	}
	return derive.Number{Source: how}
}

// rated is the voltage at which a load's figures are stated.
func (c *Circuit) rated(l *network.Load) (derive.Number, bool) {
	if l.RatedVoltage.Set {
		return read("rated voltage of "+quote(l.Load), "Vn", l.RatedVoltage, "V", l.Load, "rated_voltage"), true
	}
	return c.Nominal(l.Hot)
}

// window is the lowest and highest voltage that a load is counted at.
func (c *Circuit) window(l *network.Load, vn derive.Number) (low, high derive.Number) {
	low = c.lowAt(l.Hot, vn)
	if l.VoltageMin.Set && l.VoltageMin.Value > low.Value {
		low = read("lowest voltage of "+quote(l.Load), "Vlow", l.VoltageMin, "V", l.Load, "voltage_min")
	}
	high, _, _ = c.Highest(l.Hot)
	if high.Value < vn.Value {
		high = vn
	}
	return low, high
}

// lowAt is the lowest voltage counted at a live node: nine tenths of the lowest that the sources of
// its zone hold. Where the drop is more, conductor/voltage-drop speaks.
func (c *Circuit) lowAt(id network.NodeID, vn derive.Number) derive.Number {
	z := c.Net.ZoneOf(id)
	if z == nil {
		return vn
	}
	if z.AC {
		return derive.Compute("lowest volts", "Vlow", 0.9*vn.Value, "V", "Vlow = 0.9 x Vn", vn)
	}
	if src, ok := c.lowest(z); ok {
		return derive.Compute("lowest volts at the part", "Vlow", 0.9*src.Value, "V", "Vlow = 0.9 x lowest volts of a source, a tenth lost on the way", src)
	}
	return derive.Compute("lowest volts", "Vlow", 0.9*vn.Value, "V", "Vlow = 0.9 x Vn", vn)
}

// InputCurrent is the largest current that the input of converter i draws, in A. A tracker on an
// array draws what the array gives: its figure is then the input's own limit or nothing at all.
func (c *Circuit) InputCurrent(i int) (derive.Number, []derive.Missing) {
	d := c.input(i)
	return d.n, d.lacks
}

func (c *Circuit) input(i int) demand {
	if d, ok := c.inputs[i]; ok {
		return d
	}
	c.inputs[i] = demand{} // a ring of converters ends here
	x := &c.Net.Converters[i]
	d := demand{}
	d.n, d.lacks = c.drawn(i)
	if p := x.Input; p != nil && p.CurrentMax.Set {
		limit := read("input limit of "+quote(x.Converter), "Imax", p.CurrentMax, "A", x.Converter, "input current_max")
		if d.n.Kind == 0 || limit.Value < d.n.Value {
			d.n, d.lacks = limit, nil
		}
	}
	c.inputs[i] = d
	return d
}

func (c *Circuit) drawn(i int) (derive.Number, []derive.Missing) {
	x := &c.Net.Converters[i]
	out, lacks := c.outputPower(x)
	if out.Kind == 0 {
		return out, lacks
	}
	vn, ok := c.Nominal(x.In.Hot)
	if !ok {
		return derive.Number{}, missing(x.Converter, "input voltage")
	}
	low := c.lowAt(x.In.Hot, vn)
	if solved, m := c.solvedLow(func(s *lows) map[int]stand { return s.inputs }, i, x.In, low); m != nil {
		return derive.Number{}, m
	} else if !c.arrayFed(x) {
		low = solved
	}
	if p := x.Input; p != nil && p.VoltageMin.Set && p.VoltageMin.Value > low.Value {
		low = read("lowest input voltage of "+quote(x.Converter), "Vlow", p.VoltageMin, "V", x.Converter, "input voltage_min")
	}
	eff, idle := c.efficiency(x), c.idlePower(x)
	formula, from := "Iin = Pout / (eta x Vlow)", []derive.Number{out, eff, low}
	if idle.Kind != 0 {
		formula, from = "Iin = (Pout / eta + Pidle) / Vlow", []derive.Number{out, eff, idle, low}
	}
	return derive.Compute("input current of "+quote(x.Converter), "Iin", (out.Value/eff.Value+idle.Value)/low.Value, "A", formula, from...), lacks
}

// inputPower is the most power that a converter's input asks for, in W.
func (c *Circuit) inputPower(x *network.Converter) (derive.Number, []derive.Missing) {
	out, lacks := c.outputPower(x)
	if out.Kind == 0 {
		return out, lacks
	}
	eff, idle := c.efficiency(x), c.idlePower(x)
	formula, from := "Pin = Pout / eta", []derive.Number{out, eff}
	if idle.Kind != 0 {
		formula, from = "Pin = Pout / eta + Pidle", append(from, idle)
	}
	return derive.Compute("input power of "+quote(x.Converter), "Pin", out.Value/eff.Value+idle.Value, "W", formula, from...), lacks
}

func (c *Circuit) efficiency(x *network.Converter) derive.Number {
	if x.Efficiency.Set {
		return read("efficiency of "+quote(x.Converter), "eta", x.Efficiency, "", x.Converter, "efficiency")
	}
	return derive.Assume("efficiency of "+quote(x.Converter), "eta", 0.85, "", x.Addr, "efficiency", "common practice")
}

// idlePower is what a converter draws with nothing on its output, in W; Kind 0 where the plan does not say.
func (c *Circuit) idlePower(x *network.Converter) (n derive.Number) {
	switch q := x.Idle; {
	case !q.Set:
		return n
	case q.Dim == quantity.Power:
		return read("idle power of "+quote(x.Converter), "Pidle", q, "W", x.Converter, "idle")
	}
	vn, ok := c.Nominal(x.In.Hot)
	if !ok {
		return n
	}
	i := read("idle current of "+quote(x.Converter), "I0", x.Idle, "A", x.Converter, "idle")
	return derive.Compute("idle power of "+quote(x.Converter), "Pidle", i.Value*vn.Value, "W", "Pidle = I0 x Vn", i, vn)
}

// arrayFed says whether arrays alone feed a converter's input.
func (c *Circuit) arrayFed(x *network.Converter) bool {
	z := c.Net.ZoneOf(x.In.Hot)
	return z == nil || c.onlyArrays(z)
}

// outputPower is the most that a converter puts out, in W.
func (c *Circuit) outputPower(x *network.Converter) (derive.Number, []derive.Missing) {
	if x.Kind.Value == "inverter" {
		return c.inverterPower(x)
	}
	if p := x.Output; p != nil && p.CurrentMax.Set {
		if v, m := c.HighOutput(x.Converter); m == nil && v.Kind != 0 {
			i := read("output limit of "+quote(x.Converter), "Iout", p.CurrentMax, "A", x.Converter, "output current_max")
			return derive.Compute("output power of "+quote(x.Converter), "Pout", i.Value*v.Value, "W", "Pout = Iout x Vout", i, v), nil
		}
	}
	if x.Rated.Set {
		return read("rated power of "+quote(x.Converter), "Pout", x.Rated, "W", x.Converter, "rated"), nil
	}
	return derive.Number{}, missing(x.Converter, "output current_max")
}

// inverterPower is the sum of an inverter's loads and of the chargers that it feeds, or its rating where
// none is drawn or the sum exceeds it.
func (c *Circuit) inverterPower(x *network.Converter) (derive.Number, []derive.Missing) {
	var sum derive.Number
	var from []derive.Number
	var lacks []derive.Missing
	if z := c.Net.ZoneOf(x.Out.Hot); z != nil {
		for _, i := range z.Loads {
			l := &c.Net.Loads[i]
			if l.Receptacle.True() { // anything may be plugged in
				lacks = merge(lacks, missing(l.Load, "power")...)
				continue
			}
			if p, ok := c.loadPower(l); ok {
				from = append(from, p)
				sum.Value += p.Value
			} else {
				lacks = merge(lacks, missing(l.Load, "power")...)
			}
		}
		for _, i := range z.Inputs {
			p, m := c.fedPower(&c.Net.Converters[i])
			lacks = merge(lacks, m...)
			if p.Kind != 0 {
				from = append(from, p)
				sum.Value += p.Value
			}
		}
	}
	if x.Rated.Set && (len(from) == 0 || len(lacks) > 0 || sum.Value > x.Rated.Value) {
		return read("rated power of "+quote(x.Converter), "Pout", x.Rated, "W", x.Converter, "rated"), nil
	}
	if len(from) == 0 {
		return derive.Number{}, missing(x.Converter, "rated")
	}
	return derive.Compute("power of the loads of "+quote(x.Converter), "Pout", sum.Value, "W", "sum", from...), lacks
}

// fedPower is what a converter behind an inverter asks for, in W. Of another inverter it is the rating:
// inverters can be drawn in a ring.
func (c *Circuit) fedPower(x *network.Converter) (derive.Number, []derive.Missing) {
	switch {
	case x.Kind.Value == "diode":
		return derive.Number{}, missing(x.Converter, "what it feeds")
	case x.Kind.Value != "inverter":
		return c.inputPower(x)
	case !x.Rated.Set:
		return derive.Number{}, missing(x.Converter, "rated")
	}
	rated, eff := read("rated power of "+quote(x.Converter), "Pout", x.Rated, "W", x.Converter, "rated"), c.efficiency(x)
	return derive.Compute("input power of "+quote(x.Converter), "Pin", rated.Value/eff.Value, "W", "Pin = Pout / eta", rated, eff), nil
}

func (c *Circuit) loadPower(l *network.Load) (derive.Number, bool) {
	if l.Power.Set {
		return read("power of "+quote(l.Load), "P", l.Power, "W", l.Load, "power"), true
	}
	if v, ok := c.rated(l); ok && l.Draw.Set {
		d := read("draw of "+quote(l.Load), "I0", l.Draw, "A", l.Load, "draw")
		return derive.Compute("power of "+quote(l.Load), "P", d.Value*v.Value, "W", "P = I0 x Vn", d, v), true
	}
	return derive.Number{}, false
}

// amps turns a rating in A or W into A at a voltage.
func amps(q schema.Quantity, b schema.Block, attribute string, volts schema.Quantity) (derive.Number, []derive.Missing) {
	switch {
	case !q.Set:
		return derive.Number{}, missing(b, attribute)
	case q.Dim == quantity.Current:
		return read("rated output of "+quote(b), "Ir", q, "A", b, attribute), nil
	case !volts.Set:
		return derive.Number{}, missing(b, "voltage")
	}
	p, v := read("rated power of "+quote(b), "P", q, "W", b, attribute), read("voltage of "+quote(b), "V", volts, "V", b, "voltage")
	return derive.Compute("rated output of "+quote(b), "Ir", p.Value/v.Value, "A", "Ir = P / V", p, v), nil
}
