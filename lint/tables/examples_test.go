package tables

import (
	"testing"
)

const foot = 0.3048 // m

// Source: AC 43.13-1B CHG 1, Tables 11-7 and 11-8, with the maximum resistance of each
// gauge from Table 11-9 in ohm/kft at 20 C. The second row of Table 11-8 prints 0.366 V where its own
// numbers give 0.4914 V; the product counts. Aircraft wire is thinner than its gauge and tin-plated,
// so wire of the full area must stay under every printed drop, and not by more than a quarter.
func TestWorkedDrops(t *testing.T) {
	for _, c := range []struct {
		id, gauge          string
		ohmPerKft, feet    float64
		printed, tolerance float64
	}{
		{"11-7 row 1", "6 AWG", 0.44, 107, 0.942, 0.001},
		{"11-7 row 2", "4 AWG", 0.28, 90, 0.504, 0.001},
		{"11-7 row 3", "12 AWG", 2.02, 88, 3.60, 0.05},
		{"11-7 row 4", "14 AWG", 3.06, 100, 6.12, 0.005},
		{"11-8 row 1", "10 AWG", 1.26, 39, 0.98, 0.005},
		{"11-8 row 2", "10 AWG", 1.26, 19.5, 0.4914, 0.001},
		{"11-8 row 3", "10 AWG", 1.26, 156, 3.93, 0.005},
		{"11-8 row 4", "10 AWG", 1.26, 273, 6.88, 0.005},
	} {
		const amps = 20
		drop := c.ohmPerKft / 1000 * c.feet * amps
		within(t, c.id+" drop as printed", drop, c.printed, c.tolerance)
		ours := ohm(t, size(t, c.gauge), true, 20, true) * c.feet * foot * amps
		if ours > drop || ours < 0.75*drop {
			t.Errorf("%s: ours %.3f V, maximum of the gauge %.3f V", c.id, ours, drop)
		}
	}
}

// thinnest is the thinnest gauge that keeps the drop of amps over a whole loop within limit.
func thinnest(t *testing.T, tempC, loop, amps, limit float64) string {
	t.Helper()
	for _, gauge := range gauges {
		if ohm(t, size(t, gauge), true, tempC, true)*loop*amps <= limit {
			return gauge
		}
	}
	return ""
}

// Sources: AC 43.13-1B page 11-26 (28 V, 50 ft with the return, 20 A, 1 V from memory: No. 8);
// ABYC E-11 tables in a marine catalogue (12 V, 10 A, 21 ft there and back). That
// table rounds 21 ft up to its 25 ft column and so prints 10 AWG where the length itself gives 12.
func TestWorkedSizes(t *testing.T) {
	const elevenTemp = 29 // C: 10.75 ohm cmil/ft of E-11 is copper at this temperature
	for _, c := range []struct {
		id, want          string
		temp, feet, limit float64
		amps              float64
	}{
		{"chart, 1 V", "8 AWG", 20, 50, 1, 20},
		{"3 %", "12 AWG", elevenTemp, 21, 0.36, 10},
		{"3 %, 25 ft column", "10 AWG", elevenTemp, 25, 0.36, 10},
		{"10 %", "16 AWG", elevenTemp, 21, 1.2, 10},
	} {
		if got := thinnest(t, c.temp, c.feet*foot, c.amps, c.limit); got != c.want {
			t.Errorf("%s: %s, want %s", c.id, got, c.want)
		}
	}
}

// Source: explanatory text to ABYC E-11: six 6 V batteries of 2400 A in three strings of two
// give 7200 A. Capacity adds in parallel, blocks add in series; current follows.
func TestWorkedBankFault(t *testing.T) {
	current := func(cells int, capacity float64) float64 {
		_, rested, _ := BatteryVolts("flooded", cells)
		low, _ := BatteryResistance("flooded", capacity, Blocks("flooded", cells))
		return rested.V / low.V
	}
	one, bank := current(3, 220), current(6, 3*220)
	within(t, "bank fault", 2400*bank/one, 7200, 1e-6)
}

