package schema

import (
	"github.com/hashicorp/hcl/v2"

	"ferrule/schema/quantity"
)

// climate relates the temperatures of a place. What a compartment or an array leaves out is the
// system's; the heat of an engine space is no figure of the plan.
func (d *decoder) climate(coldest, ambient Quantity, engine bool) {
	if !coldest.Set {
		coldest = d.plan.System.Coldest
	}
	if !ambient.Set && !engine {
		ambient = d.plan.System.Ambient
	}
	d.relate(relation{says("coldest", coldest), 0, 1, says("ambient", ambient)})
}

func (d *decoder) relateSource(x *Source) {
	voltage, cutOff := says("voltage", x.Voltage), Quantity{}
	if x.BMS != nil {
		cutOff = x.BMS.OpensAbove
	}
	vmp, imp := says("vmp", x.Vmp), says("imp", x.Imp)
	d.relate(
		relation{says("charge_voltage_max", x.ChargeVoltageMax), 1, 1.6, voltage},
		relation{says("opens_above", cutOff), 1, 1.6, voltage},
		relation{says("regulated_voltage", x.RegulatedVoltage), 0.8, 1.6, voltage},
		relation{says("max_series_fuse", x.MaxSeriesFuse), 1, noLimit, says("isc", x.Isc)},
		// Below these shares the curve would be a hollow one, above them no curve with a knee.
		relation{imp, 0.5, 0.995, says("isc", x.Isc)},
		relation{vmp, 0.5, 0.99, says("voc", x.Voc)},
		relation{vmp.times(imp, quantity.Power), 0, 1, usual("what a module may give", "20 kW", hcl.Range{}, 20e3, quantity.Power)},
	)
	d.relateBattery(x)
}

// relateBattery relates the figures of a battery. Into a short it gives its volts over its ohms, which
// is more than what empties it in an hour.
func (d *decoder) relateBattery(x *Source) {
	voltage := says("voltage", x.Voltage)
	hour := says("capacity in one hour", x.Capacity).as(quantity.Current)
	if x.Capacity.Dim == quantity.Energy {
		hour = hour.over(voltage, quantity.Current)
	}
	short := voltage.over(says("resistance", x.Resistance), quantity.Current)
	discharge, given := says("discharge_limit", x.DischargeLimit), says("short_circuit", x.ShortCircuit)
	surge := says("surge_limit", x.SurgeLimit)
	d.relate(
		relation{discharge, 0.001, 200, hour},
		relation{says("charge_limit", x.ChargeLimit), 0.001, 200, hour},
		relation{given, 1, 10000, hour},
		relation{given, 1, noLimit, discharge},
		relation{surge, 1, noLimit, discharge},
		relation{given, 1, noLimit, surge},
		relation{short, 1, 10000, hour},
		relation{short, 1, noLimit, discharge},
		relation{short, 1, noLimit, surge},
		relation{given, 0.1, 10, short},
		relation{voltage.over(counts("cells", x.Cells), quantity.Voltage), 0.6, 1.25, cell(x.Chemistry)},
	)
}

// cell is the nominal voltage of a cell, by what the plan says of its chemistry.
func cell(chemistry Text) claim {
	volts := 2.0 // lead-acid
	switch chemistry.Value {
	case "lifepo4":
		volts = 3.2
	case "li-ion":
		volts = 3.7
	}
	if !chemistry.Set {
		return claim{}
	}
	text := quantity.Format(volts, quantity.Voltage)
	return usual("a cell's "+text, "chemistry "+chemistry.Value, chemistry.Range, volts, quantity.Voltage)
}

func (d *decoder) relateFuse(x *Fuse) {
	rating := says("rating", x.Rating)
	d.relate(relation{rating, 0, 1, says("interrupting", x.Interrupting)})
	if x.Curve.Set { // a device carries its rating: its curve begins above
		first := quantity.Quantity{Value: x.Curve.Points[0].Amps, Dim: quantity.Current}
		d.relate(relation{says("curve, first current", Quantity{x.Curve.Attr, first}), 1, 20, rating})
	}
}

// relateConverter relates a converter's sides: it gives no more than it takes, and what it is rated
// for is near what its output says.
func (d *decoder) relateConverter(x *Converter) {
	in, out := &Port{}, &Port{}
	if x.Input != nil {
		in = x.Input
	}
	if x.Output != nil {
		out = x.Output
	}
	most, taken, given := says("input voltage_max", in.VoltageMax), says("input current_max", in.CurrentMax), says("output current_max", out.CurrentMax)
	volts, rated, idle := says("output voltage", out.Voltage), says("rated", x.Rated), says("idle", x.Idle)
	power := volts.times(given, quantity.Power)
	trigger := quantity.Quantity{Value: x.Trigger.Volts, Dim: quantity.Voltage}
	d.relate(
		relation{says("voltage_min", in.VoltageMin), 0.01, 1, says("voltage_max", in.VoltageMax)},
		relation{says("float", out.Float), 0.5, 1.25, volts},
		relation{says("equalize", out.Equalize), 1, 1.5, volts},
		relation{says("equalize", out.Equalize), 1, noLimit, says("float", out.Float)},
		relation{idle, 0, 1, rated},
		relation{idle, 0, 1, taken},
		relation{power, 0.1, 10, rated},
		relation{power, 0, 1.5, most.times(taken, quantity.Power)},
	)
	if x.Trigger.Set && !x.Trigger.Ignition {
		d.relate(relation{says("trigger", Quantity{x.Trigger.Attr, trigger}), 0, 1, most})
	}
}

func (d *decoder) relateLoad(x *Load) {
	least, most, rated := says("voltage_min", x.VoltageMin), says("voltage_max", x.VoltageMax), says("rated_voltage", x.RatedVoltage)
	draw, surge, fuse := says("draw", x.Draw), says("surge", x.Surge), says("max_fuse", x.MaxFuse)
	drawn := says("power", x.Power).over(rated, quantity.Current)
	d.relate(
		relation{least, 0.01, 1, most},
		relation{least, 0.1, 1, rated},
		relation{rated, 0.1, 1, most},
		relation{draw, 0, 1, surge},
		relation{drawn, 0, 1, surge},
		// A device of half the draw holds a motor that runs for a minute.
		relation{draw, 0, 2, fuse},
		relation{drawn, 0, 2, fuse},
	)
	if x.HoldUp.Set && x.HoldUp.Value > 0 && x.OwnBattery.False() {
		d.contradiction(x.HoldUp.Range, "hold_up, %s, is of its own battery, and own_battery is false at %s.", x.HoldUp.Quantity, place(x.OwnBattery.Range))
	}
}
