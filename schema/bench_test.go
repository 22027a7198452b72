package schema

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// circuits is a plan of n blocks of about 190 bytes each: fuses on a bus, conductors and loads.
func circuits(n int) []byte {
	var b strings.Builder
	b.WriteString("system \"gull\" {\n  title = \"x\"\n}\n\nbus \"panel\" {\n}\n\n")
	for i := range n / 3 {
		fmt.Fprintf(&b, "fuse \"f%d\" {\n  label          = \"Fuse %d of the panel\"\n  kind           = \"blade\"\n  rating         = \"10 A\"\n  voltage_rating = \"32 V dc\"\n  interrupting   = \"1000 A\"\n  on             = bus.panel\n}\n\n", i, i)
		fmt.Fprintf(&b, "load \"l%d\" {\n  label    = \"Load %d\"\n  draw     = \"2.5 A\"\n  kind     = \"light\"\n  behavior = \"resistive\"\n}\n\n", i, i)
		fmt.Fprintf(&b, "conductor \"c%d\" {\n  from       = fuse.f%d.load\n  to         = load.l%d\n  size       = \"14 AWG\"\n  length     = \"3.5 m\"\n  insulation = \"105 C\"\n}\n\n", i, i, i)
	}
	return []byte(b.String())
}

// BenchmarkDecode reads plans and prints the time as a ratio to the bare parse of the same bytes.
func BenchmarkDecode(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		src := circuits(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			b.ReportAllocs()
			start, rounds := time.Now(), 0
			for time.Since(start) < time.Second {
				hclsyntax.ParseConfig(src, "plan.wiring.hcl", hcl.InitialPos)
				rounds++
			}
			bare := float64(time.Since(start).Nanoseconds()) / float64(rounds)
			b.ResetTimer()
			for b.Loop() {
				if _, diags := Decode("plan.wiring.hcl", src, nil); len(diags) > 0 {
					b.Fatal(diags)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/bare, "x-bare-parse")
		})
	}
}
