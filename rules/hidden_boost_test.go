package rules

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// boostAt solves the boost of the flawed 3_2, engine off and plug mated, drawing watts at its input. source stands in
// for the starting battery; "" is the battery itself, empty: 11.8 V behind 2.5 mohm.
func boostAt(t *testing.T, source string, watts float64) *circuit.Point {
	t.Helper()
	src, err := os.ReadFile("../testdata/hidden/3_2_flawed.wiring.hcl")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(`"324 W"`, fmt.Sprintf(`"%g W"`, 0.9*watts), `"6.75 A"`, fmt.Sprintf(`"%g A"`, 0.9*watts/48)).Replace(string(src))
	if source != "" {
		from, to := strings.Index(text, `source "start" {`), strings.Index(text, `fuse "boost" {`)
		text = text[:from] + source + text[to:]
	}
	plan, diags := schema.Decode("boost.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	n, _ := network.Build(plan)
	p := lint.NewPass(n, explore.New(n, explore.DefaultBound), lint.Guesses{}, time.Time{})
	in := n.Converters[0].In // in the order of the plan the boost comes first
	views, _ := p.Space.Views(n.ZoneOf(in.Hot), explore.All())
	for _, v := range views {
		if v.Joined(n.Node("source.start.pos"), in.Hot) && !v.HasSource(0) {
			return p.Circuit.Point(v, circuit.Setting{Charge: circuit.Empty})
		}
	}
	t.Fatal("no state has the plug mated and the engine off")
	return nil
}

// The figures of the hazard: watts over 12.6 V are 28.6 A, solved are 38 A, 44 A at 11.8 V, and no point above 420 W;
// by I = (V - sqrt(V^2 - 4 P R)) / 2R and P = V^2 / 4R with 82.5 mohm, there and back.
func TestHiddenBoostFigures(t *testing.T) {
	const ohms, watts = 0.0825, 360
	stiff := "source \"start\" {\n  kind = \"supply\"\n  voltage = \"12.6 V\"\n  rated = \"50 A\"\n  always = true\n}\n\n" // 1 % at 50 A: 2.5 mohm
	for _, c := range []struct {
		source      string
		volts, amps float64
	}{{stiff, 12.6, 38}, {"", 11.8, 44}} {
		p := boostAt(t, c.source, watts)
		got, exact := p.InAmps(0), (c.volts-math.Sqrt(c.volts*c.volts-4*watts*ohms))/(2*ohms)
		if !p.Found || math.Abs(got-c.amps) > 0.5 || math.Abs(got-exact) > 0.01*exact {
			t.Errorf("at %g V: %g A, and it must be %g A (%g A)", c.volts, got, c.amps, exact)
		}
	}
	if p := boostAt(t, "", 415); !p.Found {
		t.Error("no point at 415 W")
	}
	if p := boostAt(t, "", 425); p.Found || math.Abs(425*p.Margin-11.8*11.8/(4*ohms)) > 4 {
		t.Errorf("at 425 W found %v, up to %g W", p.Found, 425*p.Margin)
	}
}
