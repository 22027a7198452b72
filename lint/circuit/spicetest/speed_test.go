package spicetest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"ferrule/lint/solve"
)

// grid is a battery that feeds loads of all three behaviours over a tree of wires, or over one with a
// tenth as many cross links as nodes. It is the same every time.
func grid(nodes int, meshed bool) *solve.Net {
	r := rand.New(rand.NewPCG(1, uint64(nodes)))
	n := &solve.Net{Nodes: nodes, References: []int{0}}
	n.Elements = append(n.Elements, solve.Element{Kind: solve.Battery, P: 1, N: 0, Volts: 12.8, Ohms: 0.004})
	for i := 2; i < nodes; i++ {
		n.Branches = append(n.Branches, solve.Branch{A: 1 + r.IntN(i-1), B: i, Ohms: 0.0005 + 0.002*r.Float64()})
	}
	for range nodes / 10 {
		if a, b := 1+r.IntN(nodes-1), 1+r.IntN(nodes-1); meshed && a != b {
			n.Branches = append(n.Branches, solve.Branch{A: a, B: b, Ohms: 0.0005 + 0.002*r.Float64()})
		}
	}
	share := 100 / float64(nodes) // A, so that the battery bears all of them
	for i := 2; i < nodes; i += 3 {
		e := solve.Element{P: i, N: 0}
		switch i % 9 {
		case 2:
			e.Kind, e.Amps, e.Floor = solve.Steady, share, 1.2
		case 5:
			e.Kind, e.Watts = solve.Power, 12*share
		default:
			e.Kind, e.Ohms = solve.Resistor, 12/share
		}
		n.Elements = append(n.Elements, e)
	}
	return n
}

// netlist is the same network for ngspice, with the battery's volts on the source vb.
func netlist(n *solve.Net) string {
	var b strings.Builder
	b.WriteString("* a grid\nvb b 0 12.8\n")
	for i, x := range n.Branches {
		fmt.Fprintf(&b, "r%d n%d n%d %g\n", i, x.A, x.B, x.Ohms)
	}
	for i, e := range n.Elements {
		switch e.Kind {
		case solve.Battery:
			fmt.Fprintf(&b, "rb b n1 %g\n", e.Ohms)
		case solve.Steady:
			fmt.Fprintf(&b, "i%d n%d 0 %g\n", i, e.P, e.Amps)
		case solve.Power:
			fmt.Fprintf(&b, "b%d n%d 0 i=%g/max(v(n%d),0.05)\n", i, e.P, e.Watts, e.P)
		case solve.Resistor:
			fmt.Fprintf(&b, "e%d n%d 0 %g\n", i, e.P, e.Ohms)
		}
	}
	return strings.ReplaceAll(b.String(), "\ne", "\nre") + ".end\n"
}

// points is how many further points are asked of one process of ngspice: its start and its reading of the
// netlist do not count. Each is an operating point from nothing, as each state of a plan is.
const points = 200

// BenchmarkAgainstSpice compares operating points per second on the same networks: further points of one
// ngspice process against solves of one prepared system, the source's volts moving from point to point,
// neither starting from the last one:
//
//	go test ./lint/circuit/spicetest -run '^$' -bench AgainstSpice
func BenchmarkAgainstSpice(b *testing.B) {
	need(b)
	for _, meshed := range []bool{false, true} {
		for _, nodes := range []int{30, 300, 3000} {
			b.Run(fmt.Sprintf("meshed=%v/nodes=%d", meshed, nodes), func(b *testing.B) {
				n := grid(nodes, meshed)
				theirs := spicePoint(b, netlist(n))
				system, err := solve.New(n)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportAllocs()
				i := 0
				for b.Loop() {
					n.Elements[0].Volts = 12 + float64(i%points)/points
					i++
					if !system.Solve().Found {
						b.Fatal("no point")
					}
				}
				ours := b.Elapsed() / time.Duration(b.N)
				b.ReportMetric(float64(theirs)/float64(ours), "x-ngspice")
			})
		}
	}
}

// spicePoint is the time that ngspice takes for one further point.
func spicePoint(b *testing.B, list string) time.Duration {
	dir := b.TempDir()
	run := func(count int) time.Duration {
		best := time.Duration(math.MaxInt64)
		for range 3 {
			start := time.Now()
			again := fmt.Sprintf("repeat %d\nalter vb dc = 12.5\nop\ndestroy all\nend\nop", count)
			if plots, err := simulate(dir, []job{{list, again}}); err != nil || len(plots) != 1 || plots[0] == nil {
				b.Fatalf("ngspice: %v", err)
			}
			best = min(best, time.Since(start))
		}
		return best
	}
	return (run(points+1) - run(1)) / points
}

// BenchmarkGrowth tells how the time of a solve grows with the nodes: 1 is in proportion.
func BenchmarkGrowth(b *testing.B) {
	for _, meshed := range []bool{false, true} {
		b.Run(fmt.Sprintf("meshed=%v", meshed), func(b *testing.B) {
			took := map[int]float64{}
			for _, nodes := range []int{30, 300, 3000} {
				system, err := solve.New(grid(nodes, meshed))
				if err != nil {
					b.Fatal(err)
				}
				start, runs := time.Now(), 30000/nodes
				for range runs {
					system.Solve()
				}
				took[nodes] = time.Since(start).Seconds() / float64(runs)
			}
			for b.Loop() { // the figures are above
			}
			b.ReportMetric(math.Log10(took[300]/took[30]), "exponent-30-300")
			b.ReportMetric(math.Log10(took[3000]/took[300]), "exponent-300-3000")
		})
	}
}
