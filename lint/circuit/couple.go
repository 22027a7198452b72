package circuit

import (
	"math"

	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/solve"
)

// supplies adds what converters give, until nothing more is energised: those with both sides in the
// zone as one coupled part, those with the output alone as a supply that is on.
func (w *wiring) supplies() {
	z := w.view.Zone
	inside := map[int]bool{}
	for _, i := range z.Inputs {
		inside[i] = true
	}
	for _, i := range z.Outputs {
		if x := &w.c.Net.Converters[i]; w.view.HasConverter(i) && !inside[i] && w.known(x.Out) && !w.view.Joined(x.Out.Hot, x.Out.Ret) {
			w.outputAlone(i)
		}
	}
	done := map[int]bool{}
	for changed := true; changed; {
		changed = false
		for _, i := range z.Outputs {
			x := &w.c.Net.Converters[i]
			if done[i] || !inside[i] || !w.view.HasConverter(i) || !w.fed(x.In) || !w.known(x.Out) || w.view.Joined(x.Out.Hot, x.Out.Ret) {
				continue
			}
			done[i], changed = true, true
			w.couple(i)
		}
	}
}

// takers adds the inputs that stand in the zone alone, or whose output drives nothing in it.
func (w *wiring) takers() {
	for _, i := range w.view.Zone.Inputs {
		x := &w.c.Net.Converters[i]
		_, coupled := w.converters[i]
		_, diode := w.diodes[i]
		if !coupled && !diode && !w.set.stopped[i] && w.view.HasConverter(i) && w.fed(x.In) {
			w.inputAlone(i)
		}
	}
}

// output is a converter's output as a regulated supply: volts, the droop's resistance, the limit.
func (w *wiring) output(x *network.Converter) (e solve.Element, ok bool) {
	volts, m := w.c.HighOutput(x.Converter)
	if p := x.Output; p != nil && p.Voltage.Set {
		volts, m = read("output voltage of "+quote(x.Converter), "Vout", p.Voltage, "V", x.Converter, "output voltage"), nil
	}
	give, m2 := w.c.OutputGives(x.Converter)
	if m = merge(m, m2...); len(m) > 0 || volts.Kind == 0 {
		w.lack(m...)
		return e, false
	}
	most := w.note(x.Addr, give.N)
	return solve.Element{Kind: solve.Regulated, Volts: w.note(x.Addr, volts), Ohms: droop * volts.Value / most, Amps: most, Back: x.BlocksReverse.False()}, true
}

func (w *wiring) outputAlone(i int) {
	x := &w.c.Net.Converters[i]
	if x.Kind.Value == "diode" {
		w.lack(derive.Missing{Subject: x.Addr, Attribute: "what feeds it"})
		return
	}
	if e, ok := w.output(x); ok {
		e.Back = false // what would take it is not here
		w.outputs[i] = w.add(x.Out, e)
		w.supply(x.Out)
	}
}

// couple joins both sides of a converter. Current runs back through it only onto a battery: nothing else
// there takes any.
func (w *wiring) couple(i int) {
	x := &w.c.Net.Converters[i]
	if x.Kind.Value == "diode" {
		w.diode(i)
		return
	}
	if w.set.stopped[i] {
		w.standby(i)
		return
	}
	if x.Kind.Value == "inverter" && !w.drives(x) {
		if e, ok := w.output(x); ok {
			w.outputs[i] = w.add(x.Out, e)
			w.supply(x.Out)
		}
		return // its input stands alone, at its rating
	}
	e, ok := w.output(x)
	if !ok {
		return
	}
	k := solve.Converter{Volts: e.Volts, Ohms: e.Ohms, Amps: e.Amps, Back: e.Back && w.held(x.In), Efficiency: w.efficiency(x), Idle: w.idle(x)}
	k.InP, k.InN = int(w.view.Zone.Local(x.In.Hot)), int(w.view.Zone.Local(x.In.Ret))
	k.OutP, k.OutN = int(w.view.Zone.Local(x.Out.Hot)), int(w.view.Zone.Local(x.Out.Ret))
	if x.Rated.Set {
		k.Ceiling = w.note(x.Addr, read("rated power of "+quote(x.Converter), "Prated", x.Rated, "W", x.Converter, "rated"))
	}
	if p := x.Input; p != nil && p.CurrentMax.Set {
		k.InAmps = w.note(x.Addr, read("input limit of "+quote(x.Converter), "Imax", p.CurrentMax, "A", x.Converter, "input current_max"))
	}
	if most, limited := w.tracked(x); limited {
		if most <= k.Idle {
			return
		}
		if give := (most - k.Idle) * k.Efficiency; k.Ceiling == 0 || give < k.Ceiling {
			k.Ceiling = give
		}
	}
	w.converters[i] = len(w.net.Converters)
	w.net.Converters = append(w.net.Converters, k)
	w.supply(x.Out)
}

