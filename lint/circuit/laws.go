package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/network"
	"ferrule/lint/solve"
	"ferrule/schema"
)

// droop is how much a regulated output gives way at its rated current.
const droop = 0.01

// steadyFloor is the share of a circuit's voltage below which a load of constant current takes less.
const steadyFloor = 0.1

// note keeps a number for derivations, and gives its value.
func (w *wiring) note(addr string, n derive.Number) float64 {
	w.notes[0], w.numbers = append(w.notes[0], note{addr, n}), nil
	return n.Value
}

func (w *wiring) lack(m ...derive.Missing) { w.lacks = merge(w.lacks, m...) }

// source adds a source that is there.
func (w *wiring) source(i int) {
	s := &w.c.Net.Sources[i]
	if !w.known(s.Port) || w.view.Joined(s.Hot, s.Ret) {
		return
	}
	var e solve.Element
	var ok bool
	switch s.Kind.Value {
	case "battery":
		e, ok = w.battery(s)
	case "solar":
		e, ok = w.array(s.Source)
	default:
		e, ok = w.regulatedSource(s.Source)
	}
	if ok {
		w.sources[i] = w.add(s.Port, e)
		w.supply(s.Port)
	}
}

func (w *wiring) battery(s *network.Source) (e solve.Element, ok bool) {
	volts, m := w.c.BatteryVolts(s.Source)
	low, high, _, m2 := w.c.BatteryOhms(s.Source)
	if m = merge(m, m2...); len(m) > 0 {
		w.lack(m...)
		return e, false
	}
	emf := volts.Rested
	switch w.set.Charge {
	case Empty:
		emf = volts.Empty
	case EndOfCharge:
		if n, ok := w.setpoint(s.Port); ok {
			emf = n
		}
	}
	r := low
	if w.set.High {
		r = high
	}
	e = solve.Element{Kind: solve.Battery, Volts: w.note(s.Addr, emf), Ohms: w.note(s.Addr, r)}
	if n, endless, m := w.c.Accepts(s.Source); m == nil && !endless {
		e.Amps = w.note(s.Addr, n)
	}
	return e, true
}

// setpoint is the highest voltage that chargers joined to a battery hold.
func (w *wiring) setpoint(p network.Port) (best derive.Number, ok bool) {
	take := func(n derive.Number, m []derive.Missing) {
		if m == nil && n.Kind != 0 && n.Value > best.Value {
			best, ok = n, true
		}
	}
	for _, i := range w.view.Zone.Sources {
		s := &w.c.Net.Sources[i]
		if k := s.Kind.Value; (k == "alternator" || k == "supply") && w.view.HasSource(i) && w.view.Across(s.Port, p) {
			take(w.c.highOf(s.Source))
		}
	}
	for _, i := range w.view.Zone.Outputs {
		if x := &w.c.Net.Converters[i]; w.view.HasConverter(i) && w.view.Across(x.Out, p) {
			take(w.c.HighOutput(x.Converter))
		}
	}
	return best, ok
}

func (w *wiring) array(s *schema.Source) (e solve.Element, ok bool) {
	for _, q := range []struct {
		q    schema.Quantity
		name string
	}{{s.Voc, "voc"}, {s.Isc, "isc"}, {s.Vmp, "vmp"}, {s.Imp, "imp"}} {
		if !q.q.Set {
			w.lack(missing(s, q.name)...)
			ok = true
		}
	}
	if ok || w.set.Dark {
		return e, false
	}
	voc := s.Voc.Value
	w.note(s.Addr, read("open-circuit voltage of one module", "Voc", s.Voc, "V", s, "voc"))
	w.note(s.Addr, read("short-circuit current of one module", "Isc", s.Isc, "A", s, "isc"))
	w.note(s.Addr, read("voltage of one module at most power", "Vmp", s.Vmp, "V", s, "vmp"))
	w.note(s.Addr, read("current of one module at most power", "Imp", s.Imp, "A", s, "imp"))
	if w.set.Charge == EndOfCharge {
		if cold, m := w.c.ColdVoc(s); m == nil {
			voc = w.note(s.Addr, cold) / float64(s.Series.Or(1))
		}
	}
	cell, ok := solve.NewCell(voc, s.Isc.Value, s.Vmp.Value, s.Imp.Value, 1, s.Series.Or(1), s.Parallel.Or(1))
	return solve.Element{Kind: solve.Array, Cell: cell}, ok
}

// regulatedSource is an alternator, a supply, shore power or a generator.
func (w *wiring) regulatedSource(s *schema.Source) (e solve.Element, ok bool) {
	volts, m := w.c.highOf(s)
	if s.Kind.Value == "alternator" && (w.set.Charge == Empty || m != nil) {
		volts, m = w.c.lowOf(s), nil
	}
	if m != nil || volts.Kind == 0 {
		w.lack(m...)
		return e, false
	}
	give, m := w.c.SourceGives(s)
	if m != nil {
		w.lack(m...)
		return solve.Element{Kind: solve.Battery, Volts: w.note(s.Addr, volts), Ohms: droop * volts.Value / unrated}, true
	}
	most := w.note(s.Addr, give.N)
	return solve.Element{Kind: solve.Regulated, Volts: w.note(s.Addr, volts), Ohms: droop * volts.Value / most, Amps: most}, true
}

