package spicetest

import (
	"fmt"

	"ferrule/lint/circuit"
	"ferrule/lint/network"
)

func (d *deck) load(i int, l *network.Load) {
	vn := l.RatedVoltage.Value
	if !l.RatedVoltage.Set {
		n, ok := d.c.Nominal(l.Hot)
		if vn = n.Value; !ok && !l.Resistance.Set && !(l.Draw.Set && l.Behavior.Value == "constant-current") {
			return
		}
	}
	if d.set.Starting == i+1 && l.Surge.Set {
		d.loads[i] = d.draws(l.Port, d.steady(l.Port, l.Surge.Value, vn))
		return
	}
	if l.Resistance.Set {
		d.loads[i] = d.draws(l.Port, fmt.Sprintf("%s/%s", d.across(l.Port), number(l.Resistance.Value)))
		return
	}
	if l.Draw.Value == 0 && l.Power.Value == 0 {
		return
	}
	amps, watts := l.Draw.Value, l.Power.Value
	if l.Draw.Set {
		watts = amps * vn
	} else {
		amps = watts / vn
	}
	how := l.Behavior.Value
	if how == "" {
		if how = "resistive"; l.Kind.Value == "electronics" {
			how = "constant-power"
		} else if d.set.Charge == circuit.Empty {
			how, amps = "constant-current", watts/d.lowest(l, vn)
		}
	}
	switch how {
	case "resistive":
		d.loads[i] = d.draws(l.Port, fmt.Sprintf("%s*%s", d.across(l.Port), number(amps/vn)))
	case "constant-current":
		d.loads[i] = d.draws(l.Port, d.steady(l.Port, amps, vn))
	default:
		d.loads[i] = d.draws(l.Port, d.constant(l.Port, watts, taper*vn))
	}
}

// steady is a current that tapers in proportion below a tenth of the rated voltage.
func (d *deck) steady(p network.Port, amps, vn float64) string {
	return fmt.Sprintf("%s*max(-1,min(1,%s/%s))", number(amps), d.across(p), number(taper*max(vn, 1)))
}

// constant is a power that turns into a resistance below its floor.
func (d *deck) constant(p network.Port, watts, floor float64) string {
	floor = max(floor, least)
	d.nonlinear = true
	d.powers = append(d.powers, power{p, floor})
	return fmt.Sprintf("v(scale)*%s*%s", number(watts), inverse(d.across(p), floor))
}

// inverse is 1/u, and a resistance's u below the floor; nothing in it divides by zero.
func inverse(u string, floor float64) string {
	return fmt.Sprintf("min(%s/%s,1/max(%s,%s))", u, number(floor*floor), u, number(floor))
}

// lowest is the least voltage counted at a load of unknown behaviour: nine tenths of the lowest that
// the sources of its zone hold, or its own voltage_min where that is higher.
func (d *deck) lowest(l *network.Load, vn float64) float64 {
	z := d.net.ZoneOf(l.Hot)
	low := 0.0
	take := func(v float64) {
		if v > 0 && (low == 0 || v < low) {
			low = v
		}
	}
	if !z.AC {
		for _, i := range z.Sources {
			s := d.net.Sources[i].Source
			switch s.Kind.Value {
			case "battery":
				if v, m := d.c.BatteryVolts(s); m == nil {
					take(v.Empty.Value)
				}
			case "alternator":
				take(running(s.RegulatedVoltage.Value))
			case "solar":
			default:
				take(s.Voltage.Value)
			}
		}
		for _, i := range z.Outputs {
			if x := &d.net.Converters[i]; x.Output != nil && x.Kind.Value != "diode" {
				take(0.99 * x.Output.Voltage.Value)
			}
		}
	}
	if low == 0 {
		low = vn
	}
	return max(0.9*low, l.VoltageMin.Value)
}
