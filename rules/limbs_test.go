package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ferrule/lint"
	"ferrule/lint/explore"
	"ferrule/lint/network"
	"ferrule/schema"
)

// passOn reads a plan and prepares to ask about it; plain lists every combination of positions.
func passOn(t interface{ Fatal(...any) }, text string, plain bool) *lint.Pass {
	plan, diags := schema.Decode("t.wiring.hcl", []byte(text), nil)
	if diags.HasErrors() {
		t.Fatal(diags, text)
	}
	n, diags := network.Build(plan)
	if diags.HasErrors() {
		t.Fatal(diags, text)
	}
	s := explore.New(n, 0)
	s.Plain = plain
	return lint.NewPass(n, s, lint.Guesses{}, time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC))
}

// amps is the most that a conductor carries, in A.
func amps(p *lint.Pass, addr string) float64 {
	most := 0.0
	for _, e := range p.Net.EdgesOf(addr) {
		if !p.Net.Nodes[p.Net.Edges[e].A].Return {
			most = max(most, p.Circuit.Worst(e).Capped.Value)
		}
	}
	return most
}

// TestPicksOfUnlikeDraws has four selectors of which two draw more at one bus and two at the other: no order of the
// buses is right for all, and the main wire carries 4 x 50 A.
func TestPicksOfUnlikeDraws(t *testing.T) {
	var b strings.Builder
	feeders(&b)
	for i, draws := range [][2]int{{10, 50}, {10, 50}, {50, 10}, {50, 10}} {
		picker(&b, i, draws, []string{`[["a", "p"]]`, `[["b", "q"]]`})
	}
	if got := amps(passOn(t, b.String(), false), "conductor.main"); got != 200 {
		t.Errorf("the main wire carries up to %g A, want 200", got)
	}
}

// TestPicksAgainstListing draws selectors alike and unlike between two feeds, with positions that take from both:
// what every wire carries at most is that of listing every combination.
func TestPicksAgainstListing(t *testing.T) {
	less := 0
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		feeders(&b)
		all := []string{`[["a", "p"]]`, `[["b", "q"]]`, `[["a", "q"]]`, `[["b", "p"]]`, `[["a", "p"], ["b", "q"]]`, `[["a", "p", "q"]]`, `[]`}
		for i := range rapid.IntRange(2, 4).Draw(t, "selectors") {
			draws := [2]int{rapid.IntRange(1, 60).Draw(t, "p"), rapid.IntRange(1, 60).Draw(t, "q")}
			picker(&b, i, draws, rapid.SliceOfNDistinct(rapid.SampledFrom(all), 2, 4, rapid.ID).Draw(t, "positions"))
		}
		quick, plain := passOn(t, b.String(), false), passOn(t, b.String(), true)
		for _, c := range quick.Plan.Conductors {
			if x, y := amps(quick, c.Addr), amps(plain, c.Addr); math.Abs(x-y) > 1e-9*(1+y) {
				t.Fatalf("%s carries up to %g A, and %g where every combination is listed\n%s", c.Addr, x, y, b.String())
			}
		}
		if quick.Space.Examined() < plain.Space.Examined() {
			less++
		}
	})
	if less == 0 {
		t.Error("no selector was told apart by itself")
	}
}

// feeders are a battery and two buses, each behind a switch of its own.
func feeders(b *strings.Builder) {
	b.WriteString("system \"t\" {\n}\nsource \"h\" {\n  kind = \"battery\"\n  chemistry = \"agm\"\n  voltage = \"12 V\"\n  capacity = \"400 Ah\"\n}\nbus \"m\" {\n}\n")
	lead(b, "main", "source.h", "bus.m")
	for _, bus := range []string{"a", "b"} {
		fmt.Fprintf(b, "bus %q {\n}\nswitch \"m%s\" {\n  terminals = [\"i\", \"o\"]\n  position \"off\" {\n  }\n  position \"on\" {\n    joins = [[\"i\", \"o\"]]\n  }\n}\n", bus, bus)
		lead(b, "i"+bus, "bus.m", "switch.m"+bus+".i")
		lead(b, "o"+bus, "switch.m"+bus+".o", "bus."+bus)
	}
}

// picker is a selector between the two buses and two loads, each of a constant current in A.
func picker(b *strings.Builder, i int, draws [2]int, positions []string) {
	s := fmt.Sprintf("s%d", i)
	fmt.Fprintf(b, "switch %q {\n  terminals = [\"a\", \"b\", \"p\", \"q\"]\n  transition = \"break-before-make\"\n", s)
	for k, joins := range positions {
		fmt.Fprintf(b, "  position \"n%d\" {\n    joins = %s\n  }\n", k, joins)
	}
	b.WriteString("}\n")
	for _, x := range []string{"a", "b"} {
		lead(b, s+x, "bus."+x, "switch."+s+"."+x)
	}
	for k, x := range []string{"p", "q"} {
		fmt.Fprintf(b, "load \"%s%s\" {\n  draw = \"%d A\"\n  behavior = \"constant-current\"\n}\n", s, x, draws[k])
		lead(b, s+x+"l", "switch."+s+"."+x, "load."+s+x)
	}
}

func lead(b *strings.Builder, name, from, to string) {
	fmt.Fprintf(b, "conductor %q {\n  from = %s\n  to = %s\n  size = \"2/0 AWG\"\n  length = \"0.2 m\"\n}\n", name, from, to)
}
