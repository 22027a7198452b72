package spicetest

import (
	"fmt"
	"math"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
	"ferrule/schema/quantity"
)

// converters adds what is energised, one after another, until nothing changes.
func (d *deck) converters() {
	for changed := true; changed; {
		changed = false
		for i := range d.net.Converters {
			x := &d.net.Converters[i]
			_, done := d.outputs[i]
			if done || d.diodes[i] || !d.v.HasConverter(i) || !d.fed(x.In) || !d.stands(x.Out) {
				continue
			}
			if x.Kind.Value == "diode" {
				d.diode(i, x)
				changed = true
			} else if d.triggered[i] {
				continue
			} else if volts, most, ok := d.holds(x); ok {
				changed = d.coupled(i, x, volts, most) || changed
			}
		}
	}
}

// diode has its usual forward voltage where batteries are empty, and none where volts are asked high. With
// nothing behind it, it stands where it would begin to conduct.
func (d *deck) diode(i int, x *network.Converter) {
	drop := 0.0
	if d.set.Charge == circuit.Empty {
		drop = 0.7
	}
	p := network.Port{Hot: x.In.Hot, Ret: x.Out.Hot}
	u := d.across(p)
	d.nonlinear = true
	d.outputs[i], d.diodes[i] = d.draws(p, fmt.Sprintf("max((%s-%g)/%g,%g*(%s-%g))", u, drop, valve, leak, u, drop)), true
	d.supplies(p)
}

// holds is the voltage that a converter's output holds and the most that it gives.
func (d *deck) holds(x *network.Converter) (volts, most float64, ok bool) {
	v, m := d.c.HighOutput(x.Converter)
	if o := x.Output; o != nil && o.Voltage.Set {
		v.Value, m = o.Voltage.Value, nil
	}
	give, m2 := d.c.OutputGives(x.Converter)
	ok = len(m)+len(m2) == 0 && v.Value > 0
	d.unfinished = d.unfinished || !ok
	return v.Value, give.N.Value, ok
}

func (d *deck) idle(x *network.Converter) float64 {
	if !x.Idle.Set || x.Idle.Dim == quantity.Power {
		return x.Idle.Value
	}
	vn, _ := d.c.Nominal(x.In.Hot)
	return x.Idle.Value * vn.Value
}

func efficiency(x *network.Converter) float64 {
	if x.Efficiency.Set {
		return x.Efficiency.Value
	}
	return 0.85
}

// coupled is a converter whose input draws the power of its output over its efficiency, and idles.
func (d *deck) coupled(i int, x *network.Converter, volts, most float64) bool {
	out, idle, eta := d.across(x.Out), d.idle(x), efficiency(x)
	back := x.BlocksReverse.False() && d.takesBack(x.In)
	give := d.regulated(out, volts, droop*volts/most, most, back)
	if x.Kind.Value == "inverter" && !d.driven(x) { // anything may be plugged in: its input is asked alone
		d.outputs[i] = d.draws(x.Out, "-("+give+")")
		d.supplies(x.Out)
		return true
	}
	ceiling := math.Inf(1)
	if x.Rated.Set {
		ceiling = x.Rated.Value
	}
	if w, limited := d.found[i]; limited {
		if w <= idle {
			return false
		}
		ceiling = min(ceiling, eta*(w-idle))
	}
	var limits []string
	if !math.IsInf(ceiling, 1) {
		limits = append(limits, number(ceiling))
	}
	if p := x.Input; p != nil && p.CurrentMax.Set {
		limits = append(limits, fmt.Sprintf("max(0,%s*(%s*%s-%s))", number(eta), d.across(x.In), number(p.CurrentMax.Value), number(idle)))
	}
	for _, w := range limits {
		give = fmt.Sprintf("min(%s,%s/max(%s,%g)-%g*%s)", give, w, out, least, seep, out)
	}
	d.nonlinear = true
	d.outputs[i] = d.draws(x.Out, "-("+give+")")
	watts := fmt.Sprintf("(-%s*%s)", d.outputs[i], out)
	in := fmt.Sprintf("max(%s/%s,%s*%s)", watts, number(eta), watts, number(eta))
	d.inputs[i] = d.draws(x.In, fmt.Sprintf("v(scale)*(%s+%s)*%s", in, number(idle), inverse(d.across(x.In), least)))
	d.powers = append(d.powers, power{x.In, least})
	d.supplies(x.Out)
	return true
}