// unrated is the current, in A, for which a source without a rating counts its droop; that it has none
// is named.
const unrated = 50

// loadCase says of a load all that its law depends on.
type loadCase struct {
	load            int
	starting, empty bool
}

// loadLaw is a load's law, with what it was made of and what is missing.
type loadLaw struct {
	e     solve.Element
	ok    bool
	notes []note
	lacks []derive.Missing
}

// load adds a load that is fed.
func (w *wiring) load(i int) {
	k := loadCase{i, w.set.Starting == i+1, w.set.Charge == Empty}
	law, ok := w.c.laws[k]
	if !ok {
		alone := &wiring{c: w.c, set: w.set, notes: [][]note{nil}}
		law.e, law.ok = alone.lawOf(i)
		law.notes, law.lacks = alone.notes[0], alone.lacks
		w.c.laws[k] = law
	}
	w.notes, w.numbers = append(w.notes, law.notes), nil
	w.lack(law.lacks...)
	if law.ok {
		w.loads[i] = w.add(w.c.Net.Loads[i].Port, law.e)
	}
}

// lawOf is what a load does at a setting.
func (w *wiring) lawOf(i int) (e solve.Element, ok bool) {
	l := &w.c.Net.Loads[i]
	vn, ok := w.c.rated(l)
	if !ok && !(l.Draw.Set && l.Behavior.Value == "constant-current") && !l.Resistance.Set {
		if l.Draw.Set || l.Power.Set {
			w.lack(missing(l.Load, "rated_voltage")...)
		}
		return e, false
	}
	if w.set.Starting == i+1 && l.Surge.Set {
		return solve.Element{Kind: solve.Steady, Amps: w.note(l.Addr, read("starting current of "+quote(l.Load), "Is", l.Surge, "A", l.Load, "surge")), Floor: steadyFloor * max(vn.Value, 1)}, true
	}
	return w.law(l, vn)
}

// law is a load's behaviour: the stated one; else constant power for electronics. Of the others
// nothing is known: where batteries are empty they count as the steady current that a constant power
// draws at low volts, which can starve and cannot collapse; where volts are high, as resistive.
func (w *wiring) law(l *network.Load, vn derive.Number) (e solve.Element, ok bool) {
	how := l.Behavior.Value
	if how == "" {
		how = "resistive"
		if l.Kind.Value == "electronics" {
			how = "constant-power"
		}
	}
	switch {
	case l.Resistance.Set:
		return solve.Element{Kind: solve.Resistor, Ohms: w.note(l.Addr, read("resistance of "+quote(l.Load), "R", l.Resistance, "ohm", l.Load, "resistance"))}, true
	case !l.Draw.Set && !l.Power.Set:
		w.lack(missing(l.Load, "draw")...)
		return e, false
	case l.Draw.Value == 0 && l.Power.Value == 0:
		return e, false
	}
	amps, watts := w.figures(l, vn)
	if l.Behavior.Value == "" && how == "resistive" && w.set.Charge == Empty {
		low, _ := w.c.window(l, vn)
		how, amps = "constant-current", derive.Compute("current of "+quote(l.Load)+" at low volts", "I", watts.Value/low.Value, "A", "I = P / Vlow: no behavior is written, and constant power draws most", watts, low)
	}
	switch how {
	case "constant-current":
		return solve.Element{Kind: solve.Steady, Amps: w.note(l.Addr, amps), Floor: steadyFloor * max(vn.Value, 1)}, true
	case "resistive":
		return solve.Element{Kind: solve.Resistor, Ohms: w.note(l.Addr, derive.Compute("resistance of "+quote(l.Load), "R", vn.Value/amps.Value, "ohm", "R = Vn / I0", vn, amps))}, true
	}
	return solve.Element{Kind: solve.Power, Watts: w.note(l.Addr, watts), Floor: steadyFloor * vn.Value}, true
}

// figures are a load's current and power at its rated voltage.
func (w *wiring) figures(l *network.Load, vn derive.Number) (amps, watts derive.Number) {
	if l.Draw.Set {
		amps = read("draw of "+quote(l.Load), "I0", l.Draw, "A", l.Load, "draw")
		return amps, derive.Compute("power of "+quote(l.Load), "P", amps.Value*vn.Value, "W", "P = I0 x Vn", known(amps, vn)...)
	}
	watts = read("power of "+quote(l.Load), "P", l.Power, "W", l.Load, "power")
	return derive.Compute("current of "+quote(l.Load), "I0", watts.Value/vn.Value, "A", "I0 = P / Vn", known(watts, vn)...), watts
}

// idle is what a converter draws with nothing on its output, in W.
func (w *wiring) idle(x *network.Converter) float64 {
	n := w.c.idlePower(x)
	if n.Kind == 0 {
		return 0
	}
	return w.note(x.Addr, n)
}
