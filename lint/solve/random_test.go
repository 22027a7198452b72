package solve_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint/solve"
)

// network draws a connected network, meshed or not: the reference 0, hot nodes on it by sources and loads.
func network(t *rapid.T, linear bool) *solve.Net {
	nodes := rapid.IntRange(2, 24).Draw(t, "nodes")
	n := &solve.Net{Nodes: nodes, References: []int{0}}
	ohms := func() float64 {
		if rapid.IntRange(0, 4).Draw(t, "joined") == 0 {
			return 0
		}
		return rapid.Float64Range(1e-4, 0.2).Draw(t, "ohm")
	}
	for i := 2; i < nodes; i++ {
		n.Branches = append(n.Branches, solve.Branch{A: rapid.IntRange(1, i-1).Draw(t, "to"), B: i, Ohms: ohms()})
	}
	for range rapid.IntRange(0, nodes/2).Draw(t, "meshes") {
		a, b := rapid.IntRange(1, nodes-1).Draw(t, "a"), rapid.IntRange(1, nodes-1).Draw(t, "b")
		n.Branches = append(n.Branches, solve.Branch{A: a, B: b, Ohms: ohms()})
	}
	at := func() int { return rapid.IntRange(1, nodes-1).Draw(t, "at") }
	for range rapid.IntRange(1, 3).Draw(t, "batteries") {
		n.Elements = append(n.Elements, solve.Element{Kind: solve.Battery, P: at(), N: 0, Volts: rapid.Float64Range(11, 14).Draw(t, "emf"), Ohms: rapid.Float64Range(1e-3, 0.05).Draw(t, "r")})
	}
	most := 7
	if linear {
		most = 1
	}
	for range rapid.IntRange(0, 6).Draw(t, "elements") {
		e := solve.Element{P: at(), N: 0}
		switch rapid.IntRange(0, most).Draw(t, "kind") {
		case 0:
			e.Kind, e.Ohms = solve.Resistor, rapid.Float64Range(0.5, 50).Draw(t, "r")
		case 1:
			e.Kind, e.Amps, e.Floor = solve.Steady, rapid.Float64Range(0.1, 5).Draw(t, "i"), 0.1
		case 2, 3:
			e.Kind, e.Watts = solve.Power, rapid.Float64Range(1, 80).Draw(t, "w")
		case 4:
			e.Kind, e.Volts, e.Amps = solve.Regulated, rapid.Float64Range(12, 15).Draw(t, "v"), rapid.Float64Range(1, 50).Draw(t, "i")
			e.Ohms, e.Back = 0.01*e.Volts/e.Amps, rapid.Bool().Draw(t, "back")
		case 5:
			e.Kind = solve.Array
			e.Cell, _ = solve.NewCell(21.6, 6.1, 17.8, 5.6, rapid.Float64Range(0, 1).Draw(t, "sun"), 1, 2)
		case 6:
			e.Kind, e.Volts, e.Ohms, e.N = solve.Valve, rapid.Float64Range(0, 0.7).Draw(t, "v"), 0.001, at()
		case 7:
			e.Kind, e.Volts, e.Ohms, e.Amps = solve.Battery, rapid.Float64Range(11, 14).Draw(t, "emf"), 0.01, rapid.Float64Range(1, 10).Draw(t, "takes")
		}
		n.Elements = append(n.Elements, e)
	}
	if !linear {
		for range rapid.IntRange(0, 2).Draw(t, "converters") {
			c := solve.Converter{InP: at(), OutP: at(), Volts: rapid.Float64Range(12, 15).Draw(t, "v"), Amps: rapid.Float64Range(1, 20).Draw(t, "i"), Efficiency: rapid.Float64Range(0.7, 1).Draw(t, "eff"),
				Idle: rapid.Float64Range(0, 3).Draw(t, "idle"), Back: rapid.Bool().Draw(t, "back")}
			c.Ohms = 0.01 * c.Volts / c.Amps
			if rapid.Bool().Draw(t, "limited") {
				c.InAmps = rapid.Float64Range(2, 20).Draw(t, "in")
			}
			n.Converters = append(n.Converters, c)
		}
	}
	return n
}

