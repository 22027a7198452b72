package tables

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/schema/quantity"
)

// ohm is OhmPerMetre of a size that must have one, in ohm/m.
func ohm(t testing.TB, s quantity.Size, stranded bool, tempC float64, worst bool) float64 {
	t.Helper()
	r, formula, ok := OhmPerMetre(s, stranded, "copper", tempC, worst)
	if !ok || formula == "" || r.Cite.Status != Verified {
		t.Fatalf("%+v: ok %v, formula %q, %+v", s, ok, formula, r)
	}
	return r.V
}

// Source: NFPA 70 Chapter 9 Table 8, uncoated copper at 75 C, as testdata/table8.csv states it.
func TestGaugeResistanceIsTable8(t *testing.T) {
	for _, w := range check(t, "table8") {
		s, printed := size(t, w.cells["size"]), w.number("ohm_per_km_75c")/1000
		ideal := ohm(t, s, false, 75, false)
		if w.cells["stranding"] == "solid" {
			within(t, w.place+" printed to ideal", printed/ideal, 1, 0.0045)
			continue
		}
		within(t, w.place+" printed to ideal", printed/ideal, 1.0215, 0.0045)
		within(t, w.place+" printed to ours", printed/ohm(t, s, true, 75, true), 1, 0.0055)
	}
}

// Source: ASTM B258, the area of each gauge in circular mils as NFPA 70 Chapter 9 Table 8 rounds it;
// 1 circular mil is the area of a circle of 0.0254 mm.
func TestGaugeArea(t *testing.T) {
	mils := []float64{1620, 2580, 4110, 6530, 10380, 16510, 26240, 41740, 52620, 66360, 83690, 105600, 133100, 167800, 211600}
	for i, gauge := range gauges {
		printed := mils[i] * math.Pi / 4 * 0.0254 * 0.0254
		within(t, gauge+" area to printed", size(t, gauge).Area/printed, 1, 0.003)
	}
}

// Source: resistances in mohm/m at 20 C of solid copper that follow from IEC 60028 (1/58 ohm mm2/m)
// and ASTM B258.
func TestSolidResistanceAt20(t *testing.T) {
	for gauge, want := range map[string]float64{
		"18 AWG": 20.95, "16 AWG": 13.17, "14 AWG": 8.29, "12 AWG": 5.21, "10 AWG": 3.28, "8 AWG": 2.06,
		"6 AWG": 1.30, "4 AWG": 0.815, "2 AWG": 0.513, "1/0 AWG": 0.322, "2/0 AWG": 0.256, "4/0 AWG": 0.161,
	} {
		within(t, gauge+" mohm/m", ohm(t, size(t, gauge), false, 20, true)*1000/want, 1, 0.003)
	}
}

// Source: IEC 60228 Table 3, plain copper class 5, in ohm/km at 20 C.
func TestMetricWorstIsClass5(t *testing.T) {
	for area, want := range map[float64]float64{
		0.75: 26, 1: 19.5, 1.5: 13.3, 2.5: 7.98, 4: 4.95, 6: 3.3, 10: 1.91, 16: 1.21,
		25: 0.78, 35: 0.554, 50: 0.386, 70: 0.272, 95: 0.206, 120: 0.161,
	} {
		s := quantity.Size{Area: area, System: quantity.Metric}
		worst, best := ohm(t, s, true, 20, true), ohm(t, s, true, 20, false)
		within(t, "class 5 maximum", worst*1000, want, 1e-9)
		within(t, "nominal", best, 1/(58*area), 1e-12)
		within(t, "ratio of maximum to nominal", worst/best, 1.13, 0.031) // 1.10 to 1.16
	}
}

// Sizes that class 5 leaves out: the stricter of the next smaller size's maximum and the worst ratio.
func TestMetricSizesBetweenTheRows(t *testing.T) {
	for area, want := range map[float64]float64{0.5: 40, 10.1: 1.91, 15.9: 1.2579, 150: 0.13333} {
		got := ohm(t, quantity.Size{Area: area, System: quantity.Metric}, true, 20, true)
		within(t, "ohm/km", got*1000, want, 1e-4)
	}
}

