package explore_test

import (
	"fmt"
	"math/rand"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"ferrule/lint/explore"
)

// Target 6: all questions of a plan of 1 000 blocks with 60 switches take half as long as the bare parse
// of its text; beyond: a tenth.

// house is a plan of about 1 000 blocks: three batteries on selectors, distribution through fuses and
// two-pole switches, and some hundred loads.
func house(r *rand.Rand, switches int) string {
	p := &planText{}
	p.start(switches)
	p.line("source \"c\" {\n  kind = \"battery\"\n  voltage = \"12 V\"\n  removable = true\n}\nsource \"d\" {\n  kind = \"supply\"\n  voltage = \"12 V\"\n}")
	for i := range switches {
		if i%4 == 0 && i > 0 {
			p.selector(i, bus(i), bus(r.Intn(i)), bus(r.Intn(i)))
			continue
		}
		p.line("switch \"w%d\" {\n  terminals = [\"a\", \"b\"]\n  poles = %d\n}", i, 1+i%2)
		p.wire(fmt.Sprintf("switch.w%d.a", i), bus(r.Intn(max(i, 1))))
		p.wire(fmt.Sprintf("switch.w%d.b", i), bus(i))
	}
	p.wire("source.c", bus(switches/2))
	p.wire("source.d", bus(switches-1))
	for i := 0; p.wires < 520; i++ {
		p.line("fuse \"f%d\" {\n  kind = \"blade\"\n  rating = \"10 A\"\n}\nload \"l%d\" {\n  draw = \"1 A\"\n}", i, i)
		p.wire(bus(r.Intn(switches)), fmt.Sprintf("fuse.f%d.line", i))
		p.wire(fmt.Sprintf("fuse.f%d.load", i), fmt.Sprintf("load.l%d", i))
	}
	for i := range switches / 8 {
		p.line("interlock \"i%d\" {\n  never = [{ switch.w%d = \"closed\", switch.w%d = \"closed\" }]\n}", i, 4*i+1, 4*i+2)
	}
	return p.String()
}

// BenchmarkHouse asks everything of a plan of about 1 000 blocks: the counts, a way on both poles from
// each source to each load, whether each load can be dark, and the worst sum beyond every conductor. It
// prints each as a share of the bare parse.
func BenchmarkHouse(b *testing.B) {
	for _, size := range []int{40, 60} {
		text := house(rand.New(rand.NewSource(1)), size)
		n, _ := build(b, text)
		parse := clock(func() { hclsyntax.ParseConfig([]byte(text), "t.wiring.hcl", hcl.InitialPos) })
		z := n.Together(n.Node("bus.n0.pos"))
		for _, ask := range []struct {
			name string
			do   func(*explore.Space, *tally)
		}{
			{"counts", func(s *explore.Space, t *tally) {
				_, ok := s.Total()
				t.note(ok)
				_, ok = s.Distinct()
				t.note(ok)
			}},
			{"paths", func(s *explore.Space, t *tally) {
				for _, from := range n.Sources {
					for _, to := range n.Loads {
						t.note(s.Path(z, explore.All(), nil, explore.Poles(from.Port, to.Port)...).Exact())
					}
				}
			}},
			{"cuts", func(s *explore.Space, t *tally) {
				for _, to := range n.Loads {
					t.note(s.Cut(z, explore.All(), to.Port, nil, nil).Exact())
				}
			}},
			{"sums", func(s *explore.Space, t *tally) {
				w := s.Weigh(z, explore.All(), nil, loads(n))
				for _, e := range live(n, z) {
					_, ok := w.Beyond(e, n.Edges[e].A)
					t.note(ok)
				}
			}},
		} {
			b.Run(fmt.Sprintf("%s/%d", ask.name, size), func(b *testing.B) {
				var t tally
				for b.Loop() {
					t = tally{}
					ask.do(explore.New(n, 0), &t)
				}
				b.ReportMetric(float64(b.Elapsed())/float64(b.N)/float64(parse), "of-parse")
				b.ReportMetric(float64(t.asked), "questions")
				b.ReportMetric(float64(t.asked-t.known), "inexact")
			})
		}
	}
}

// tally counts questions and those that were answered.
type tally struct{ asked, known int }

func (t *tally) note(ok bool) {
	if t.asked++; ok {
		t.known++
	}
}

func clock(f func()) time.Duration {
	best := time.Hour
	for range 5 {
		start := time.Now()
		f()
		best = min(best, time.Since(start))
	}
	return best
}

// BenchmarkSeek asks the general question, whether two batteries are ever joined, of the same plans, with
// reasons and without: what a rule pays that asks in its own words.
func BenchmarkSeek(b *testing.B) {
	for _, size := range []int{20, 40, 60} {
		n, _ := build(b, house(rand.New(rand.NewSource(1)), size))
		z := n.Together(n.Node("bus.n0.pos"))
		first, last := n.Sources[0].Port, n.Sources[1].Port
		for _, reasons := range []bool{true, false} {
			b.Run(fmt.Sprintf("reasons=%v/%d", reasons, size), func(b *testing.B) {
				var a explore.Answer
				for b.Loop() {
					a = explore.New(n, 0).Seek(z, explore.All(), func(sp *explore.Span) explore.Truth {
						if !reasons {
							sp = &explore.Span{Most: sp.Most, Least: sp.Least}
						}
						return sp.Joins(explore.Poles(first, last)...)
					})
				}
				b.ReportMetric(float64(a.Examined), "asked")
				b.ReportMetric(float64(a.Found), "found")
			})
		}
	}
}