// Sources: NFPA 70 310.15(C)(1) in a trade lesson, 310.15(B)(1) in an examination text (0.76
// on the 30 C base; 0.84 belongs to the 40 C base), boat-cable table and 33 CFR 183.425,
// 33 CFR 183.455(c)(1) with Table 5.
func TestWorkedAmpacities(t *testing.T) {
	ac, _, _, _ := AmpacityAC(size(t, "12 AWG"), 90)
	within(t, "nine in a raceway", ac.V*BundleFactor(9, true).V, 21, 1e-9)
	factor := HeatFactor(90, 55, false).V
	within(t, "factor at 55 C", factor, 0.76, 0.005)
	within(t, "ampacity at 55 C", ac.V*factor, 22.8, 0.15)

	dc, _, _, _ := Ampacity(size(t, "10 AWG"), 105)
	engine := HeatFactor(105, 50, true).V
	within(t, "engine space", dc.V*engine, 51, 1e-9)
	within(t, "bundle", dc.V*BundleFactor(4, false).V, 36, 1e-9)
	within(t, "bundle in an engine space", dc.V*BundleFactor(6, false).V*engine, 30.6, 1e-9)

	thin, _, _, _ := Ampacity(size(t, "16 AWG"), 105)
	within(t, "fuse ceiling", DeviceCeiling("us-boat", 12, thin.V).V, 37.5, 1e-9)
}

// Sources: trade guide on NFPA 70 690.7(A)(1) (40 V, -0.30 %/C, -10 C: 44.2 V, 11 modules within
// 500 V); 690.8 and 690.9 (9 A gives 11.25 A, device 14.06 A). The table stands in for modules
// without a coefficient and must not be milder than this one, at any of its temperatures.
func TestWorkedArrays(t *testing.T) {
	byCoefficient := func(coldest float64) float64 { return 1 - 0.0030*(coldest-25) }
	within(t, "module", 40*byCoefficient(-10), 44.2, 1e-9)
	within(t, "string", 11*40*byCoefficient(-10), 486.2, 1e-9)
	for _, k := range lib().voc {
		v, ok := VocFactor(k.at)
		if spare := v.V - byCoefficient(k.at); !ok || spare < 0 || spare > 0.06 {
			t.Errorf("%g C: table %.3f, by coefficient %.4f", k.at, v.V, byCoefficient(k.at))
		}
	}
	within(t, "array circuit", 9*PVFactor().V, 11.25, 1e-9)
	within(t, "array device", 9*PVFactor().V*PVFactor().V, 14.06, 0.005)
}

// Source: electrical installation guide, figure G53 in 1e6 A2s; figures for gauges follow
// from k = 115 and ASTM B258.
func TestWorkedWithstand(t *testing.T) {
	for area, want := range map[float64]float64{1.5: 0.0297, 2.5: 0.0826, 4: 0.2116, 6: 0.4761, 10: 1.3225, 16: 3.3856, 25: 8.2656, 35: 16.2006} {
		within(t, "let-through", Withstand(area, 70).V/1e6, want, 0.0001)
	}
	for gauge, want := range map[string]float64{"18 AWG": 9.0e3, "14 AWG": 5.7e4, "12 AWG": 1.4e5, "10 AWG": 3.7e5, "8 AWG": 9.3e5, "4 AWG": 5.9e6, "2/0 AWG": 6.0e7} {
		within(t, gauge, Withstand(size(t, gauge).Area, 60).V/want, 1, 0.035)
	}
}

// Common practice: a small camper's feed of 10 AWG behind a 20 A fuse is sound at 40 C with 60 C
// insulation, and the step to a 30 A feed is 8 AWG, which carries 30 A at 80 % of its ampacity.
func TestCamperFeed(t *testing.T) {
	iz := func(gauge string) float64 {
		v, _, _, _ := Ampacity(size(t, gauge), 60)
		return v.V * HeatFactor(60, 40, false).V
	}
	ten := iz("10 AWG")
	within(t, "10 AWG", ten, 32.7, 0.05)
	cap10, ok := SmallConductorCap(size(t, "10 AWG"))
	if ceiling := DeviceCeiling("us-rv", 12, ten).V; !ok || 20 > min(ceiling, cap10.V) || 40 <= ceiling {
		t.Errorf("10 AWG: ceiling %.1f A, cap %g A", ceiling, cap10.V)
	}
	if ten*0.8 >= 30 || iz("8 AWG")*0.8 < 30 {
		t.Errorf("30 A at 80 %%: 10 AWG has %.1f A, 8 AWG %.1f A", ten, iz("8 AWG"))
	}
}
