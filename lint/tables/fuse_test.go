package tables

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Sources: ISO 8820-3 type fuses, UL 248-14 and an inverter manual as data/figures.csv states them;
// terminal and class T fuses are from memory.
func TestFuseKind(t *testing.T) {
	for kind, want := range map[string]struct {
		volts, interrupting  float64
		voltsAs, interruptAs Status
	}{
		"blade": {32, 1000, Verified, Verified}, "glass": {32, 0, Verified, 0}, "anl": {32, 2700, Memory, Verified},
		"terminal": {58, 2000, Memory, Memory}, "class-t": {125, 20000, Memory, Memory},
	} {
		v, i, known := FuseKind(kind)
		if !known || v.V != want.volts || i.V != want.interrupting || v.Cite.Status != want.voltsAs || i.Cite.Status != want.interruptAs {
			t.Errorf("%s: %+v, %+v, %v", kind, v, i, known)
		}
	}
	for _, kind := range []string{"breaker", "cartridge", "", "blade/volts"} {
		if v, i, known := FuseKind(kind); known || v.Known() || i.Known() {
			t.Errorf("%q has figures: %+v, %+v", kind, v, i)
		}
	}
}

// Sources: ISO 8820-3 type and UL 248-14 fuses. 15 A blades are made in one series, 20 to 40 A ones in
// two, of which the slower counts. The gates of other kinds are from memory.
func TestOpeningGates(t *testing.T) {
	for _, c := range []struct {
		kind   string
		rating float64
		want   map[float64]float64 // seconds at most, by multiple
	}{
		{"blade", 15, map[float64]float64{1.35: 600, 2: 5, 3.5: 0.5, 6: 0.1}},
		{"blade", 25, map[float64]float64{1.35: 1800, 2: 50, 3.5: 7}},
		{"blade", 40, map[float64]float64{1.35: 1800, 2: 50, 3.5: 7}},
		{"blade", 60, map[float64]float64{1.35: 1800, 2: 50, 3.5: 7}},
		{"blade", 0, map[float64]float64{1.35: 1800, 2: 50, 3.5: 7}},
		{"blade", 200, map[float64]float64{1.35: 1800, 2: 50, 3.5: 7}},
		{"glass", 10, map[float64]float64{1.35: 3600, 2: 120}},
		{"glass", 40, map[float64]float64{1.35: 3600, 2: 240}},
		{"anl", 200, map[float64]float64{1.35: 600, 2: 60, 5: 5}},
		{"", math.NaN(), map[float64]float64{1.35: 600, 2: 60, 5: 5}},
	} {
		got := OpeningGates(c.kind, c.rating)
		if len(got) != len(c.want) {
			t.Errorf("%s %g A: %+v", c.kind, c.rating, got)
		}
		for _, g := range got {
			if g.MaxS != c.want[g.Multiple] {
				t.Errorf("%s %g A at %g x: %g s, want %g", c.kind, c.rating, g.Multiple, g.MaxS, c.want[g.Multiple])
			}
		}
	}
	if g := OpeningGates("blade", 25)[1]; g.MinS != 0.15 || g.MaxS != 50 {
		t.Errorf("the fastest and slowest of two series: %+v", g)
	}
	if g := OpeningGates("class-t", 100)[0]; g.Cite.Status != Memory {
		t.Errorf("an assumed gate cites %v", g.Cite)
	}
}

func TestGatesFallWithCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]string{"blade", "glass", "anl", "terminal", "class-t", "cartridge", "breaker", "other", "?"}).Draw(t, "kind")
		gates := OpeningGates(kind, rapid.Float64Range(0, 500).Draw(t, "rating"))
		if len(gates) < 2 || gates[0].Multiple != 1.35 {
			t.Fatalf("%s: %+v", kind, gates)
		}
		for i, g := range gates {
			if g.MinS > g.MaxS || i > 0 && (g.MaxS >= gates[i-1].MaxS || g.Multiple <= gates[i-1].Multiple) {
				t.Fatalf("%s: %+v", kind, gates)
			}
		}
	})
}

// kByFormula is k of copper from its heat capacity, resistivity and temperatures: IEC 60364-5-54 Annex A.
func kByFormula(start, end float64) float64 {
	const heatCapacity, beta, resistivity = 0.00345, 234.5, 1.7241e-5 // J/K mm3, C, ohm mm
	return math.Sqrt(heatCapacity * (beta + 20) / resistivity * math.Log((beta+end)/(beta+start)))
}

// Source: IEC 60364-4-43 Table 43A prints 115 and 143; the formula gives 114.84 and 142.87.
func TestAdiabaticFormulaGivesBackThePrintedFigures(t *testing.T) {
	within(t, "70 C thermoplastic", kByFormula(70, 160), 114.84, 0.01)
	within(t, "90 C cross-linked", kByFormula(90, 250), 142.87, 0.01)
	within(t, "90 C cross-linked, printed", kByFormula(90, 250), 143, 0.2)
	r := &reader{fsys: files}
	for _, w := range r.rows("data/adiabatic.csv") {
		within(t, w.place, w.number("k"), kByFormula(w.number("insulation_c"), w.number("end_c")), 0.7)
	}
}

func TestAdiabaticK(t *testing.T) {
	for insulation, want := range map[float64]float64{60: 115, 70: 115, 75: 100, 90: 100, 105: 87, 125: 123, 200: 74, 260: 74} {
		v := AdiabaticK(insulation)
		if v.V != want || (v.Cite.Status == Verified) != (want == 115) {
			t.Errorf("%g C: %+v, want %g", insulation, v, want)
		}
	}
	if v := AdiabaticK(math.NaN()); v.V != 74 {
		t.Errorf("an insulation that is no number: %g", v.V)
	}
}
