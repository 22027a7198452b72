package solve_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ferrule/lint/solve"
)

// figure draws over decades, and now and then nothing at all.
func figure(t *rapid.T, what string, low, high float64) float64 {
	if rapid.IntRange(0, 20).Draw(t, what+" is 0") == 0 {
		return 0
	}
	return math.Pow(10, rapid.Float64Range(math.Log10(low), math.Log10(high)).Draw(t, what))
}

// hostile draws a network of figures that no wiring has: microhms beside megohms, megawatts on a penlight
// cell, supplies that give nothing, converters in rings, islands without a supply.
func hostile(t *rapid.T) *solve.Net {
	nodes := rapid.IntRange(2, 14).Draw(t, "nodes")
	n := &solve.Net{Nodes: nodes, References: []int{0}}
	at := func(what string) int { return rapid.IntRange(0, nodes-1).Draw(t, what) }
	ohms := func(what string) float64 { return max(figure(t, what, 1e-6, 1e6), 1e-9) }
	for range rapid.IntRange(1, 2*nodes).Draw(t, "branches") {
		n.Branches = append(n.Branches, solve.Branch{A: at("a"), B: at("b"), Ohms: figure(t, "branch", 1e-6, 1e6)})
	}
	for range rapid.IntRange(1, 8).Draw(t, "elements") {
		e := solve.Element{Kind: solve.Kind(rapid.IntRange(1, 8).Draw(t, "kind")), P: at("p"), N: at("n"), Volts: figure(t, "volts", 1e-3, 1e3), Ohms: ohms("ohm"),
			Amps: figure(t, "amps", 1e-6, 1e6), Watts: figure(t, "watts", 1e-6, 1e6), Floor: figure(t, "floor", 1e-3, 1e2), Back: rapid.Bool().Draw(t, "back")}
		if e.Kind == solve.Array {
			voc, isc := max(e.Volts, 1e-3), max(e.Amps, 1e-6)
			if e.Cell, _ = solve.NewCell(voc, isc, voc*rapid.Float64Range(0.3, 0.999).Draw(t, "vmp"), isc*rapid.Float64Range(0.3, 0.999).Draw(t, "imp"), 1, 1, 1); e.Cell == nil {
				continue
			}
		}
		n.Elements = append(n.Elements, e)
	}
	for range rapid.IntRange(0, 3).Draw(t, "converters") {
		n.Converters = append(n.Converters, solve.Converter{InP: at("ip"), InN: at("in"), OutP: at("op"), OutN: at("on"), Volts: max(figure(t, "volts", 1e-3, 1e3), 1e-3), Ohms: ohms("ohm"),
			Amps: figure(t, "amps", 1e-6, 1e6), Efficiency: rapid.Float64Range(0.01, 1).Draw(t, "efficiency"), Idle: figure(t, "idle", 1e-3, 1e6), Ceiling: figure(t, "ceiling", 1e-3, 1e6), InAmps: figure(t, "input", 1e-3, 1e6), Back: rapid.Bool().Draw(t, "back")})
	}
	return n
}

// Whatever the figures: no panic, no endless search, and every number of a point that was found is one.
func TestHostileFiguresMakeNoNonsense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := hostile(t)
		s, err := solve.New(n)
		if err != nil {
			return
		}
		p := s.Solve()
		if !p.Found {
			if !(p.Margin >= 0 && p.Margin < 1) {
				t.Fatalf("margin %g", p.Margin)
			}
			return
		}
		for _, list := range [][]float64{p.Volts, p.Branch, p.Element, p.In, p.Out} {
			for _, x := range list {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("%g in %+v", x, p)
				}
			}
		}
		// What leaks under a kilovolt, and what rounding leaves: of a volt over a microhm, of the largest current.
		if amps, _ := kirchhoff(n, p); amps > 1e-4+1e-9*far(p.Volts)/1e-6+1e-9*far(p.Branch, p.Element, p.In, p.Out) {
			t.Fatalf("current left over %g A in %+v of %+v", amps, p, n)
		}
	})
}

// far is the largest of lists, of either sign.
func far(lists ...[]float64) (most float64) {
	for _, list := range lists {
		for _, x := range list {
			most = max(most, math.Abs(x))
		}
	}
	return most
}

// A mesh of all with all is refused before it costs time or memory, and so is a solve that would go on.
func TestDenseMeshIsRefused(t *testing.T) {
	const nodes = 1000
	n := &solve.Net{Nodes: nodes}
	for i := range nodes {
		for j := range i {
			n.Branches = append(n.Branches, solve.Branch{A: i, B: j, Ohms: 1})
		}
	}
	start := time.Now()
	if _, err := solve.New(n); err == nil {
		t.Error("a mesh of all with all was taken")
	}
	if took := time.Since(start); took > 20*time.Second {
		t.Errorf("refused after %v", took)
	}
}

// A bus with very many wires on it, each to a diode and a constant power, has many corners and one point.
func TestWideBus(t *testing.T) {
	const wires = 3000
	n := &solve.Net{Nodes: 2 + 2*wires, References: []int{0}, Elements: []solve.Element{{Kind: solve.Battery, P: 1, N: 0, Volts: 12.8, Ohms: 1e-4}}}
	for i := range wires {
		a := 2 + 2*i
		n.Branches = append(n.Branches, solve.Branch{A: 1, B: a, Ohms: 0.01 + 1e-5*float64(i)})
		n.Elements = append(n.Elements, solve.Element{Kind: solve.Valve, P: a, N: a + 1, Volts: 0.7, Ohms: 1e-3}, solve.Element{Kind: solve.Power, P: a + 1, N: 0, Watts: 1, Floor: 1.2})
	}
	p := point(t, n)
	if !p.Found {
		t.Fatalf("margin %g", p.Margin)
	}
	if amps, watts := kirchhoff(n, p); amps > 1e-6 || math.Abs(watts) > 1e-3 {
		t.Errorf("current left over %g A, power %g W", amps, watts)
	}
}

// A prepared system is solved without memory beyond its result.
func TestSolvingAllocatesItsResultAlone(t *testing.T) {
	n := &solve.Net{Nodes: 3, References: []int{2}, Branches: []solve.Branch{{A: 0, B: 1, Ohms: 0.06}},
		Elements: []solve.Element{{Kind: solve.Battery, P: 0, N: 2, Volts: 12, Ohms: 0.02}, {Kind: solve.Power, P: 1, N: 2, Watts: 300}}}
	s, err := solve.New(n)
	if err != nil {
		t.Fatal(err)
	}
	if a := testing.AllocsPerRun(100, func() { s.Solve() }); a > 2 {
		t.Errorf("%g allocations", a)
	}
}
