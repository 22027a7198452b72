package circuit_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/explore"
)

// every distinct state of a plan, up to so many
func states(c *circuit.Circuit, most int) []*explore.View {
	var out []*explore.View
	seen := map[string]bool{}
	c.Space.Each(func(v *explore.View) {
		if k := v.Signature(); !seen[k] && len(out) < most {
			seen[k] = true
			out = append(out, v)
		}
	})
	return out
}

// Every example, in its states and at every corner: Kirchhoff's law holds, nothing is NaN, and no plan
// that is sound lacks an operating point.
func TestExamplesHaveOperatingPoints(t *testing.T) {
	files, _ := filepath.Glob("../../examples/*.wiring.hcl")
	if len(files) < 4 {
		t.Fatalf("examples: %v", files)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "kit =") {
			continue // read by the command's own tests
		}
		c := build(t, string(text))
		for _, v := range states(c, 300) {
			for _, charge := range []circuit.Charge{circuit.Empty, circuit.Rested, circuit.EndOfCharge} {
				p := c.Point(v, circuit.Setting{Charge: charge, High: true})
				if !p.Found {
					t.Errorf("%s: %v corner %d: no operating point, margin %g, lacks %v", filepath.Base(f), v.Witness(nil), charge, p.Margin, p.Lacks)
					continue
				}
				if r := p.Residual(); !(r < 1e-6) {
					t.Errorf("%s: residual %g", f, r)
				}
				for i := range c.Net.Loads {
					if u, ok := p.Across(c.Net.Loads[i].Port); ok && (math.IsNaN(u) || u < 0) {
						t.Errorf("%s: %s at %g V", f, c.Net.Loads[i].Addr, u)
					}
				}
			}
		}
	}
}
