package solve_test

import (
	"math"
	"testing"

	"ferrule/lint/solve"
)

// TestMostInto has one module of known best power (its own data-sheet figures), two in a row and two side by side: the
// most is as many times that. A supply of more volts that meets the rest in one node gives nothing there, and
// changes nothing.
func TestMostInto(t *testing.T) {
	cell, ok := solve.NewCell(38.3, 9.2, 31.2, 8.7, 1, 1, 1)
	if !ok {
		t.Fatal("no curve")
	}
	array := func(p, n int) solve.Element { return solve.Element{Kind: solve.Array, P: p, N: n, Cell: cell} }
	for _, c := range []struct {
		name  string
		net   solve.Net
		times float64
	}{
		{"one", solve.Net{Nodes: 2, Elements: []solve.Element{array(1, 0)}}, 1},
		{"two side by side", solve.Net{Nodes: 2, Elements: []solve.Element{array(1, 0), array(1, 0)}}, 2},
		{"two in a row", solve.Net{Nodes: 3, Elements: []solve.Element{array(1, 2), array(2, 0)}}, 2},
		{"a supply elsewhere", solve.Net{Nodes: 5, Branches: []solve.Branch{{A: 0, B: 2, Ohms: 0.01}, {A: 3, B: 4, Ohms: 0.01}},
			Elements: []solve.Element{array(1, 0), {Kind: solve.Regulated, P: 4, N: 2, Volts: 400, Ohms: 0.1, Amps: 50}}}, 1},
		{"nothing", solve.Net{Nodes: 2, Branches: []solve.Branch{{A: 1, B: 0, Ohms: 1}}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := new(solve.Memory).MostInto(&c.net, 1, 0, 1)
			if want := c.times * 31.2 * 8.7; ok != (want > 0) || math.Abs(got-want) > 1e-3*want {
				t.Errorf("%g W, %v; want %g W", got, ok, want)
			}
		})
	}
}
