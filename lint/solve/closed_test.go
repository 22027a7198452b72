package solve_test

import (
	"math"
	"testing"

	"ferrule/lint/solve"
)

func point(t *testing.T, n *solve.Net) *solve.Point {
	t.Helper()
	s, err := solve.New(n)
	if err != nil {
		t.Fatal(err)
	}
	return s.Solve()
}

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)+1e-12) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

// Closed forms of the textbooks: Ohm's law and Kirchhoff's.

func TestDivider(t *testing.T) {
	p := point(t, &solve.Net{Nodes: 3, Branches: []solve.Branch{{A: 0, B: 1, Ohms: 2}, {A: 1, B: 2, Ohms: 4}},
		Elements: []solve.Element{{Kind: solve.Battery, P: 0, N: 2, Volts: 12, Ohms: 1e-6}}, References: []int{2}})
	near(t, "middle", p.Volts[1], 8, 1e-6)
	near(t, "current", p.Branch[0], 2, 1e-6)
	near(t, "source", p.Element[0], 12/6.000001, 1e-8)
}

func TestTwoBatteriesInParallel(t *testing.T) {
	p := point(t, &solve.Net{Nodes: 2, References: []int{1}, Elements: []solve.Element{
		{Kind: solve.Battery, P: 0, N: 1, Volts: 13, Ohms: 0.01},
		{Kind: solve.Battery, P: 0, N: 1, Volts: 12, Ohms: 0.03},
		{Kind: solve.Resistor, P: 0, N: 1, Ohms: 1}}})
	v := (13/0.01 + 12/0.03) / (1/0.01 + 1/0.03 + 1) // Millman's theorem
	near(t, "volts", p.Volts[0], v, 1e-12)
	near(t, "first", p.Element[0], (13-v)/0.01, 1e-9)
	near(t, "second", p.Element[1], (12-v)/0.03, 1e-9)
}

// A constant power behind a resistance: v = (V + sqrt(V^2 - 4 R P)) / 2, and none where V^2 < 4 R P
// (maximum power transfer: V^2 / 4 R).
func TestConstantPower(t *testing.T) {
	for _, watts := range []float64{1, 100, 300, 400, 449.9, 451, 600, 5000} {
		p := point(t, &solve.Net{Nodes: 3, References: []int{2}, Branches: []solve.Branch{{A: 0, B: 1, Ohms: 0.06}},
			Elements: []solve.Element{{Kind: solve.Battery, P: 0, N: 2, Volts: 12, Ohms: 0.02}, {Kind: solve.Power, P: 1, N: 2, Watts: watts}}})
		if most := 12 * 12 / 4 / 0.08; watts > most {
			if p.Found || !p.Folds {
				t.Errorf("%g W: found %v folds %v, and only %g W can pass", watts, p.Found, p.Folds, most)
			}
			near(t, "margin", p.Margin, most/watts, 1e-5)
			continue
		}
		if !p.Found {
			t.Fatalf("%g W: not found, margin %g", watts, p.Margin)
		}
		near(t, "volts", p.Volts[1], (12+math.Sqrt(144-4*0.08*watts))/2, 1e-8)
	}
}

// A boost that asks for 360 W over 83 mohm: 38 A at 12.6 V and 44 A at 11.8 V, and above 420 W no
// point at 11.8 V (V^2 / 4 R = 419 W).
func TestConverterAtTheEndOfALine(t *testing.T) {
	for _, c := range []struct{ volts, watts, amps float64 }{{12.6, 360, 38.1}, {11.8, 360, 44.0}, {11.8, 421, 0}} {
		p := point(t, &solve.Net{Nodes: 4, References: []int{2}, Branches: []solve.Branch{{A: 0, B: 1, Ohms: 0.082}},
			Elements:   []solve.Element{{Kind: solve.Battery, P: 0, N: 2, Volts: c.volts, Ohms: 0.001}, {Kind: solve.Power, P: 3, N: 2, Watts: 48}},
			Converters: []solve.Converter{{InP: 1, InN: 2, OutP: 3, OutN: 2, Volts: 48, Ohms: 0.08, Amps: 2, Efficiency: 48 / c.watts}}})
		if (c.amps > 0) != p.Found {
			t.Fatalf("%+v: found %v, margin %v", c, p.Found, p.Margin)
		}
		if p.Found {
			near(t, "input", p.In[0], c.amps, 1e-2) // the figures are rounded to the ampere
		}
	}
}

func TestJoinedNodesShareByKirchhoff(t *testing.T) {
	p := point(t, &solve.Net{Nodes: 4, References: []int{3}, Branches: []solve.Branch{{A: 0, B: 1}, {A: 1, B: 2}, {A: 0, B: 2}},
		Elements: []solve.Element{{Kind: solve.Battery, P: 0, N: 3, Volts: 12, Ohms: 0.1}, {Kind: solve.Steady, P: 1, N: 3, Amps: 3}, {Kind: solve.Steady, P: 2, N: 3, Amps: 6}}})
	near(t, "volts", p.Volts[2], 12-0.9, 1e-12)
	near(t, "0-1", p.Branch[0], 4, 1e-9) // equal resistances: 2/3 of 3 and 1/3 of 6
	near(t, "1-2", p.Branch[1], 1, 1e-9)
	near(t, "0-2", p.Branch[2], 5, 1e-9)
}

