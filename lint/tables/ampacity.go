package tables

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"ferrule/schema/quantity"
)

// sameArea lets a size meet its own row although its area was rounded.
const sameArea = 1 + 1e-3

// ampacities is a table of currents by conductor size and insulation temperature.
type ampacities struct {
	columns []float64 // insulation temperatures, ascending
	rows    []ampacityRow
}

// ampacityRow is one conductor size; a column without a figure is 0.
type ampacityRow struct {
	name string
	area float64 // mm2
	amps []float64
	cite Cite
}

// Ampacity is the current in A that a copper conductor carries at 30 C, by insulation temperature,
// before heat and bundle factors: 33 CFR 183.425 Table 5. A size between the rows takes the largest
// row that is not above its area, an insulation between the columns the next lower column; both are
// returned, row as "10 AWG". ok is false below 60 C and below 18 AWG.
func Ampacity(size quantity.Size, insulationC float64) (v Value, column float64, row string, ok bool) {
	return lib().dc.at(size, insulationC)
}

// AmpacityAC is Ampacity for alternating current: NFPA 70 310.16, up to three loaded conductors in a
// cable or raceway. ok is also false for 18 and 16 AWG below 90 C, where the table has no figure.
func AmpacityAC(size quantity.Size, insulationC float64) (v Value, column float64, row string, ok bool) {
	return lib().ac.at(size, insulationC)
}

func (t ampacities) at(size quantity.Size, insulationC float64) (Value, float64, string, bool) {
	row, found := t.row(size)
	column := -1
	for i, c := range t.columns {
		if c <= insulationC {
			column = i
		}
	}
	if !found || column < 0 || row.amps[column] == 0 {
		return Value{}, 0, "", false
	}
	return Value{row.amps[column], row.cite}, t.columns[column], row.name, true
}

// row is the largest row whose area is not above the size's.
func (t ampacities) row(size quantity.Size) (ampacityRow, bool) {
	for i := len(t.rows) - 1; i >= 0; i-- {
		if t.rows[i].area <= size.Area*sameArea {
			return t.rows[i], true
		}
	}
	return ampacityRow{}, false
}

func (r *reader) ampacities(name string) ampacities {
	var t ampacities
	for _, w := range r.rows(name) {
		if t.columns == nil {
			t.columns = w.temperatures()
		}
		size, err := quantity.ParseSize(w.cells["size"])
		if err != nil {
			r.fail(w.place, err)
		}
		row := ampacityRow{name: size.Name, area: size.Area, cite: w.cite}
		for _, c := range t.columns {
			row.amps = append(row.amps, w.or(strconv.Itoa(int(c)), 0))
		}
		t.rows = append(t.rows, row)
	}
	slices.SortFunc(t.rows, func(a, b ampacityRow) int { return cmp.Compare(a.area, b.area) })
	return t
}

// temperatures lists the columns whose heading is a number, ascending.
func (w row) temperatures() []float64 {
	var out []float64
	for head := range w.cells {
		if c, err := strconv.Atoi(head); err == nil {
			out = append(out, float64(c))
		}
	}
	slices.Sort(out)
	return out
}

// heatCite is what the heat formula rests on: it gives back every printed factor within rounding.
var heatCite = Cite{
	Clause: "NFPA 70 310.15(B)(1)", Edition: "2020", Status: Verified,
	Basis: "sqrt((Tins - Ta) / (Tins - 30)), which gives back the table's factors",
}

// hottest is the last insulation column of any table.
const hottest = 200

// Thicker lists the sizes of the tables above a size, in its own system, ascending, and where such sizes
// are listed. Sizes in kcmil have none: no table here goes beyond 4/0 AWG.
func Thicker(size quantity.Size) (sizes []quantity.Size, from Cite) {
	for _, name := range lib().sizes(size.System) {
		s, err := quantity.ParseSize(name.name)
		if err == nil && s.Area > size.Area*sameArea {
			sizes, from = append(sizes, s), name.cite
		}
	}
	return sizes, from
}

// sizes are the rows that list conductor sizes of a system.
func (l *library) sizes(system quantity.System) []ampacityRow {
	switch system {
	case quantity.AWG:
		return l.dc.rows
	case quantity.Metric:
		var out []ampacityRow
		for _, k := range l.class5 {
			out = append(out, ampacityRow{name: strconv.FormatFloat(k.at, 'f', -1, 64) + " mm2", cite: k.Cite})
		}
		return out
	}
	return nil
}

// Insulations lists the insulation temperatures in C that Ampacity has a column for, ascending.
func Insulations() []float64 { return slices.Clone(lib().dc.columns) }

// HeatFactor is the share of ampacity left at an ambient, from tables made at 30 C; never above 1,
// and 0 where the ambient reaches insulationC, which is best the column that Ampacity took.
// engineDefault says that the ambient is an engine space's default 50 C and not the plan's own
// figure: then the printed factor counts where it was read.
func HeatFactor(insulationC, ambientC float64, engineDefault bool) Value {
	if engineDefault && ambientC == 50 {
		for _, k := range lib().engineSpace {
			if k.at == insulationC && k.Cite.Status == Verified {
				return k.Value
			}
		}
	}
	insulationC = min(insulationC, hottest)
	if !(insulationC > 30 && ambientC < insulationC) {
		return Value{0, heatCite}
	}
	return Value{math.Sqrt((insulationC - max(ambientC, 30)) / (insulationC - 30)), heatCite}
}

// BundleFactor is the share of ampacity left to each of n current-carrying conductors that run
// touching. Direct current takes the factors of 33 CFR 183.435(b), which binds from 50 V up, at any
// voltage; alternating current those of NFPA 70 310.15(C)(1).
func BundleFactor(n int, ac bool) Value {
	rows := lib().bundle["dc"]
	if ac {
		rows = lib().bundle["ac"]
	}
	i := 0
	for i < len(rows)-1 && float64(n) > rows[i].at {
		i++
	}
	return rows[i].Value
}
