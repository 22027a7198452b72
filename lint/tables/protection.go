package tables

import "ferrule/schema/quantity"

// DeviceLimit is the allowed multiple of a conductor's corrected ampacity for the device that
// guards it. conductorVolts is the highest voltage of the circuit; unknown is infinity, which is
// the strict side. At 50 V and above a boat may take the next standard size: see DeviceCeiling.
func DeviceLimit(practice string, conductorVolts float64) Value {
	if practice != "us-boat" {
		return graded("device-limit", practice, "")
	}
	if conductorVolts < 50 {
		return figure("device-limit/us-boat/below-50")
	}
	return figure("device-limit/us-boat/from-50")
}

// DeviceCeiling is the largest rating in A that may guard a conductor of corrected ampacity iz in A:
// DeviceLimit times iz, and for a boat's circuit of 50 V or more the next standard rating above iz
// where that is within 150 %.
func DeviceCeiling(practice string, conductorVolts, iz float64) Value {
	ceiling := DeviceLimit(practice, conductorVolts).times(iz)
	if practice != "us-boat" || conductorVolts < 50 {
		return ceiling
	}
	most := iz * figure("device-limit/us-boat/next-standard").V
	for _, r := range StandardRatings() {
		if r >= iz && r <= most {
			ceiling.V = r
			break
		}
	}
	return ceiling
}

// SmallConductorCap is the largest device in A on a small copper conductor whatever its insulation:
// 15, 20 and 30 A on 14, 12 and 10 AWG (NFPA 70 240.4(D)). A metric size takes the row that Ampacity
// takes. A thinner conductor has the cap of 14 AWG: it bears no more than that. The clause has 10 and 7 A for 16 and 18 AWG,
// from memory and on conditions, which are not taken. Larger sizes have no fixed cap.
func SmallConductorCap(size quantity.Size) (Value, bool) {
	row, _ := lib().dc.row(size)
	v := figure("small-conductor/" + row.name)
	if least, err := quantity.ParseSize("14 AWG"); err == nil && size.Area > 0 && size.Area < least.Area*sameArea {
		v = figure("small-conductor/14 AWG")
		v.Cite = Cite{Basis: "no more than " + v.Cite.Clause + " allows on 14 AWG", Status: CommonPractice}
	}
	return v, v.Known()
}

// MostDevice is the largest device in A that a practice lets guard a conductor of a size and of corrected ampacity iz in A:
// DeviceCeiling, or the cap of a small conductor where the practice holds single ones to it, which capped says.
func MostDevice(practice string, conductorVolts, iz float64, size quantity.Size, parallel int) (most Value, capped bool) {
	most = DeviceCeiling(practice, conductorVolts, iz)
	if small, ok := SmallConductorCap(size); ok && practice == "us-rv" && parallel == 1 && small.V < most.V {
		return small, true
	}
	return most, false
}

// Continuous is the share of its rating that a device carries for three hours or longer: NFPA 70 690.9 and 706.30 have the
// inverse, 125 %, read in summaries.
const Continuous = 0.8

// DeviceDistance is the longest run in m from a source to the first device: bare; sheathed or
// enclosed all the way; sheathed all the way and straight from a battery's own terminal.
// A practice without its own figures has the general ones.
func DeviceDistance(practice string) (bare, sheathed, sheathedAtBattery Value) {
	return graded("distance", practice, "bare"), graded("distance", practice, "sheathed"), graded("distance", practice, "battery")
}

// Ratings are the figures of StandardRatings, each with its origin.
func Ratings() []Value {
	var out []Value
	for _, r := range lib().ratings {
		out = append(out, r.Value)
	}
	return out
}

// StandardRatings lists the usual device ratings in A, ascending: 15 A and above after NFPA 70
// 240.6(A), below that the vehicle fuse series (common practice).
func StandardRatings() []float64 {
	var out []float64
	for _, r := range lib().ratings {
		out = append(out, r.V)
	}
	return out
}

// DropLimit is the allowed share of nominal voltage lost on the way to a load. class is "critical"
// (life safety and navigation), "feeder" (a run that ends at a bus), "bilge-pump" or "other"; a
// class not known is "other".
func DropLimit(practice, class string) Value {
	switch class {
	case "critical", "feeder", "bilge-pump":
		return graded("drop", practice, class)
	}
	return graded("drop", practice, "other")
}

// Joint is the resistance in ohm assumed per pole of a "stud", "blade" or "glass" fuse holder, or
// connector "contact"; not Known for any other kind.
func Joint(kind string) Value { return figure("joint/" + kind) }

// ContactLimit is the current in A that a contact of a fixed pattern carries: at most, and
// continuously. kind is "tow-auxiliary" (charge pin of a seven-way vehicle plug) or "socket" (12 V
// accessory socket); not Known for any other.
func ContactLimit(kind string) (most, continuous Value) {
	return figure("contact/" + kind + "/most"), figure("contact/" + kind + "/continuous")
}

// PVFactor is the multiple of short-circuit current that an array's circuit must carry.
func PVFactor() Value { return figure("pv/current") }

// VocFactor is the multiple of open-circuit voltage at 25 C that crystalline silicon reaches at the
// coldest temperature, for modules whose own coefficient is not known. ok is false below -40 C,
// where the table ends.
func VocFactor(coldestC float64) (v Value, ok bool) {
	rows := lib().voc
	if coldestC >= 25 {
		return Value{1, rows[0].Cite}, true
	}
	for _, k := range rows {
		if k.at <= coldestC {
			return k.Value, true
		}
	}
	return Value{}, false
}
