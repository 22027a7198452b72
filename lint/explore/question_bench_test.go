package explore_test

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"
	"time"

	"ferrule/lint/explore"
)

// Targets (questions over switch positions, worst case of a family):
//
//	5  one path question, 20 / 60 switches      500 / 5 000 us, beyond: 200 / 1 000 us
//	6  every question, 1 000 blocks, 60 switches  half a parse, beyond: a tenth
//	7  worst sum of every conductor, 60 switches  30 000 us, beyond: 5 000 us
const (
	pathOf20  = 500   // us
	pathOf60  = 5000  // us
	weighOf60 = 30000 // us
)

// family writes plans of three-position switches: one battery, buses and what joins them.
type family struct {
	name string
	text func(r *rand.Rand, switches int) string
}

var families = []family{{"near-tree", nearTree}, {"mesh", mesh}, {"ganged", ganged}, {"ladder", ladder}, {"twofold", twofold}, {"crossing", crossing}}

type planText struct {
	strings.Builder
	wires int
}

func (p *planText) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

func (p *planText) start(buses int) {
	p.line("system \"t\" {\n}\nsource \"b\" {\n  kind = \"battery\"\n  voltage = \"12 V\"\n}")
	for i := range buses {
		p.line("bus \"n%d\" {\n}", i)
	}
	p.wire("source.b", "bus.n0")
}

func (p *planText) wire(from, to string) {
	p.line("conductor \"c%d\" {\n  from = %s\n  to = %s\n  size = \"10 AWG\"\n  length = \"1 m\"\n}", p.wires, from, to)
	p.wires++
}

// selector has two throws: common to one and to the other, off between.
func (p *planText) selector(i int, common, one, other string) {
	p.line("switch \"w%d\" {\n  terminals = [\"a\", \"b\", \"c\"]\n  position \"one\" {\n    joins = [[\"a\", \"b\"]]\n  }\n  position \"off\" {\n  }\n  position \"other\" {\n    joins = [[\"a\", \"c\"]]\n  }\n}", i)
	for k, to := range []string{common, one, other} {
		p.wire(fmt.Sprintf("switch.w%d.%c", i, 'a'+k), to)
	}
}

// gang has two contacts that are never closed together.
func (p *planText) gang(i int, a, b, c, d string) {
	p.line("switch \"w%d\" {\n  terminals = [\"a\", \"b\", \"c\", \"d\"]\n  position \"one\" {\n    joins = [[\"a\", \"b\"]]\n  }\n  position \"off\" {\n  }\n  position \"other\" {\n    joins = [[\"c\", \"d\"]]\n  }\n}", i)
	for k, to := range []string{a, b, c, d} {
		p.wire(fmt.Sprintf("switch.w%d.%c", i, 'a'+k), to)
	}
}

func bus(i int) string { return fmt.Sprintf("bus.n%d", i) }

func nearTree(r *rand.Rand, n int) string {
	p := &planText{}
	p.start(2*n + 1)
	for i := range n {
		p.selector(i, bus(r.Intn(2*i+1)), bus(2*i+1), bus(2*i+2))
	}
	for range n / 10 {
		if a, b := r.Intn(2*n+1), r.Intn(2*n+1); a != b {
			p.wire(bus(a), bus(b))
		}
	}
	return p.String()
}

// treePlan is a tree of selectors with a load on every bus.
func treePlan(r *rand.Rand, n int) string {
	p := &planText{}
	p.start(2*n + 1)
	for i := range n {
		p.selector(i, bus(r.Intn(2*i+1)), bus(2*i+1), bus(2*i+2))
	}
	for i := range 2*n + 1 {
		p.line("load \"l%d\" {\n  draw = \"%d A\"\n}", i, 1+r.Intn(9))
		p.wire(bus(i), fmt.Sprintf("load.l%d", i))
	}
	return p.String()
}

func mesh(r *rand.Rand, n int) string {
	p := &planText{}
	p.start(n)
	for i := range n {
		p.selector(i, bus(r.Intn(n)), bus(r.Intn(n)), bus(r.Intn(n)))
	}
	return p.String()
}

// ganged puts the two contacts of each switch at random places of a mesh.
func ganged(r *rand.Rand, n int) string {
	p := &planText{}
	nodes := 3 * n / 4
	p.start(nodes)
	for i := range n {
		p.gang(i, bus(r.Intn(nodes)), bus(r.Intn(nodes)), bus(r.Intn(nodes)), bus(r.Intn(nodes)))
	}
	return p.String()
}

// ladder leads up through first contacts and back through second ones, so that every rung forbids
// another: whether the ends can be joined depends on how the two halves are interleaved.
func ladder(r *rand.Rand, n int) string {
	p := &planText{}
	p.start(n + 2)
	order := r.Perm(n)
	for i := range n {
		// Two parallel contacts a step; each step of the second half needs the other contact.
		k := order[i]
		p.gang(i, bus(i/2), bus(i/2+1), bus(n/2+k/2), bus(n/2+k/2+1))
	}
	return p.String()
}