func TestLimitAndDroop(t *testing.T) {
	supply := solve.Element{Kind: solve.Regulated, P: 0, N: 1, Volts: 14, Ohms: 0.014, Amps: 10}
	for _, c := range []struct{ ohms, amps float64 }{{14, 14 / 14.014}, {1, 10}} {
		p := point(t, &solve.Net{Nodes: 2, References: []int{1}, Elements: []solve.Element{supply, {Kind: solve.Resistor, P: 0, N: 1, Ohms: c.ohms}}})
		near(t, "amps", p.Element[0], c.amps, 1e-9)
	}
	p := point(t, &solve.Net{Nodes: 2, References: []int{1}, Elements: []solve.Element{supply, {Kind: solve.Battery, P: 0, N: 1, Volts: 15, Ohms: 0.01}}})
	near(t, "blocked", p.Element[0], 0, 0)
	p = point(t, &solve.Net{Nodes: 2, References: []int{1}, Elements: []solve.Element{supply, {Kind: solve.Battery, P: 0, N: 1, Volts: 12, Ohms: 0.01, Amps: 4}}})
	near(t, "charge that a battery takes", p.Element[1], -4, 1e-9)
}

// A module of 60 cells: the curve passes the four figures of its data sheet, and has its most power there.
func TestCellPassesItsDataSheet(t *testing.T) {
	c, ok := solve.NewCell(38.3, 9.2, 31.2, 8.7, 1, 1, 1)
	if !ok {
		t.Fatal("no curve")
	}
	at := func(u float64) float64 { i, _ := c.Amps(u); return i }
	near(t, "isc", at(0), 9.2, 2e-3)
	near(t, "imp", at(31.2), 8.7, 1e-3)
	near(t, "voc", c.OpenVolts(), 38.3, 1e-9)
	if i := at(38.3); math.Abs(i) > 1e-6 {
		t.Errorf("current at voc: %g", i)
	}
	if p := at(31.2) * 31.2; at(30.8)*30.8 > p*1.0005 || at(31.6)*31.6 > p*1.0005 {
		t.Errorf("power is not most at the data sheet's point")
	}
	two, _ := solve.NewCell(38.3, 9.2, 31.2, 8.7, 1, 2, 3)
	i, _ := two.Amps(62.4)
	near(t, "two in series, three strings", i, 26.1, 1e-3)
}

// Sharp modules keep to their figures too: current falls to nothing at voc and never gives more than isc.
func TestSharpCells(t *testing.T) {
	for _, m := range [][4]float64{{22, 5.85, 17.6, 5.68}, {22, 5.85, 17.6, 5.73}, {22, 10, 16.3, 9.65}, {40, 10, 36, 9.9}, {0.7, 9, 0.6, 8.5}} {
		c, ok := solve.NewCell(m[0], m[1], m[2], m[3], 1, 2, 1)
		if !ok {
			t.Fatalf("%v: no curve", m)
		}
		near(t, "open", c.OpenVolts(), 2*m[0], 1e-9)
		last := math.Inf(1)
		for u := 0.0; u <= 2.5*m[0]; u += m[0] / 50 {
			i, slope := c.Amps(u)
			if i > last+1e-9 || i > m[1]*1.01 || slope > 0 || u < 2*m[2]*0.98 && i < m[3]*0.9 || u > 2*m[0] && i > 0 {
				t.Fatalf("%v: %g A at %g V, slope %g", m, i, u, slope)
			}
			last = i
		}
	}
}

func TestRingOfConvertersIsFinite(t *testing.T) {
	// Two batteries that charge each other through two converters at their limits.
	n := &solve.Net{Nodes: 3, References: []int{2}, Elements: []solve.Element{{Kind: solve.Battery, P: 0, N: 2, Volts: 12.6, Ohms: 0.01}, {Kind: solve.Battery, P: 1, N: 2, Volts: 12.8, Ohms: 0.01}},
		Converters: []solve.Converter{{InP: 0, InN: 2, OutP: 1, OutN: 2, Volts: 14.4, Ohms: 0.0072, Amps: 20, Efficiency: 0.9}, {InP: 1, InN: 2, OutP: 0, OutN: 2, Volts: 13.8, Ohms: 0.03, Amps: 5, Efficiency: 0.85}}}
	p := point(t, n)
	if !p.Found {
		t.Fatal("no point")
	}
	near(t, "out", p.Out[0], 20, 1e-9)
	near(t, "back", p.Out[1], 5, 1e-9)
	near(t, "in", p.In[0], p.Volts[1]*20/0.9/p.Volts[0], 1e-9)
}
