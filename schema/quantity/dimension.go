package quantity

// dimension is what there is to know about a Dimension: its name in a sentence, the symbol that
// struct tags and reports use for its SI unit, and the units that a plan may write, in the order
// in which hints list them.
type dimension struct {
	name, symbol string
	units        []unit
}

// unit is one way to write a dimension: value = number * factor + offset.
type unit struct {
	symbol string
	factor float64
	offset float64
}

var dimensions = [...]dimension{
	Current:     {"a current", "A", []unit{{"A", 1, 0}, {"mA", 1e-3, 0}, {"kA", 1e3, 0}}},
	Voltage:     {"a voltage", "V", []unit{{"V", 1, 0}, {"mV", 1e-3, 0}, {"kV", 1e3, 0}}},
	Resistance:  {"a resistance", "ohm", []unit{{"ohm", 1, 0}, {"mohm", 1e-3, 0}, {"kohm", 1e3, 0}}},
	Power:       {"a power", "W", []unit{{"W", 1, 0}, {"mW", 1e-3, 0}, {"kW", 1e3, 0}}},
	Charge:      {"a charge", "Ah", []unit{{"Ah", 1, 0}, {"mAh", 1e-3, 0}}},
	Energy:      {"an energy", "Wh", []unit{{"Wh", 1, 0}, {"kWh", 1e3, 0}}},
	Length:      {"a length", "m", []unit{{"m", 1, 0}, {"cm", 1e-2, 0}, {"mm", 1e-3, 0}, {"ft", 0.3048, 0}, {"in", 0.0254, 0}, {"yd", 0.9144, 0}}},
	Temperature: {"a temperature", "C", []unit{{"C", 1, 0}, {"F", 5.0 / 9, -160.0 / 9}}},
	Duration:    {"a duration", "s", []unit{{"s", 1, 0}, {"ms", 1e-3, 0}, {"min", 60, 0}, {"h", 3600, 0}, {"d", 86400, 0}}},
	Ratio:       {"a ratio", "1", []unit{{"%", 1e-2, 0}}},
	Coefficient: {"a temperature coefficient", "1/C", []unit{{"%/C", 1e-2, 0}, {"1/C", 1, 0}}},

	VoltageCoefficient: {"a voltage coefficient", "V/C", []unit{{"mV/C", 1e-3, 0}, {"V/C", 1, 0}}},
}

// find gives the unit that a symbol names and its dimension. A few other spellings of the same
// symbol are taken: the ohm and degree signs, and a kelvin in the denominator, where a difference
// of one kelvin is one degree Celsius.
func find(symbol string) (Dimension, unit, bool) {
	s := canonical(symbol)
	for d := Current; d <= VoltageCoefficient; d++ {
		for _, u := range dimensions[d].units {
			if u.symbol == s {
				return d, u, true
			}
		}
	}
	return 0, unit{}, false
}

// String is the dimension in a sentence: "a current".
func (d Dimension) String() string {
	if d == 0 || int(d) >= len(dimensions) {
		return "nothing"
	}
	return dimensions[d].name
}

// Symbol is the symbol of the unit that values of the dimension are held in: "A", "ohm", "Ah",
// "1" for a ratio.
func (d Dimension) Symbol() string {
	if d == 0 || int(d) >= len(dimensions) {
		return ""
	}
	return dimensions[d].symbol
}

// Units lists the units in which a plan may write the dimension. A ratio may also be a bare
// number, which the list does not show.
func (d Dimension) Units() []string {
	if d == 0 || int(d) >= len(dimensions) {
		return nil
	}
	var out []string
	for _, u := range dimensions[d].units {
		out = append(out, u.symbol)
	}
	return out
}

// Of gives the dimension with a symbol, 0 where there is none.
func Of(symbol string) Dimension {
	for d := Current; d <= VoltageCoefficient; d++ {
		if dimensions[d].symbol == symbol {
			return d
		}
	}
	return 0
}
