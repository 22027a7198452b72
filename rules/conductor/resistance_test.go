package conductor

import (
	"math"
	"testing"

	"ferrule/lint/network"
	"ferrule/lint/tables"
	"ferrule/schema/quantity"
)

// Twelve equal resistances along the edges of a cube: 7/12 across an edge, 3/4 across a face, 5/6 through
// the cube. A common textbook exercise, solved by symmetry (from memory); the bridge is Wheatstone's.
func TestMeshOfResistances(t *testing.T) {
	cube := func() mesh {
		m := mesh{}
		for a := range 8 {
			for _, bit := range []int{1, 2, 4} {
				if b := a ^ bit; b > a {
					m.join(network.NodeID(a), network.NodeID(b), 1)
				}
			}
		}
		return m
	}
	for far, want := range map[network.NodeID]float64{1: 7.0 / 12, 3: 3.0 / 4, 7: 5.0 / 6} {
		if got, ok := cube().between(0, far); !ok || math.Abs(got-want) > 1e-12 {
			t.Errorf("from corner 0 to %d: %g ohm, want %g", far, got, want)
		}
	}
	m := mesh{} // 2, 3, 4, 6 and 5 across: balanced, so the 5 carries nothing and (2+4) lies beside (3+6)
	for _, x := range []struct {
		a, b network.NodeID
		ohms float64
	}{{0, 1, 2}, {0, 2, 3}, {1, 3, 4}, {2, 3, 6}, {1, 2, 5}} {
		m.join(x.a, x.b, 1/x.ohms)
	}
	if got, ok := m.between(0, 3); !ok || math.Abs(got-3.6) > 1e-12 {
		t.Errorf("balanced bridge: %g ohm, want 3.6", got)
	}
}

// What the rule's text says of 25 A: R from the nominal areas of ASTM B258 and copper of 1/58 ohm mm2/m
// (IEC 60028), strands 2 % more.
func TestHeatInAWire(t *testing.T) {
	for _, x := range []struct {
		awg         int
		area, watts float64
	}{{10, 5.261, 2}, {18, 0.823, 13}} {
		r, _, ok := tables.OhmPerMetre(quantity.Size{Name: "x", Area: x.area, AWG: x.awg, System: quantity.AWG}, true, "copper", 20, true)
		if got := 25 * 25 * r.V; !ok || math.Abs(got-x.watts) > 0.05*x.watts {
			t.Errorf("%d AWG at 25 A: %.2f W/m, the text says %g", x.awg, got, x.watts)
		}
	}
}
