package backfeed

import (
	"math"
	"testing"
	"time"

	"ferrule/lint"
	"ferrule/lint/circuit"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema/files"
)

// Between two like batteries the tie has R_house / (R_house + R_tie + R_start) of a load (Kirchhoff's laws):
// of 150 A, with 10 mohm against 20 mohm of battery and about 10 mohm of wires, 38 A.
func TestTieShare(t *testing.T) {
	plan, diags, _ := (&files.Reader{}).Load("testdata/tie-carries-house-load/violating.wiring.hcl")
	if len(diags) > 0 {
		t.Fatal(diags)
	}
	n, _ := network.Build(plan)
	p := lint.NewPass(n, explore.New(n, explore.DefaultBound), lint.Guesses{}, time.Time{})
	ohms := 0.0
	for _, addr := range []string{"conductor.start", "conductor.house"} {
		for _, e := range n.EdgesOf(addr) {
			r, lacks := p.Circuit.Ohms(e, circuit.Operating)
			if lacks != nil {
				t.Fatal(lacks)
			}
			ohms += r.Value
		}
	}
	if math.Abs(ohms-0.010) > 0.0005 {
		t.Fatalf("the tie's wires have %g ohm", ohms)
	}
	v := tiesCarry(p)
	if len(v) != 1 || v[0].Outcome != lint.Violated {
		t.Fatal(v)
	}
	got, want := v[0].Numbers[len(v[0].Numbers)-1].Value, 150*0.010/(0.010+0.020+ohms)
	if math.Abs(got-want) > 0.001*want || math.Abs(got-38) > 0.5 {
		t.Errorf("%g A, and it must be %g A", got, want)
	}
}
