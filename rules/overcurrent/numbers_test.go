package overcurrent

import (
	"math"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/tables"
	"ferrule/schema"
	"ferrule/schema/quantity"
)

// TestLargestDevice asks what may guard a conductor of a given size by each practice, at 30 C and
// alone, against published figures.
func TestLargestDevice(t *testing.T) {
	for _, x := range []struct {
		practice, size string
		insulation     float64
		volts, want    float64
		source         string
	}{
		{"us-boat", "16 AWG", 105, 12, 37.5, "33 CFR 183.455(c)(1): 150 % of Table 5's 25 A"},
		{"us-boat", "18 AWG", 60, 12, 15, "33 CFR 183.455(c)(1): 150 % of Table 5's 10 A"},
		{"us-boat", "10 AWG", 105, 58.4, 60, "33 CFR 183.455(c)(2): from 50 V Table 5's 60 A, a standard rating"},
		{"us-boat", "8 AWG", 60, 58.4, 60, "33 CFR 183.455(c)(2): 55 A is no standard rating of NFPA 70 240.6(A), 60 A is the next"},
		{"general", "16 AWG", 105, 12, 25, "33 CFR 183.425 Table 5; no more than that is common practice"},
		{"us-rv", "16 AWG", 105, 12, 15, "common practice: no more than NFPA 70 240.4(D)(3) allows on 14 AWG"},
		{"us-rv", "14 AWG", 105, 12, 15, "NFPA 70 240.4(D)"},
		{"us-rv", "12 AWG", 105, 12, 20, "NFPA 70 240.4(D)"},
		{"us-rv", "10 AWG", 105, 12, 30, "NFPA 70 240.4(D)"},
		{"us-rv", "8 AWG", 60, 12, 55, "33 CFR 183.425 Table 5; ANSI/RVIA LV 3-2"},
	} {
		size, err := quantity.ParseSize(x.size)
		if err != nil {
			t.Fatal(err)
		}
		v, _, _, ok := tables.Ampacity(size, x.insulation)
		if !ok {
			t.Fatalf("no ampacity of %s at %g C", x.size, x.insulation)
		}
		c := &schema.Conductor{}
		c.Size.Size = size
		iz := derive.LookUp("ampacity", "Iz", v.V, "A", x.source)
		most, _ := graded(x.practice, c, iz, derive.LookUp("volts", "V", x.volts, "V", x.source))
		if math.Abs(most.Value-x.want) > 1e-9 {
			t.Errorf("%s, %s, %g C, %g V: %g A, want %g A (%s)", x.practice, x.size, x.insulation, x.volts, most.Value, x.want, x.source)
		}
	}
}

// TestFirstDevice asks how far the first device may be, in inches.
func TestFirstDevice(t *testing.T) {
	const inch = 0.0254
	for _, x := range []struct {
		practice                string
		bare, sheathed, battery float64
		source                  string
	}{
		{"us-boat", 7, 40, 72, "33 CFR 183.455(b): 7 in (178 mm), 40 in sheathed; ABYC E-11: 72 in sheathed and straight from the battery"},
		{"us-rv", 18, 18, 18, "NFPA 70 552.10(E)(4): 18 in (457 mm)"},
	} {
		plan := &schema.Plan{System: &schema.System{}}
		plan.System.Practice.List = []schema.Text{{Value: x.practice}}
		a := allowanceOf(plan)
		for i, n := range []derive.Number{a.bare, a.sheathed, a.battery} {
			if want := []float64{x.bare, x.sheathed, x.battery}[i] * inch; math.Abs(n.Value-want) > 0.001 {
				t.Errorf("%s: %s is %g m, want %g m (%s)", x.practice, n.Name, n.Value, want, x.source)
			}
		}
	}
}

// TestOpens asks the latest gates of blade fuses: one of 10 A at 200 % within 5 s; the slowest of 60 A,
// the large size, at 135, 200 and 350 % within 1800, 50 and 7 s (data sheet figures of ISO 8820-3 types, read in
// an engineering note that copies them).
func TestOpens(t *testing.T) {
	for _, x := range []struct{ rating, amps, within float64 }{{10, 20, 5}, {60, 81, 1800}, {60, 120, 50}, {60, 210, 7}} {
		if n, ok := circuit.Opens(blade(x.rating), x.amps); !ok || math.Abs(n.Value-x.within) > 1e-6*x.within {
			t.Errorf("a %g A blade at %g A opens within %g s (known: %t), want %g s", x.rating, x.amps, n.Value, ok, x.within)
		}
	}
	if _, ok := circuit.Opens(blade(60), 80); ok {
		t.Error("a 60 A blade is said to open at 80 A, below its first gate of 135 %")
	}
}

func blade(rating float64) *schema.Fuse {
	f := &schema.Fuse{}
	f.Kind.Value, f.Kind.Set = "blade", true
	f.Rating.Value, f.Rating.Set = rating, true
	return f
}
