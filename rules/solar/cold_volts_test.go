package solar

import (
	"fmt"
	"math"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

func pass(t *testing.T, text string) *lint.Pass {
	t.Helper()
	plan, diags := schema.Decode("t.wiring.hcl", []byte("system \"t\" {\n}\n"+text), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, diags := network.Build(plan)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	return lint.NewPass(n, explore.New(n, 0), lint.Guesses{}, time.Time{})
}

// The voltage of an array in the cold, against printed examples. A trade guide on string sizing works
// NFPA 70 690.7(A)(1) for a module of 40 V, -0.30 %/C, at -10 C: 44.2 V a module, and eleven of them,
// 486.2 V, are the most for 500 V. The first row of Table 690.7(A) is 1.02, from 24 C down to 20 C. The
// other rows of the table are from memory.
func TestColdVolts(t *testing.T) {
	for _, x := range []struct {
		coefficient, coldest string
		voc                  float64
		series               int
		want                 float64
	}{
		{`"-0.30 %/C"`, `"-10 C"`, 40, 1, 44.2},
		{`"-0.30 %/C"`, `"-10 C"`, 40, 11, 486.2},
		{`"-120 mV/C"`, `"-10 C"`, 40, 11, 486.2},
		{`"-0.30 %/C"`, `"14 F"`, 40, 1, 44.2},
		{"null", `"20 C"`, 50, 1, 51},
		{"null", `"-20 C"`, 50, 1, 59}, // from memory
		{`"-0.30 %/C"`, `"40 C"`, 40, 2, 80},
		{`"-0.30 %/C"`, "null", 40, 2, 80},
	} {
		p := pass(t, fmt.Sprintf("source \"s\" {\n kind = \"solar\"\n voc = \"%g V\"\n series = %d\n voc_coefficient = %s\n coldest = %s\n}", x.voc, x.series, x.coefficient, x.coldest))
		n, lacks := coldVolts(p, p.Plan.Sources[0])
		if math.Abs(n.Value-x.want) > 0.05 || (x.coldest == "null") != (lacks != nil) {
			t.Errorf("%d modules of %g V, %s, %s: %g V, lacks %v; want %g V", x.series, x.voc, x.coefficient, x.coldest, n.Value, lacks, x.want)
		}
	}
}

// Eleven modules of that example fit 500 V, and twelve do not.
func TestStringLength(t *testing.T) {
	for series, want := range map[int]lint.Outcome{11: lint.Holds, 12: lint.Violated} {
		p := pass(t, fmt.Sprintf(`
source "s" {
  kind            = "solar"
  voc             = "40 V"
  voc_coefficient = "-0.30 %%/C"
  coldest         = "-10 C"
  series          = %d
}
converter "c" {
  kind = "mppt"
  input {
    voltage_max = "500 V"
  }
}
conductor "w" {
  from = source.s
  to   = converter.c.in
}
`, series))
		got := coldArrays(p)
		if len(got) != 1 || got[0].Outcome != want {
			t.Errorf("%d modules: %+v", series, got)
		}
	}
}
