package tables

import "math"

// LeadAcid reports whether a chemistry is a lead-acid one: "flooded", "agm", "gel".
func LeadAcid(chemistry string) bool {
	return chemistry == "flooded" || chemistry == "agm" || chemistry == "gel"
}

// Lithium reports whether a chemistry is a lithium one: "lifepo4", "li-ion".
func Lithium(chemistry string) bool { return chemistry == "lifepo4" || chemistry == "li-ion" }

// mostVolts bounds the nominal voltage that a cell count is derived for.
const mostVolts = 2000

// CellsFor is the number of cells in series that a nominal voltage means: lead-acid 2 V a cell,
// lifepo4 3.2 V, li-ion 3.7 V. Labels name a battery by anything between its rested volts and its
// charging volts, so a figure in that window of a whole 12 V block means whole blocks: 13 V is 6
// lead-acid cells and 14.4 V 4 of lifepo4. 0 where the chemistry or the voltage says nothing.
func CellsFor(chemistry string, nominalVolts float64) int {
	if !(nominalVolts > 0 && nominalVolts <= mostVolts) {
		return 0
	}
	switch {
	case LeadAcid(chemistry):
		return cellsIn(nominalVolts, 6, 2, 2.45, 2)
	case chemistry == "li-ion":
		return int(math.Round(nominalVolts / 3.7))
	case chemistry == "lifepo4":
		return cellsIn(nominalVolts, 4, 3, 3.65, 3.2)
	}
	return 0
}

// cellsIn takes whole blocks of cells where volts lie in their window, from low to high a cell; else
// the nearest number of cells.
func cellsIn(volts float64, block int, low, high, each float64) int {
	k := math.Floor(volts / (low * float64(block))) // the most blocks that it can be
	if n := k * float64(block); k >= 1 && k <= mostBlocks && volts <= high*n {
		return int(n)
	}
	return int(math.Round(volts / each))
}

// mostBlocks is how many 12 V blocks a label still names: beyond, windows meet.
const mostBlocks = 8

// BatteryVolts is the voltage in V of a battery of cells in series: empty, rested full, and at the
// end of charge. Not Known for an unknown chemistry or without cells.
func BatteryVolts(chemistry string, cells int) (empty, rested, endOfCharge Value) {
	units := float64(cells)
	if LeadAcid(chemistry) {
		units /= 6
	} else if !Lithium(chemistry) {
		return
	}
	if cells <= 0 {
		return
	}
	at := func(name string) Value { return figure("volts/" + chemistry + "/" + name).times(units) }
	return at("empty"), at("rested"), at("end-of-charge")
}

// AlternatorLow is the voltage in V of a running alternator that idles or regulates down.
func AlternatorLow() Value { return figure("volts/alternator/running-low") }

// BatteryResistance is the range in ohm in which the internal resistance of a battery lies that
// states none. blocks are 12 V blocks in series, of 6 lead-acid or 4 lithium cells. Not Known for an
// unknown chemistry or without capacity.
func BatteryResistance(chemistry string, capacityAh, blocks float64) (low, high Value) {
	family := ""
	switch {
	case LeadAcid(chemistry):
		family = "lead-acid"
	case Lithium(chemistry):
		family = "lithium"
	}
	if family == "" || !(capacityAh > 0 && blocks > 0) {
		return
	}
	at := func(name string) Value { return figure("resistance/" + family + "/" + name).times(blocks / capacityAh) }
	return at("low"), at("high")
}

// Blocks is the number of 12 V blocks that cells in series make: 6 lead-acid or 4 lithium cells each.
func Blocks(chemistry string, cells int) float64 {
	if LeadAcid(chemistry) {
		return float64(cells) / 6
	}
	return float64(cells) / 4
}

// Acceptance is the charging current that a lead-acid battery takes in steady state, as a share of
// its capacity per hour; not Known for lithium, which takes what it is given.
func Acceptance(chemistry string) Value {
	if !LeadAcid(chemistry) {
		return Value{}
	}
	return figure("acceptance/lead-acid")
}
