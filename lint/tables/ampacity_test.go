package tables

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/schema/quantity"
)

var gauges = []string{
	"18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG",
	"3 AWG", "2 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG",
}

// Source: 33 CFR 183.425(b) Table 5, typed here again from the law text, row by row in gauges.
func TestAmpacityIsTable5(t *testing.T) {
	checkAmpacity(t, Ampacity, []float64{60, 75, 80, 90, 105, 125, 200}, [][]float64{
		{10, 10, 15, 20, 20, 25, 25},
		{15, 15, 20, 25, 25, 30, 35},
		{20, 20, 25, 30, 35, 40, 45},
		{25, 25, 35, 40, 45, 50, 55},
		{40, 40, 50, 55, 60, 70, 70},
		{55, 65, 70, 70, 80, 90, 100},
		{80, 95, 100, 100, 120, 125, 135},
		{105, 125, 130, 135, 160, 170, 180},
		{120, 145, 150, 155, 180, 195, 210},
		{140, 170, 175, 180, 210, 225, 240},
		{165, 195, 210, 210, 245, 265, 280},
		{195, 230, 245, 245, 285, 305, 325},
		{225, 265, 285, 285, 330, 355, 370},
		{260, 310, 330, 330, 385, 410, 430},
		{300, 360, 385, 385, 445, 475, 510},
	})
}

// Source: NFPA 70 310.16 (2020), copper; 0 is a cell that the table leaves empty.
func TestAmpacityACIsTable31016(t *testing.T) {
	checkAmpacity(t, AmpacityAC, []float64{60, 75, 90}, [][]float64{
		{0, 0, 14}, {0, 0, 18}, {15, 20, 25}, {20, 25, 30}, {30, 35, 40}, {40, 50, 55}, {55, 65, 75}, {70, 85, 95},
		{85, 100, 115}, {95, 115, 130}, {110, 130, 145}, {125, 150, 170}, {145, 175, 195}, {165, 200, 225}, {195, 230, 260},
	})
}

type lookup func(quantity.Size, float64) (Value, float64, string, bool)

func checkAmpacity(t *testing.T, at lookup, columns []float64, want [][]float64) {
	t.Helper()
	for i, gauge := range gauges {
		for j, c := range columns {
			v, column, row, ok := at(size(t, gauge), c)
			if v.V != want[i][j] || ok != (want[i][j] > 0) {
				t.Errorf("%s at %g C: %g A, ok %v; the table prints %g", gauge, c, v.V, ok, want[i][j])
			}
			if ok && (column != c || row != gauge || v.Cite.Status != Verified) {
				t.Errorf("%s at %g C: column %g, row %q, %v", gauge, c, column, row, v.Cite)
			}
		}
	}
}

func TestAmpacityBetweenRowsAndColumns(t *testing.T) {
	mm2 := func(a float64) quantity.Size { return quantity.Size{Area: a, System: quantity.Metric} }
	for _, c := range []struct {
		size       quantity.Size
		insulation float64
		row        string
		column     float64
		amps       float64
	}{
		{mm2(1), 70, "18 AWG", 60, 10},
		{mm2(1.5), 105, "16 AWG", 105, 25},
		{mm2(6), 110, "10 AWG", 105, 60},
		{mm2(35), 85, "2 AWG", 80, 175},
		{mm2(50), 90, "1 AWG", 90, 210},
		{mm2(107.2), 60, "4/0 AWG", 60, 300}, // 4/0 rounded
		{mm2(240), 250, "4/0 AWG", 200, 510},
		{quantity.Size{Area: 126.7, System: quantity.KCMIL}, 75, "4/0 AWG", 75, 360},
		{size(t, "5 AWG"), 60, "6 AWG", 60, 80},
	} {
		v, column, row, ok := Ampacity(c.size, c.insulation)
		if !ok || row != c.row || column != c.column || v.V != c.amps {
			t.Errorf("%+v at %g C: %g A, column %g, row %q, %v", c.size, c.insulation, v.V, column, row, ok)
		}
	}
	for _, c := range []struct {
		size       quantity.Size
		insulation float64
	}{{mm2(0.75), 105}, {size(t, "20 AWG"), 105}, {mm2(6), 59}, {quantity.Size{}, 60}, {mm2(math.NaN()), 60}, {mm2(6), math.NaN()}} {
		if v, _, _, ok := Ampacity(c.size, c.insulation); ok || v.Known() {
			t.Errorf("%+v at %g C has an ampacity of %g A", c.size, c.insulation, v.V)
		}
	}
}

// Source: NFPA 70 310.15(B)(1) and DIN VDE 0298-4 Table 17, as testdata/ambient.csv states them. The
// recalled rows are no proof of the formula; they are held to it so that a slip in them shows.
func TestHeatFactorGivesBackThePrintedTables(t *testing.T) {
	for _, w := range check(t, "ambient") {
		insulation, ambient, printed := w.number("insulation_c"), w.number("ambient_c"), w.number("factor")
		within(t, w.place, HeatFactor(insulation, ambient, false).V, min(printed, 1), 0.0062)
	}
}