// drives says whether an inverter's loads are all drawn: a socket, or no load at all, may ask its rating.
func (w *wiring) drives(x *network.Converter) bool {
	p, m := w.c.inverterPower(x)
	return m == nil && p.Kind == derive.Formula
}

func (w *wiring) efficiency(x *network.Converter) float64 {
	return w.note(x.Addr, w.c.efficiency(x))
}

// diode lets current pass one way: without loss where volts are asked high, with the usual loss where
// batteries are empty.
func (w *wiring) diode(i int) {
	x := &w.c.Net.Converters[i]
	drop := 0.0
	if w.set.Charge == Empty {
		drop = w.note(x.Addr, derive.Assume("forward voltage of "+quote(x.Converter), "Vf", 0.7, "V", x.Addr, "forward voltage", "common practice"))
	}
	a, b := w.view.Zone.Local(x.In.Hot), w.view.Zone.Local(x.Out.Hot)
	w.diodes[i] = len(w.net.Elements)
	w.net.Elements = append(w.net.Elements, solve.Element{Kind: solve.Valve, P: int(a), N: int(b), Volts: drop, Ohms: smallOhms * 1e3})
	w.join(a, b)
}

// inputAlone is the most that a converter's input asks for: a constant power.
func (w *wiring) inputAlone(i int) {
	x := &w.c.Net.Converters[i]
	if x.Kind.Value == "diode" {
		w.lack(derive.Missing{Subject: x.Addr, Attribute: "what it feeds"})
		return
	}
	in, m := w.c.inputPower(x)
	most, limited := w.tracked(x)
	if in.Kind == 0 && !limited {
		w.lack(m...)
		return
	}
	watts := math.Inf(1)
	if in.Kind != 0 {
		watts = w.note(x.Addr, in)
	}
	if limited && most < watts {
		watts = most
	}
	if watts > 0 {
		e := solve.Element{Kind: solve.Power, Watts: watts, Floor: steadyFloor}
		if p := x.Input; p != nil && p.CurrentMax.Set { // it folds back at its own limit
			e.Amps = w.note(x.Addr, read("input limit of "+quote(x.Converter), "Imax", p.CurrentMax, "A", x.Converter, "input current_max"))
		}
		w.inputs[i] = w.add(x.In, e)
	}
}

// tracked is the most power that a tracker finds at its input, behind the cable: what the arrays and
// supplies there give at most. limited is false for other converters, and where a battery feeds it.
func (w *wiring) tracked(x *network.Converter) (most float64, limited bool) {
	if x.Kind.Value != "mppt" {
		return 0, false
	}
	for i, k := range w.sources {
		if w.net.Elements[k].Kind == solve.Battery && w.view.Joined(w.c.Net.Sources[i].Hot, x.In.Hot) {
			return 0, false
		}
	}
	return w.c.Memory.MostInto(&w.net, int(w.view.Zone.Local(x.In.Hot)), int(w.view.Zone.Local(x.In.Ret)), w.sharers(x))
}

// sharers counts the trackers on the same supply as one.
func (w *wiring) sharers(x *network.Converter) int {
	n := 0
	for _, i := range w.view.Zone.Inputs {
		o := &w.c.Net.Converters[i]
		if o.Kind.Value == "mppt" && w.view.HasConverter(i) && w.view.Joined(o.In.Hot, x.In.Hot) {
			n++
		}
	}
	return max(n, 1)
}

// standby is a converter that does not start: its output is dead, and its input draws no more than it
// idles.
func (w *wiring) standby(i int) {
	x := &w.c.Net.Converters[i]
	if watts := w.idle(x); watts > 0 {
		w.inputs[i] = w.add(x.In, solve.Element{Kind: solve.Power, Watts: watts, Floor: steadyFloor})
	}
}

// stopUntriggered marks the converters whose input stands below the voltage that starts them; it is
// false where there is none left to stop.
func (w *wiring) stopUntriggered(p *Point) bool {
	stopped := false
	for i := range w.converters {
		x := &w.c.Net.Converters[i]
		if t := x.Trigger; !t.Set || t.Ignition {
			continue
		}
		if v, ok := p.Across(x.In); ok && v < x.Trigger.Volts {
			w.set.stopped[i], stopped = true, true
		}
	}
	return stopped
}
