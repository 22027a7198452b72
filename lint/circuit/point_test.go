package circuit_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"ferrule/lint/circuit"
	"ferrule/lint/derive"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
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

// beside reads a kit by its path from the plan's folder.
func beside(from, path string) (string, []byte, error) {
	name := filepath.Join(filepath.Dir(from), path)
	text, err := os.ReadFile(name)
	return name, text, err
}

// Every example, in its states and at every corner: Kirchhoff's law holds and nothing is NaN. With
// everything on at once a small generator can be asked for more than it gives; then the share is told.
func TestExamplesHaveOperatingPoints(t *testing.T) {
	files, _ := filepath.Glob("../../examples/*.wiring.hcl")
	if len(files) < 4 {
		t.Fatalf("examples: %v", files)
	}
	found, all := 0, 0
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		plan, diags := schema.Decode(f, text, beside)
		if diags.HasErrors() {
			t.Fatal(diags)
		}
		net, _ := network.Build(plan)
		c := circuit.New(explore.New(net, 0), circuit.Guesses{})
		for _, v := range states(c, 100) {
			for _, charge := range []circuit.Charge{circuit.Empty, circuit.Rested, circuit.EndOfCharge} {
				p := c.Point(v, circuit.Setting{Charge: charge, High: true})
				if all++; !p.Found {
					if p.Margin <= 0 || p.Margin >= 1 || len(p.Lacks) > 0 || c.Net.Node("source.generator.line") == network.None {
						t.Errorf("%s: corner %d: no operating point, margin %g, lacks %v", filepath.Base(f), charge, p.Margin, p.Lacks)
					}
					continue
				}
				found++
				if r := p.Residual(); !(r < 1e-5) {
					t.Errorf("%s: residual %g", f, r)
				}
				for i := range c.Net.Loads {
					if n, ok := p.VoltsAt(c.Net.Loads[i].Port); ok {
						traced(t, n)
					}
					if u, ok := p.Across(c.Net.Loads[i].Port); ok && (math.IsNaN(u) || u < 0) {
						t.Errorf("%s: %s at %g V", f, c.Net.Loads[i].Addr, u)
					}
				}
			}
		}
	}
	if found < all/2 {
		t.Errorf("only %d of %d have a point", found, all)
	}
}

// traced checks by hand that a solved voltage is its supply's less what is lost on the way.
func traced(t *testing.T, n derive.Number) {
	t.Helper()
	if len(n.From) == 0 {
		t.Errorf("%s has no derivation", n.Name)
		return
	}
	sum := n.From[0].Value
	for _, lost := range n.From[1:] {
		sum -= lost.Value
	}
	if math.Abs(sum-n.Value) > 1e-6*(1+n.Value) {
		t.Errorf("%s is %g V, its parts make %g V", n.Name, n.Value, sum)
	}
}