// The ratio for sizes that class 5 leaves out is not below any ratio of the table.
func TestClass5RatioCoversTheTable(t *testing.T) {
	ratio := figure("copper/class-5").V
	for _, k := range lib().class5 {
		if r := k.V / 1000 * 58 * k.at; r > ratio || r < 1.10 {
			t.Errorf("%g mm2: ratio %.3f against %.3f", k.at, r, ratio)
		}
	}
}

// Source: AC 43.13-1B 11-66: the resistance at T is (234.5 + T) / 254.5 of that at 20 C.
func TestResistanceAtTemperature(t *testing.T) {
	s := size(t, "10 AWG")
	for temp, want := range map[float64]float64{20: 1.000, 75: 0.8223, 105: 0.7496, -20: 254.5 / 214.5} {
		got := ohm(t, s, true, 20, true) / ohm(t, s, true, temp, true)
		within(t, "R(20 C) / R(T)", got, want, 0.001)
	}
}

func TestAluminumIsAnAssumption(t *testing.T) {
	s := size(t, "2/0 AWG")
	al, formula, ok := OhmPerMetre(s, true, "aluminum", 20, true)
	if !ok || al.Cite.Status != Memory || formula == "" {
		t.Fatalf("%+v, %q, %v", al, formula, ok)
	}
	within(t, "aluminum to copper", al.V/ohm(t, s, true, 20, true), 1.64, 0.01) // from memory: 61 % IACS
	hot, _, _ := OhmPerMetre(s, true, "aluminum", 75, true)
	within(t, "75 C to 20 C", hot.V/al.V, 1.222, 0.002) // from memory: 0.00403 /C
	metric := quantity.Size{Area: 50, System: quantity.Metric}
	worst, _, _ := OhmPerMetre(metric, true, "aluminum", 20, true)
	best, _, _ := OhmPerMetre(metric, true, "aluminum", 20, false)
	within(t, "worst to nominal", worst.V/best.V, 1.16, 1e-9)
}

func TestResistanceOfWhatIsNotKnown(t *testing.T) {
	good := size(t, "10 AWG")
	for _, c := range []struct {
		size     quantity.Size
		material string
		temp     float64
	}{
		{quantity.Size{}, "copper", 20}, {good, "steel", 20}, {good, "copper", -260},
		{good, "copper", math.NaN()}, {good, "copper", math.Inf(1)}, {quantity.Size{Area: math.NaN()}, "", 20},
	} {
		if r, _, ok := OhmPerMetre(c.size, true, c.material, c.temp, true); ok || r.Known() {
			t.Errorf("%+v %s at %g C: %+v", c.size, c.material, c.temp, r)
		}
	}
}

func TestResistanceIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom([]quantity.System{quantity.AWG, quantity.KCMIL, quantity.Metric}).Draw(t, "system")
		stranded, worst := rapid.Bool().Draw(t, "stranded"), rapid.Bool().Draw(t, "worst")
		a := rapid.Float64Range(0.2, 300).Draw(t, "area")
		if system == quantity.Metric && rapid.Bool().Draw(t, "standard") {
			a = rapid.SampledFrom(lib().class5).Draw(t, "row").at
		}
		b := rapid.Float64Range(a, 300).Draw(t, "larger area")
		cold := rapid.Float64Range(-40, 200).Draw(t, "temperature")
		hot := rapid.Float64Range(cold, 200).Draw(t, "hotter")
		thin := ohm2(t, quantity.Size{Area: a, System: system}, stranded, hot, worst)
		thick := ohm2(t, quantity.Size{Area: b, System: system}, stranded, cold, worst)
		if thick > thin*(1+1e-12) {
			t.Fatalf("%g mm2 at %g C has %g, %g mm2 at %g C has %g ohm/m", a, hot, thin, b, cold, thick)
		}
		if best := ohm2(t, quantity.Size{Area: a, System: system}, stranded, hot, false); best > thin*(1+1e-12) {
			t.Fatalf("%g mm2: the best case %g ohm/m is above %g", a, best, thin)
		}
	})
}

func ohm2(t *rapid.T, s quantity.Size, stranded bool, tempC float64, worst bool) float64 {
	r, _, ok := OhmPerMetre(s, stranded, "", tempC, worst)
	if !ok {
		t.Fatalf("%+v at %g C has no resistance", s, tempC)
	}
	return r.V
}
