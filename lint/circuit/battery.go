package circuit

import (
	"ferrule/lint/derive"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// cells gives the cells in series of one unit of a battery, 0 where the plan does not tell.
func cells(s *schema.Source) int {
	if s.Cells.Set {
		return s.Cells.Value
	}
	if !s.Voltage.Set || !s.Chemistry.Set {
		return 0
	}
	return tables.CellsFor(s.Chemistry.Value, s.Voltage.Value)
}

// Volts is a battery's voltage window at its terminals with no current, the whole bank in series.
type Volts struct{ Empty, Rested, Full derive.Number }

// BatteryVolts gives the open-circuit voltages of a battery by chemistry and cells, in V: empty,
// rested full and at the end of charge. They are the trade's figures, so each is an assumption.
func (c *Circuit) BatteryVolts(s *schema.Source) (Volts, []derive.Missing) {
	if !s.Chemistry.Set {
		return Volts{}, missing(s, "chemistry")
	}
	n := cells(s)
	if n == 0 {
		return Volts{}, missing(s, "voltage")
	}
	series := float64(s.Series.Or(1))
	empty, rested, full := tables.BatteryVolts(s.Chemistry.Value, n)
	make := func(name, symbol string, v tables.Value) derive.Number {
		return derive.Assume(name+" volts of "+quote(s), symbol, v.V*series, "V", s.Addr, name+" volts",
			"by chemistry and cells, "+v.Cite.String())
	}
	return Volts{make("empty", "Vempty", empty), make("rested full", "Vrest", rested), make("end-of-charge", "Vfull", full)}, nil
}

// Capacity is a battery unit's capacity in Ah.
func (c *Circuit) Capacity(s *schema.Source) (derive.Number, []derive.Missing) {
	switch {
	case !s.Capacity.Set:
		return derive.Number{}, missing(s, "capacity")
	case s.Capacity.Dim == quantity.Charge:
		return read("capacity of "+quote(s), "C", s.Capacity, "Ah", s, "capacity"), nil
	case !s.Voltage.Set:
		return derive.Number{}, missing(s, "voltage")
	}
	wh := read("energy of "+quote(s), "E", s.Capacity, "Wh", s, "capacity")
	v := read("nominal voltage of "+quote(s), "Vn", s.Voltage, "V", s, "voltage")
	return derive.Compute("capacity of "+quote(s), "C", wh.Value/v.Value, "Ah", "C = E / Vn", wh, v), nil
}

// BatteryOhms gives the low and the high internal resistance of a battery, in ohm, the whole bank.
// A stated resistance replaces both defaults, a stated short-circuit current the low one. stated
// says whether the low one is the plan's own figure.
func (c *Circuit) BatteryOhms(s *schema.Source) (low, high derive.Number, stated bool, lacks []derive.Missing) {
	scale := float64(s.Series.Or(1)) / float64(s.Parallel.Or(1))
	bank := func(name string, unit derive.Number) derive.Number {
		if scale == 1 {
			return unit
		}
		return derive.Compute(name+" resistance of the bank "+quote(s), unit.Symbol, unit.Value*scale, "ohm", "units in series / strings in parallel x resistance of one", unit)
	}
	if s.Resistance.Set {
		r := read("resistance of "+quote(s), "Ri", s.Resistance, "ohm", s, "resistance")
		return bank("internal", r), bank("internal", r), true, nil
	}
	low, high, lacks = c.defaultOhms(s)
	if s.ShortCircuit.Set && s.ShortCircuit.Value > 0 {
		if v, m := c.BatteryVolts(s); m == nil {
			i := read("short-circuit current of "+quote(s), "Isc", s.ShortCircuit, "A", s, "short_circuit")
			unit := derive.Compute("end-of-charge volts of one unit", "Vfull", v.Full.Value/float64(s.Series.Or(1)), "V", "of the bank / units in series", v.Full)
			low, stated = derive.Compute("low resistance of "+quote(s), "Rlow", unit.Value/i.Value, "ohm", "Rlow = Vfull / Isc", unit, i), true
		}
	}
	if low.Kind == 0 {
		return low, high, false, lacks
	}
	if high.Kind == 0 || high.Value < low.Value {
		high = low
	}
	return bank("low", low), bank("high", high), stated, nil
}

// defaultOhms is the trade's figure for one unit, by chemistry and capacity.
func (c *Circuit) defaultOhms(s *schema.Source) (low, high derive.Number, lacks []derive.Missing) {
	ah, m := c.Capacity(s)
	n := cells(s)
	switch {
	case !s.Chemistry.Set:
		return low, high, missing(s, "chemistry")
	case m != nil:
		return low, high, m
	case n == 0:
		return low, high, missing(s, "voltage")
	}
	l, h := tables.BatteryResistance(s.Chemistry.Value, ah.Value, tables.Blocks(s.Chemistry.Value, n))
	k := c.Guesses.resistance()
	low = derive.Assume("low resistance of "+quote(s), "Rlow", l.V*k, "ohm", s.Addr, "resistance", "by chemistry and capacity, "+l.Cite.String())
	high = derive.Assume("high resistance of "+quote(s), "Rhigh", h.V*k, "ohm", s.Addr, "resistance (high)", "by chemistry and capacity, "+h.Cite.String())
	return low, high, nil
}

// Accepts is the charge current a battery takes, in A, the whole bank. unlimited says that no
// figure bounds it: lithium takes what the charger gives.
func (c *Circuit) Accepts(s *schema.Source) (n derive.Number, unlimited bool, lacks []derive.Missing) {
	strings := float64(s.Parallel.Or(1))
	if s.ChargeLimit.Set {
		one := read("charge limit of "+quote(s), "Ichg", s.ChargeLimit, "A", s, "charge_limit")
		if strings == 1 {
			return one, false, nil
		}
		return derive.Compute("charge limit of the bank "+quote(s), "Ichg", one.Value*strings, "A", "strings x charge limit of one", one), false, nil
	}
	if !s.Chemistry.Set {
		return n, true, missing(s, "chemistry")
	}
	if !tables.LeadAcid(s.Chemistry.Value) {
		return n, true, nil
	}
	ah, m := c.Capacity(s)
	if m != nil {
		return n, true, m
	}
	k := tables.Acceptance(s.Chemistry.Value)
	share := derive.Assume("charge current that lead-acid accepts, per Ah", "a", k.V, "A/Ah", s.Addr, "charge_limit", k.Cite.String())
	return derive.Compute("charge current "+quote(s)+" accepts", "Ichg", k.V*ah.Value*strings, "A", "Ichg = a x C x strings", share, ah), false, nil
}