// twofold is two random meshes one after the other, the first of first contacts and the second of second
// ones, just dense enough that many ends are joined in no state.
func twofold(r *rand.Rand, n int) string {
	p := &planText{}
	m := 3 * n / 4
	p.start(2*m + 1)
	for i := range n {
		p.gang(i, bus(r.Intn(m+1)), bus(r.Intn(m+1)), bus(m+r.Intn(m+1)), bus(m+r.Intn(m+1)))
	}
	return p.String()
}

// crossing is made so that the true answer is never, and hard to see: the first contacts of the gangs
// make a grid from left to right, the second ones the dual grid from top to bottom, and the ways
// through both, one after the other, would have to cross.
func crossing(_ *rand.Rand, n int) string {
	k := 2
	for (k+1)*(k+1)+k*k <= n+1 {
		k++
	}
	p := &planText{}
	p.start(2*k*(k+1) + 3)
	const left, right, bottom = 0, 1, 2 // what is right of the one grid is the top of the other
	red := func(i, j int) string {
		switch j {
		case 0:
			return bus(left)
		case k:
			return bus(right)
		}
		return bus(3 + i*(k+1) + j)
	}
	blue := func(i, j int) string {
		switch i {
		case 0:
			return bus(right)
		case k:
			return bus(bottom)
		}
		return bus(3 + k*(k+1) + i*k + j)
	}
	at := 0
	for i := range k {
		for j := range k {
			p.gang(at, red(i, j), red(i, j+1), blue(i, j), blue(i+1, j))
			if at++; i+1 < k && j > 0 {
				p.gang(at, red(i, j), red(i+1, j), blue(i+1, j-1), blue(i+1, j))
				at++
			}
		}
	}
	return p.String()
}

// cost is what a family's questions took.
type cost struct {
	worst                    time.Duration
	asked, never, open, more int
	looked                   int // partial states, of the hardest question
}

// BenchmarkPath asks whether the battery reaches each bus, in ten plans of each family, and prints the
// slowest question, best of three, and what share of the target it takes (1 is the target).
func BenchmarkPath(b *testing.B) {
	for _, f := range families {
		last := 0.0
		for _, n := range []int{20, 40, 60} {
			b.Run(fmt.Sprintf("%s/%d", f.name, n), func(b *testing.B) {
				var t cost
				for b.Loop() {
					t = cost{}
					for seed := range int64(10) {
						t.ask(b, f.text(rand.New(rand.NewSource(seed)), n))
					}
				}
				us := float64(t.worst.Nanoseconds()) / 1e3
				target := map[bool]float64{true: pathOf20, false: pathOf60}[n <= 20]
				b.ReportMetric(us, "us/worst")
				b.ReportMetric(us/target, "of-target")
				b.ReportMetric(float64(t.never)/float64(t.asked), "never")
				b.ReportMetric(float64(t.looked), "looked/worst")
				b.ReportMetric(float64(t.open), "inexact")
				b.ReportMetric(float64(t.more), "maybe-fewer")
				if last > 0 {
					b.ReportMetric(us/last, "growth")
				}
				last = us
			})
		}
	}
}

// BenchmarkWeigh takes the worst sum beyond both ends of every conductor of trees of selectors.
func BenchmarkWeigh(b *testing.B) {
	last := 0.0
	for _, size := range []int{20, 40, 60} {
		b.Run(fmt.Sprint(size), func(b *testing.B) {
			n, s := build(b, treePlan(rand.New(rand.NewSource(1)), size))
			z, weights, edges := n.Zones[0], loads(n), live(n, n.Zones[0])
			s.Weigh(z, explore.All(), nil, weights)
			for b.Loop() {
				x := s.Weigh(z, explore.All(), nil, weights)
				for _, e := range edges {
					x.Beyond(e, n.Edges[e].A)
					x.Beyond(e, n.Edges[e].B)
				}
			}
			us := float64(b.Elapsed().Nanoseconds()) / 1e3 / float64(b.N)
			b.ReportMetric(float64(len(edges)), "conductors")
			b.ReportMetric(us/weighOf60, "of-target")
			if last > 0 {
				b.ReportMetric(us/last, "growth")
			}
			last = us
		})
	}
}

func (t *cost) ask(b *testing.B, text string) {
	n, _ := build(b, text)
	z, from := n.Zones[0], n.Node("source.b.pos")
	for _, id := range z.Nodes {
		if n.Nodes[id].Terminal != "" || id == from {
			continue
		}
		best := time.Hour
		var a explore.Answer
		for range 3 {
			s := explore.New(n, 0) // an answer is remembered
			s.Path(z, explore.All(), nil, explore.Ends{A: from, B: from})
			start := time.Now()
			a = s.Path(z, explore.All(), nil, explore.Ends{A: from, B: id})
			best = min(best, time.Since(start))
		}
		t.note(a, best)
	}
}

func (t *cost) note(a explore.Answer, d time.Duration) {
	t.asked++
	t.worst, t.looked = max(t.worst, d), max(t.looked, a.Examined)
	switch {
	case !a.Exact():
		t.open++
	case a.Found == explore.No:
		t.never++
	case !a.Fewest:
		t.more++
	}
}
