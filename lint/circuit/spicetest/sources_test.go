package spicetest

import (
	"fmt"
	"math"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
)

func (d *deck) source(i int, s *network.Source) {
	switch s.Kind.Value {
	case "battery":
		d.battery(i, s)
	case "solar":
		d.array(i, s)
	default:
		d.regulatedSource(i, s)
	}
}

// battery is an electromotive force behind a resistance, by charge corner; at the end of charge it sits
// at the highest setpoint of the chargers that reach it, else rested full. Lead-acid accepts so much.
func (d *deck) battery(i int, s *network.Source) {
	volts, m := d.c.BatteryVolts(s.Source)
	low, high, _, m2 := d.c.BatteryOhms(s.Source)
	if len(m)+len(m2) > 0 {
		d.unfinished = true
		return
	}
	emf := volts.Rested.Value
	switch d.set.Charge {
	case circuit.Empty:
		emf = volts.Empty.Value
	case circuit.EndOfCharge:
		if top := d.setpoint(s.Port); top > 0 {
			emf = top
		}
	}
	ohms := low.Value
	if d.set.High {
		ohms = high.Value
	}
	draw := fmt.Sprintf("(%s-%s)/%s", d.across(s.Port), number(emf), number(ohms))
	if n, endless, m := d.c.Accepts(s.Source); m == nil && !endless {
		draw = fmt.Sprintf("min(%s,%s+%g*(%s-%s))", draw, number(n.Value), seep, d.across(s.Port), number(emf+ohms*n.Value))
	}
	d.sources[i] = d.draws(s.Port, draw)
	d.supplies(s.Port)
}

// setpoint is the highest that alternators, supplies and converters joined to a port hold.
func (d *deck) setpoint(p network.Port) float64 {
	top := 0.0
	for i := range d.net.Sources {
		s := &d.net.Sources[i]
		if k := s.Kind.Value; (k == "alternator" || k == "supply") && d.v.HasSource(i) && d.v.Across(s.Port, p) {
			if s.RegulatedVoltage.Set {
				top = max(top, s.RegulatedVoltage.Value)
			} else if k == "supply" {
				top = max(top, s.Voltage.Value)
			}
		}
	}
	for i := range d.net.Converters {
		if x := &d.net.Converters[i]; d.v.HasConverter(i) && d.v.Across(x.Out, p) {
			if v, m := d.c.HighOutput(x.Converter); m == nil {
				top = max(top, v.Value)
			}
		}
	}
	return top
}

// array is the single-diode model through the four figures of a data sheet; ngspice's own diode stands
// for the junction.
func (d *deck) array(i int, s *network.Source) {
	if d.set.Dark {
		return
	}
	if !(s.Voc.Set && s.Isc.Set && s.Vmp.Set && s.Imp.Set) {
		d.unfinished = true
		return
	}
	series, parallel := float64(s.Series.Or(1)), float64(s.Parallel.Or(1))
	voc := s.Voc.Value
	if d.set.Charge == circuit.EndOfCharge {
		if cold, m := d.c.ColdVoc(s.Source); m == nil {
			voc = cold.Value / series
		}
	}
	isc, vmp, imp := s.Isc.Value, s.Vmp.Value, s.Imp.Value
	// At the point of most power dI/dU = -I/U; with the curve's shape, a and Rs follow.
	shape := math.Log((isc - imp) / isc)
	a := (2*vmp - voc) / (imp/(isc-imp) + shape)
	rs := (voc - vmp + a*shape) / imp
	if !(a > 0) || rs < 0 {
		a, rs = (vmp-voc)/shape, 0
	}
	const thermal = 1.38064852e-23 * 300.15 / 1.6021766208e-19 // V, of ngspice's diode at 27 C
	d.nonlinear = true
	d.devices++
	d.supplies(s.Port)
	if d.keep != nil && !d.keep(s.Hot) {
		return
	}
	k, hot, ret := d.devices, d.node(s.Hot), d.node(s.Ret)
	d.cells = append(d.cells, junction{k, s.Ret, isc * parallel, isc * parallel / math.Expm1(voc/a), a * series})
	d.line(".model m%d d(is=%s n=%s)", k, number(isc*parallel/math.Expm1(voc/a)), number(a*series/thermal))
	d.line("il%d %s j%d %s\nd%d j%d %s m%d", k, ret, k, number(isc*parallel), k, k, ret, k)
	if rs == 0 {
		d.line("vm%d %s j%d 0", k, hot, k)
	} else {
		d.line("rs%d j%d y%d %s\nvm%d %s y%d 0", k, k, k, number(rs*series/parallel), k, hot, k)
	}
	d.sources[i] = fmt.Sprintf("i(vm%d)", k)
}

// regulatedSource holds its voltage with a droop until its rating. A running alternator idles at 12.4 V
// for each 12 V of class where batteries are empty.
func (d *deck) regulatedSource(i int, s *network.Source) {
	volts := s.Voltage.Value
	if s.Kind.Value == "alternator" || s.Kind.Value == "supply" && s.RegulatedVoltage.Set {
		volts = s.RegulatedVoltage.Value
	}
	if s.Kind.Value == "alternator" && (d.set.Charge == circuit.Empty || volts == 0) {
		volts = 12.4
		if s.RegulatedVoltage.Set {
			volts = running(s.RegulatedVoltage.Value)
		}
	}
	if volts == 0 {
		d.unfinished = true
		return
	}
	if give, m := d.c.SourceGives(s.Source); m == nil {
		d.sources[i] = d.draws(s.Port, fmt.Sprintf("-(%s)", d.regulated(d.across(s.Port), volts, droop*volts/give.N.Value, give.N.Value, false)))
	} else {
		d.unfinished = true
		d.sources[i] = d.draws(s.Port, fmt.Sprintf("(%s-%s)/%s", d.across(s.Port), number(volts), number(droop*volts/50)))
	}
	d.supplies(s.Port)
}

// running is the voltage of an alternator that idles, for the class of its regulated voltage: 14 V is of
// class 12, 28 V of 24, 56 V of 48; what lies between the classes is one of its own.
func running(regulated float64) float64 {
	for _, k := range []struct{ above, upTo, class float64 }{{10, 16, 12}, {20, 32, 24}, {34, 45, 36}, {46, 60, 48}} {
		if regulated > k.above && regulated <= k.upTo {
			return 12.4 * k.class / 12
		}
	}
	return 12.4 * regulated / 12
}

// regulated is the current that a regulated output gives at a voltage, as an expression.
func (d *deck) regulated(u string, volts, ohms, most float64, back bool) string {
	d.nonlinear = true
	give := fmt.Sprintf("(%s-%s)/%s", number(volts), u, number(ohms))
	if !back {
		give = fmt.Sprintf("max(%s,%g*(%s-%s))", give, leak, number(volts), u)
	}
	return fmt.Sprintf("min(%s,%s+%g*(%s-%s))", give, number(most), seep, number(volts-ohms*most), u)
}
