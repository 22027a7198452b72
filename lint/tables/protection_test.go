package tables

import (
	"math"
	"slices"
	"testing"

	"ferrule/schema/quantity"
)

// Sources: 33 CFR 183.455(c) (us-boat), ANSI/RVIA LV 3-2 (us-rv); from memory (iso-boat); others common practice.
func TestDeviceLimit(t *testing.T) {
	for _, c := range []struct {
		practice string
		volts    float64
		want     float64
		status   Status
	}{
		{"us-boat", 12, 1.5, Verified}, {"us-boat", 49.9, 1.5, Verified}, {"us-boat", 50, 1, Verified},
		{"us-boat", math.Inf(1), 1, Verified}, {"us-boat", math.NaN(), 1, Verified},
		{"us-rv", 12, 1, Verified}, {"iso-boat", 12, 1, Memory},
		{"vehicle", 12, 1, CommonPractice}, {"cabin", 48, 1, CommonPractice}, {"general", 12, 1, CommonPractice},
		{"us-boat/below-50", 60, 1, CommonPractice}, {"", 12, 1, CommonPractice},
	} {
		if v := DeviceLimit(c.practice, c.volts); v.V != c.want || v.Cite.Status != c.status {
			t.Errorf("%q at %g V: %+v", c.practice, c.volts, v)
		}
	}
}

// Source: 33 CFR 183.455(c)(2): the next standard size is allowed up to 150 %; ratings after NFPA 70 240.6(A).
func TestDeviceCeiling(t *testing.T) {
	for _, c := range []struct {
		practice  string
		volts, iz float64
		want      float64
	}{
		{"us-boat", 12, 25, 37.5},
		{"us-boat", 120, 25, 25},
		{"us-boat", 120, 26, 30},
		{"us-boat", 120, 0.5, 0.5}, // the next rating is above 150 %
		{"us-boat", 60, 700, 700},
		{"us-rv", 12, 26, 26}, {"general", 60, 26, 26}, {"us-boat", 60, 0, 0},
	} {
		if v := DeviceCeiling(c.practice, c.volts, c.iz); v.V != c.want || !v.Known() {
			t.Errorf("%s, %g V, Iz %g A: %g A, want %g", c.practice, c.volts, c.iz, v.V, c.want)
		}
	}
}

// Source: NFPA 70 240.4(D).
func TestSmallConductorCap(t *testing.T) {
	for text, want := range map[string]float64{
		"14 AWG": 15, "12 AWG": 20, "10 AWG": 30, "13 AWG": 15, "2.5 mm2": 15, "4 mm2": 20, "6 mm2": 30,
		"18 AWG": 15, "16 AWG": 15, "1.5 mm2": 15, "20 AWG": 15, // no more than 14 AWG has
		"8 AWG": 0, "4/0 AWG": 0,
	} {
		if v, ok := SmallConductorCap(size(t, text)); v.V != want || ok != (want > 0) {
			t.Errorf("%s: %g A, %v; want %g A", text, v.V, ok, want)
		}
	}
	if v, _ := SmallConductorCap(size(t, "16 AWG")); v.Cite.String() != "common practice" { // the clause's own row for it was not read
		t.Errorf("16 AWG: %s", v.Cite)
	}
	if v, ok := SmallConductorCap(quantity.Size{}); ok {
		t.Errorf("an unknown size has a cap of %g A", v.V)
	}
}

// Sources: 33 CFR 183.455(b) 7 in and 40 in; ABYC E-11 11.10.1.1.1 72 in; NFPA 70 552.10(E)(4) 18 in;
// 200 mm from memory; 1.0 m and 18 in elsewhere are common practice. 1 in = 25.4 mm.
func TestDeviceDistance(t *testing.T) {
	const in = 0.0254
	read := [3]Status{Verified, Verified, Verified}
	custom := [3]Status{CommonPractice, CommonPractice, CommonPractice}
	for practice, want := range map[string]struct {
		metres [3]float64
		status [3]Status
	}{
		"us-boat":  {[3]float64{7 * in, 40 * in, 72 * in}, read},
		"us-rv":    {[3]float64{18 * in, 18 * in, 18 * in}, read},
		"iso-boat": {[3]float64{0.2, 1, 1}, [3]Status{Memory, CommonPractice, CommonPractice}},
		"vehicle":  {[3]float64{18 * in, 18 * in, 18 * in}, custom},
		"cabin":    {[3]float64{18 * in, 18 * in, 18 * in}, custom},
		"general":  {[3]float64{18 * in, 18 * in, 18 * in}, custom},
		"unheard":  {[3]float64{18 * in, 18 * in, 18 * in}, custom},
	} {
		bare, sheathed, battery := DeviceDistance(practice)
		for i, v := range []Value{bare, sheathed, battery} {
			within(t, practice, v.V, want.metres[i], 1e-9)
			if v.Cite.Status != want.status[i] {
				t.Errorf("%s: %v", practice, v.Cite)
			}
		}
	}
	if _, sheathed, battery := DeviceDistance("us-boat"); sheathed.Cite.Clause != "33 CFR 183.455(b)(2)" || battery.Cite.Clause != "ABYC E-11 11.10.1.1.1 exception 2" {
		t.Errorf("the boat's distances cite %v and %v", sheathed.Cite, battery.Cite)
	}
}

