package tables

import (
	"cmp"
	"math"
	"slices"
)

// FuseKind is what a kind of device usually bears without a rating in the plan: DC voltage in V and
// interrupting current in A at that voltage, each not Known where no figure was found. known is
// false for a kind with no figure at all, such as a breaker.
func FuseKind(kind string) (volts, interrupting Value, known bool) {
	volts, interrupting = figure("fuse/"+kind+"/volts"), figure("fuse/"+kind+"/interrupting")
	return volts, interrupting, volts.Known() || interrupting.Known()
}

// SolarCartridge gives the voltage (V) on direct current and the interrupting rating (A) of cartridge fuses made for
// solar strings, up to 30 A. Not what a plan means that writes no more than cartridge: that may be one for
// alternating current.
func SolarCartridge() (volts, interrupting Value) {
	return figure("solar-cartridge/volts"), figure("solar-cartridge/interrupting")
}

// Gate is one published point of a fuse's behaviour.
type Gate struct {
	Multiple float64 // of the rating
	MinS     float64 // must not open before, in s; 0 where not published
	MaxS     float64 // must open by, in s
	Cite     Cite
}

// gateRow is a gate of one series of a kind, which is made from least to most A.
type gateRow struct {
	kind, series string
	least, most  float64
	Gate
}

// OpeningGates lists the gates of a device, by rising multiple. A plan does not name the series of a
// fuse, so each gate is the slowest and the fastest of all series of the kind that are made in this
// rating; ratingA 0 is unknown and takes all of them. Kinds without published gates have assumed
// ones, whose status is Memory.
func OpeningGates(kind string, ratingA float64) []Gate {
	rows := gateRows(kind, ratingA)
	series := map[string]bool{}
	at := map[float64][]Gate{}
	for _, g := range rows {
		series[g.series] = true
		at[g.Multiple] = append(at[g.Multiple], g.Gate)
	}
	var out []Gate
	for _, gates := range at {
		if len(gates) == len(series) { // else some series is silent here, and could be the slowest
			out = append(out, widest(gates))
		}
	}
	slices.SortFunc(out, func(a, b Gate) int { return cmp.Compare(a.Multiple, b.Multiple) })
	return out
}

// gateRows are the rows of the series that are made in a rating, of all series where none is.
func gateRows(kind string, ratingA float64) []gateRow {
	var all, made []gateRow
	for _, g := range lib().gates {
		if g.kind != kind {
			continue
		}
		all = append(all, g)
		if g.least <= ratingA && ratingA <= g.most && ratingA > 0 {
			made = append(made, g)
		}
	}
	switch {
	case len(made) > 0:
		return made
	case len(all) > 0 || kind == "other":
		return all
	}
	return gateRows("other", ratingA)
}

// widest joins gates at one multiple; the origin is that of the slowest.
func widest(gates []Gate) Gate {
	w := gates[0]
	for _, g := range gates[1:] {
		least := min(w.MinS, g.MinS)
		if g.MaxS > w.MaxS {
			w = g
		}
		w.MinS = least
	}
	return w
}

func (r *reader) gates() []gateRow {
	var out []gateRow
	for _, w := range r.rows("data/gates.csv") {
		g := Gate{w.number("multiple"), w.or("min_s", 0), w.number("max_s"), w.cite}
		out = append(out, gateRow{w.cells["kind"], w.cells["series"], w.or("least_a", 0), w.or("most_a", math.Inf(1)), g})
	}
	return out
}

// AdiabaticK is the constant k of copper in A s^0.5/mm2 for faults up to 5 s: IEC 60364-4-43. It
// takes the conductor to start at its insulation's limit. A plan does not say whether insulation is
// thermoplastic or cross-linked, so up to 105 C it is taken as thermoplastic, the weaker kind.
func AdiabaticK(insulationC float64) Value {
	rows := lib().adiabatic
	for _, k := range rows {
		if insulationC <= k.at {
			return k.Value
		}
	}
	return rows[len(rows)-1].Value
}

// Withstand is the let-through (k S)^2 in A2s that a copper conductor of an area in mm2 survives.
// It holds for faults up to 5 s.
func Withstand(areaMM2, insulationC float64) Value {
	k := AdiabaticK(insulationC)
	k.V = k.V * areaMM2 * k.V * areaMM2
	return k
}
