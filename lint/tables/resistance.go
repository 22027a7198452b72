package tables

import (
	"fmt"
	"math"

	"ferrule/schema/quantity"
)

// OhmPerMetre is the resistance in ohm/m of one conductor at a temperature, and the formula it was
// computed by. material is "copper" (also "") or "aluminum".
//
// Copper is 1/58 ohm mm2/m over the area; a stranded AWG or kcmil size has 1.02 times that. worst
// asks for the highest resistance that a sound conductor may have, as voltage drop and the least
// fault current need it: a metric size then has the maximum of IEC 60228 class 5, since its named
// area is not its true one. Without worst it has its named area, as the prospective fault current
// needs it. ok is false for an unknown size or material and below the reach of the coefficient.
func OhmPerMetre(size quantity.Size, stranded bool, material string, tempC float64, worst bool) (r Value, formula string, ok bool) {
	if material == "" {
		material = "copper"
	}
	rho, alpha := figure(material+"/resistivity"), figure(material+"/coefficient")
	heat := 1 + alpha.V*(tempC-20)
	if !rho.Known() || !(size.Area > 0) || !(heat > 0) || math.IsInf(heat, 0) {
		return Value{}, "", false
	}
	r, formula = at20(size, stranded, material, worst)
	return r.times(heat), fmt.Sprintf("%s (1 + %g (T - 20 C))", formula, alpha.V), true
}

// at20 is the resistance in ohm/m at 20 C.
func at20(size quantity.Size, stranded bool, material string, worst bool) (Value, string) {
	rho := figure(material + "/resistivity")
	solid, formula := rho.times(1/size.Area), fmt.Sprintf("%g / S", rho.V)
	if material == "copper" {
		formula = "1 / (58 S)"
	}
	switch {
	case size.System == quantity.Metric && worst && material == "copper":
		return class5(size.Area, solid.V)
	case size.System == quantity.Metric && worst:
		return solid.times(figure("copper/class-5").V), fmt.Sprintf("%g x %s", figure("copper/class-5").V, formula)
	case size.System != quantity.Metric && stranded:
		lay := figure("copper/stranding")
		if rho.Cite.Status == Verified {
			solid.Cite = lay.Cite
		}
		return solid.times(lay.V), fmt.Sprintf("%g x %s", lay.V, formula)
	}
	return solid, formula
}

// class5 is the maximum resistance at 20 C, in ohm/m, of a flexible copper conductor of a metric
// size. A size that the table leaves out has at most what the next smaller one may have, and at
// most the worst ratio of the table to copper of its own area.
func class5(area, solid float64) (Value, string) {
	var below Value
	for _, k := range lib().class5 {
		if k.at == area {
			return k.Value.times(1e-3), "class 5 maximum"
		}
		if k.at < area {
			below = k.Value.times(1e-3)
		}
	}
	ratio := figure("copper/class-5")
	if v := ratio.times(solid); !below.Known() || v.V < below.V {
		return v, fmt.Sprintf("%g x 1 / (58 S)", ratio.V)
	}
	return below, "class 5 maximum of the next smaller size"
}