// Source: NFPA 70 240.6(A), 15 to 100 A as a trade summary lists it.
func TestStandardRatings(t *testing.T) {
	all := StandardRatings()
	i, j := slices.Index(all, 15), slices.Index(all, 100)
	want := []float64{15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100}
	if i < 0 || j < i || !slices.Equal(all[i:j+1], want) {
		t.Errorf("ratings %v", all)
	}
	all[0] = -1
	if StandardRatings()[0] == -1 {
		t.Error("a caller can change the table")
	}
}

// Sources: ABYC E-11 11.14.2.6 (us-boat; its quiz on pumps), ISO 10133 (iso-boat), others common practice.
func TestDropLimit(t *testing.T) {
	classes := []string{"critical", "feeder", "bilge-pump", "other", "unheard"}
	for practice, want := range map[string][5]float64{
		"us-boat": {0.03, 0.03, 0.10, 0.10, 0.10}, "iso-boat": {0.03, 0.03, 0.03, 0.10, 0.10},
		"us-rv": {0.03, 0.03, 0.03, 0.10, 0.10}, "general": {0.03, 0.03, 0.03, 0.10, 0.10},
	} {
		for i, class := range classes {
			if v := DropLimit(practice, class); v.V != want[i] {
				t.Errorf("%s %s: %g", practice, class, v.V)
			}
		}
	}
	if v := DropLimit("us-rv", "critical"); v.Cite.Status != CommonPractice {
		t.Errorf("no clause sets a camper's drop, yet %v is cited", v.Cite)
	}
}

// Common practice: milliohms per pole.
func TestJoints(t *testing.T) {
	for kind, want := range map[string]float64{"stud": 0.5e-3, "blade": 2e-3, "glass": 2e-3, "contact": 5e-3} {
		if v := Joint(kind); v.V != want || v.Cite.Status != CommonPractice {
			t.Errorf("%s: %+v", kind, v)
		}
	}
	if Joint("weld").Known() {
		t.Error("a weld has a figure")
	}
	most, continuous := ContactLimit("tow-auxiliary") // 30 A common practice, 20 A from memory
	if most.V != 30 || continuous.V != 20 || continuous.Cite.Status != Memory {
		t.Errorf("charge pin: %+v, %+v", most, continuous)
	}
	if most, _ := ContactLimit("unheard"); most.Known() {
		t.Error("an unknown contact has a figure")
	}
}

// Source: NFPA 70 690.7(A): 1.02 at 20 C was read, the others are from memory. NFPA 70 690.8(A): 1.25.
func TestPhotovoltaicFactors(t *testing.T) {
	for coldest, want := range map[float64]float64{
		40: 1, 25: 1, 24: 1.02, 20: 1.02, 19: 1.04, 10: 1.06, 0: 1.10, -0.5: 1.12, -5: 1.12, -5.5: 1.14,
		-10: 1.14, -20: 1.18, -25: 1.20, -30: 1.21, -35: 1.23, -40: 1.25,
	} {
		v, ok := VocFactor(coldest)
		if !ok || v.V != want || (v.Cite.Status == Memory) != (coldest < 20) {
			t.Errorf("%g C: %+v, %v; want %g", coldest, v, ok, want)
		}
	}
	for _, beyond := range []float64{-40.1, -273, math.NaN(), math.Inf(-1)} {
		if v, ok := VocFactor(beyond); ok || v.Known() {
			t.Errorf("%g C has a factor of %g", beyond, v.V)
		}
	}
	if v := PVFactor(); v.V != 1.25 || v.Cite.Status != Verified {
		t.Errorf("array current: %+v", v)
	}
}

func TestRatingsSayWhereTheyAreFrom(t *testing.T) {
	all := Ratings()
	if len(all) != len(StandardRatings()) {
		t.Fatalf("%d ratings, %d standard ones", len(all), len(StandardRatings()))
	}
	for i, r := range all {
		if !r.Known() || r.V != StandardRatings()[i] {
			t.Errorf("%g A has no origin, or is not in its place", r.V)
		}
	}
}

func TestThicker(t *testing.T) {
	for text, want := range map[string]string{
		"10 AWG": "8 AWG", "1 AWG": "1/0 AWG", "4/0 AWG": "", "4 mm2": "6 mm2", "120 mm2": "", "250 kcmil": "", "0.5 mm2": "0.75 mm2",
	} {
		size, err := quantity.ParseSize(text)
		if err != nil {
			t.Fatal(err)
		}
		sizes, from := Thicker(size)
		got := ""
		if len(sizes) > 0 {
			got = sizes[0].String()
			if from.String() == "" {
				t.Errorf("sizes above %s have no origin", text)
			}
		}
		if got != want {
			t.Errorf("above %s comes %q, want %q", text, got, want)
		}
	}
}