// kirchhoff is the largest current that enters a node and does not leave it, and the power that is
// given and not taken: sources less loads, resistances and what converters lose.
func kirchhoff(n *solve.Net, p *solve.Point) (amps, watts float64) {
	sum := make([]float64, n.Nodes)
	for k, b := range n.Branches {
		sum[b.A] -= p.Branch[k]
		sum[b.B] += p.Branch[k]
		watts -= p.Branch[k] * p.Branch[k] * b.Ohms
	}
	across := func(a, b int) float64 { return p.Volts[a] - p.Volts[b] }
	for k, e := range n.Elements {
		sum[e.P] += p.Element[k]
		sum[e.N] -= p.Element[k]
		watts += p.Element[k] * across(e.P, e.N)
	}
	for k, c := range n.Converters {
		sum[c.InP] -= p.In[k]
		sum[c.InN] += p.In[k]
		sum[c.OutP] += p.Out[k]
		sum[c.OutN] -= p.Out[k]
		watts += p.Out[k]*across(c.OutP, c.OutN) - p.In[k]*across(c.InP, c.InN)
	}
	for _, x := range sum {
		amps = max(amps, math.Abs(x))
	}
	return amps, watts
}

func TestEveryPointKeepsKirchhoffAndEnergy(t *testing.T) {
	found, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		n := network(t, false)
		s, err := solve.New(n)
		if err != nil {
			t.Fatal(err)
		}
		p := s.Solve()
		all++
		if !p.Found {
			if !p.Folds {
				t.Fatalf("gave up: %+v", p)
			}
			return
		}
		found++
		amps, watts := kirchhoff(n, p)
		if amps > 1e-6 || math.Abs(watts) > 1e-4 {
			t.Fatalf("current left over %g A, power %g W", amps, watts)
		}
	})
	t.Logf("%d of %d have a point", found, all)
}

// dense solves the linear network by Gauss with pivots, as textbooks do, each joined branch a nanoohm.
func dense(n *solve.Net) []float64 {
	g := make([][]float64, n.Nodes)
	for i := range g {
		g[i] = make([]float64, n.Nodes+1)
	}
	conduct := func(a, b int, y float64) {
		g[a][a], g[b][b], g[a][b], g[b][a] = g[a][a]+y, g[b][b]+y, g[a][b]-y, g[b][a]-y
	}
	for _, b := range n.Branches {
		if b.A != b.B {
			conduct(b.A, b.B, 1/max(b.Ohms, 1e-9))
		}
	}
	for _, e := range n.Elements {
		switch e.Kind {
		case solve.Battery:
			conduct(e.P, e.N, 1/e.Ohms)
			g[e.P][n.Nodes] += e.Volts / e.Ohms
		case solve.Resistor:
			conduct(e.P, e.N, 1/e.Ohms)
		case solve.Steady:
			g[e.P][n.Nodes] -= e.Amps
		}
	}
	for j := range g[0] {
		g[0][j] = 0
	}
	g[0][0] = 1
	for k := range g {
		best := k
		for i := k; i < len(g); i++ {
			if math.Abs(g[i][k]) > math.Abs(g[best][k]) {
				best = i
			}
		}
		g[k], g[best] = g[best], g[k]
		for i := range g {
			if f := g[i][k] / g[k][k]; i != k && f != 0 {
				for j := k; j <= n.Nodes; j++ {
					g[i][j] -= f * g[k][j]
				}
			}
		}
	}
	out := make([]float64, n.Nodes)
	for i := range out {
		out[i] = g[i][n.Nodes] / g[i][i]
	}
	return out
}

// The dense textbook solve is the oracle of linear networks.
func TestLinearNetworksAgreeWithADenseSolve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := network(t, true)
		s, err := solve.New(n)
		if err != nil {
			t.Fatal(err)
		}
		p := s.Solve()
		if !p.Found {
			t.Fatal("no point in a linear network")
		}
		for i, want := range dense(n) {
			if math.Abs(p.Volts[i]-want) > 1e-5*(1+math.Abs(want)) {
				t.Fatalf("node %d: %.9g, want %.9g", i, p.Volts[i], want)
			}
		}
	})
}