// Source: 33 CFR 183.425 Table 5 note 1 in two reprints, 105 C only; others are recalled and must not be used.
func TestHeatFactorInAnEngineSpace(t *testing.T) {
	if v := HeatFactor(105, 50, true); v.V != 0.85 || v.Cite.Clause != "33 CFR 183.425 Table 5 note 1" {
		t.Errorf("105 C at the default of an engine space: %+v", v)
	}
	for _, insulation := range []float64{60, 75, 80, 90, 125, 200} {
		if v := HeatFactor(insulation, 50, true); v != HeatFactor(insulation, 50, false) || v.Cite.Status == Memory {
			t.Errorf("%g C: %+v is not the formula", insulation, v)
		}
	}
	if v := HeatFactor(105, 60, true); v != HeatFactor(105, 60, false) {
		t.Errorf("an engine space at the plan's own 60 C has %g", v.V)
	}
}

func TestHeatFactorStaysInBounds(t *testing.T) {
	for _, c := range []struct{ insulation, ambient, want float64 }{
		{60, 60, 0}, {60, 90, 0}, {60, -20, 1}, {60, 30, 1}, {25, 20, 0}, {30, 30, 0},
		{200, 115, math.Sqrt(0.5)}, {250, 115, math.Sqrt(0.5)}, {math.Inf(1), 115, math.Sqrt(0.5)}, {math.NaN(), 40, 0}, {60, math.NaN(), 0},
	} {
		if v := HeatFactor(c.insulation, c.ambient, false); v.V != c.want {
			t.Errorf("%g C insulation at %g C: %g, want %g", c.insulation, c.ambient, v.V, c.want)
		}
	}
}

// Source: 33 CFR 183.435(b) and NFPA 70 310.15(C)(1).
func TestBundleFactor(t *testing.T) {
	for n, want := range map[int][2]float64{
		-1: {1, 1}, 0: {1, 1}, 2: {1, 1}, 3: {0.7, 1}, 4: {0.6, 0.8}, 6: {0.6, 0.8}, 7: {0.5, 0.7}, 9: {0.5, 0.7},
		10: {0.5, 0.5}, 20: {0.5, 0.5}, 21: {0.5, 0.45}, 24: {0.5, 0.45}, 25: {0.4, 0.45}, 30: {0.4, 0.45},
		31: {0.4, 0.4}, 41: {0.4, 0.35}, math.MaxInt: {0.4, 0.35},
	} {
		if dc, ac := BundleFactor(n, false), BundleFactor(n, true); dc.V != want[0] || ac.V != want[1] {
			t.Errorf("%d conductors: DC %g, AC %g; want %v", n, dc.V, ac.V, want)
		}
	}
}

// Source: ABYC E-11, ampacity of 105 C boat cable, as testdata/e11_105c.csv states it: Table 5 times
// the bundle factors, and the engine-space factor inside.
func TestE11TableFollowsFromTable5(t *testing.T) {
	conductors := map[string]int{"2": 2, "3": 3, "6": 6, "24": 24}
	for _, w := range check(t, "e11_105c") {
		base, _, _, _ := Ampacity(size(t, w.cells["size"]), 105)
		for count, n := range conductors {
			for place, ambient := range map[string]float64{"outside_": 30, "inside_": 50} {
				if w.cells[place+count] == "" {
					continue
				}
				got := base.V * BundleFactor(n, false).V * HeatFactor(105, ambient, true).V
				within(t, w.place+" "+place+count, got, w.number(place+count), 0.051)
			}
		}
	}
}

func TestAmpacityIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := Ampacity
		if rapid.Bool().Draw(t, "ac") {
			at = AmpacityAC
		}
		draw := func(name string, least, most float64) (float64, float64) {
			a := rapid.Float64Range(least, most).Draw(t, name)
			return a, rapid.Float64Range(a, most).Draw(t, name+" more")
		}
		s1, s2 := draw("area", 0.5, 300)
		i1, i2 := draw("insulation", 40, 250)
		thin, _, _, ok := at(quantity.Size{Area: s1}, i1)
		thick, _, _, ok2 := at(quantity.Size{Area: s2}, i2)
		if ok && !ok2 || thick.V < thin.V {
			t.Fatalf("%g mm2 at %g C carries %g A, %g mm2 at %g C carries %g A", s1, i1, thin.V, s2, i2, thick.V)
		}
		cool, hot := draw("ambient", -40, 250)
		if c, h := HeatFactor(i1, cool, false).V, HeatFactor(i1, hot, false).V; h > c || c > 1 || h < 0 {
			t.Fatalf("%g C insulation: %g at %g C, %g at %g C", i1, c, cool, h, hot)
		}
	})
}