// takesBack says whether a battery, or a string of them, lies across a port.
func (d *deck) takesBack(p network.Port) bool {
	for i := range d.net.Sources {
		if s := &d.net.Sources[i]; s.Kind.Value == "battery" && d.v.HasSource(i) && d.v.Series(i).Across(p) {
			return true
		}
	}
	return false
}

// driven says whether all that an inverter can be asked for is drawn and within its rating.
func (d *deck) driven(x *network.Converter) bool {
	_, rated, ok := d.loadsOf(x)
	return ok && !rated
}

// loadsOf is the power of an inverter's loads, or its rating where that is asked.
func (d *deck) loadsOf(x *network.Converter) (watts float64, rated, ok bool) {
	known, unknown := 0, 0
	if z := d.net.ZoneOf(x.Out.Hot); z != nil {
		for _, i := range z.Loads {
			l := &d.net.Loads[i]
			vn, have := d.c.Nominal(l.Hot)
			if l.RatedVoltage.Set {
				vn.Value, have = l.RatedVoltage.Value, true
			}
			switch {
			case l.Receptacle.True() || !l.Power.Set && !(l.Draw.Set && have):
				unknown++
			case l.Power.Set:
				watts, known = watts+l.Power.Value, known+1
			default:
				watts, known = watts+l.Draw.Value*vn.Value, known+1
			}
		}
	}
	if x.Rated.Set && (known == 0 || unknown > 0 || watts > x.Rated.Value) {
		return x.Rated.Value, true, true
	}
	return watts, false, known > 0 && unknown == 0
}

// loneInputs are inputs of converters whose outputs are not solved with them: a constant power.
func (d *deck) loneInputs() {
	for i := range d.net.Converters {
		x := &d.net.Converters[i]
		if _, coupled := d.inputs[i]; coupled || d.diodes[i] || !d.v.HasConverter(i) || !d.fed(x.In) || x.Kind.Value == "diode" {
			continue
		}
		watts, ok := d.asks(x)
		w, limited := d.found[i]
		if d.triggered[i] { // it idles
			watts, ok, limited = d.idle(x), true, false
		}
		if !ok && !limited {
			d.unfinished = true
			continue
		}
		if limited && (!ok || w < watts) {
			watts = w
		}
		if watts <= 0 {
			continue
		}
		draw := d.constant(x.In, watts, taper)
		if p := x.Input; p != nil && p.CurrentMax.Set && !d.triggered[i] { // it folds back at its own limit: no power then
			d.powers = d.powers[:len(d.powers)-1]
			draw = fmt.Sprintf("min(%s,%s)", draw, number(p.CurrentMax.Value))
		}
		d.inputs[i] = d.draws(x.In, draw)
	}
}

// asks is the most that a converter's input draws, in W.
func (d *deck) asks(x *network.Converter) (float64, bool) {
	out, ok := 0.0, false
	if x.Kind.Value == "inverter" {
		out, _, ok = d.loadsOf(x)
		ok = ok || out > 0
	} else if v, m := d.c.HighOutput(x.Converter); x.Output != nil && x.Output.CurrentMax.Set && m == nil && v.Value > 0 {
		out, ok = v.Value*x.Output.CurrentMax.Value, true
	} else {
		out, ok = x.Rated.Value, x.Rated.Set
	}
	return out/efficiency(x) + d.idle(x), ok
}
