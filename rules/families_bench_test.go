package rules

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"ferrule/lint"
	"ferrule/lint/check"
	"ferrule/schema"
)

// family writes a plan of one battery or two with so many three-position selectors: each picks a lamp, each
// picks a bus, or each hands on to the next.
func family(kind string, count int) string {
	var b strings.Builder
	add := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	wire := func(name, from, to, size string) {
		add("conductor %q {\n  from = %s\n  to = %s\n  size = %q\n  length = \"0.5 m\"\n  insulation = \"105 C\"\n}", name, from, to, size)
	}
	lamp := func(name string) {
		add("load %q {\n  kind = \"light\"\n  draw = \"3 A\"\n  behavior = \"constant-current\"\n}", name)
	}
	add("system \"family\" {\n  practice = [\"us-rv\"]\n  ambient = \"40 C\"\n}")
	buses := []string{"a", "b"}
	if kind != "buses" {
		buses = buses[:1]
	}
	for _, x := range buses {
		add("source \"p%s\" {\n  kind = \"battery\"\n  role = \"house\"\n  chemistry = \"lifepo4\"\n  voltage = \"12 V\"\n  capacity = \"100 Ah\"\n  short_circuit = \"2 kA\"\n}", x)
		add("fuse \"p%s\" {\n  kind = \"class-t\"\n  rating = \"60 A\"\n  voltage_rating = \"58 V dc\"\n  interrupting = \"20 kA\"\n  on = source.p%s\n}", x, x)
		add("bus \"%s\" {\n  rating = \"200 A\"\n}", x)
		wire("p"+x, "fuse.p"+x+".load", "bus."+x, "2 AWG")
	}
	last := "bus.a"
	for i := range count {
		s := fmt.Sprintf("s%d", i)
		add("switch %q {\n  terminals = [\"c\", \"a\", \"b\"]\n  rating = \"20 A\"\n  voltage_rating = \"58 V dc\"\n  transition = \"break-before-make\"", s)
		add("  position \"a\" {\n    joins = [[\"c\", \"a\"]]\n  }\n  position \"off\" {\n  }\n  position \"b\" {\n    joins = [[\"c\", \"b\"]]\n  }\n}")
		fuse := func(name, on string) {
			add("fuse %q {\n  kind = \"blade\"\n  rating = \"10 A\"\n  voltage_rating = \"58 V dc\"\n  interrupting = \"2 kA\"\n  on = %s\n}", name, on)
		}
		lamp("a" + s)
		switch kind {
		case "lamps":
			lamp("b" + s)
			fuse(s, "bus.a")
			wire("c"+s, "fuse."+s+".load", "switch."+s+".c", "14 AWG")
			wire("a"+s, "switch."+s+".a", "load.a"+s, "14 AWG")
			wire("b"+s, "switch."+s+".b", "load.b"+s, "14 AWG")
		case "buses":
			for _, x := range buses {
				fuse(x+s, "bus."+x)
				wire(x+s, "fuse."+x+s+".load", "switch."+s+"."+x, "14 AWG")
			}
			wire("c"+s, "switch."+s+".c", "load.a"+s, "14 AWG")
		default:
			wire("c"+s, last, "switch."+s+".c", "2 AWG")
			wire("b"+s, "switch."+s+".b", "load.a"+s, "14 AWG")
			last = "switch." + s + ".a"
		}
	}
	return b.String()
}

// camper is the example of a trailer with so many selectors of two lamps more, half as many plugs and a
// quarter as many lamps that pick the house or the fixed battery.
func camper(count int) string {
	own, err := os.ReadFile("../examples/heron.wiring.hcl")
	if err != nil {
		panic(err)
	}
	b := bytes.NewBuffer(own)
	add := func(format string, args ...any) { fmt.Fprintf(b, format+"\n", args...) }
	fuse := func(name, on string) {
		add("fuse %q {\n  kind = \"blade\"\n  rating = \"10 A\"\n  voltage_rating = \"32 V dc\"\n  interrupting = \"1 kA\"\n  series_rated_with = fuse.pack_main\n  on = %s\n}", name, on)
	}
	wire := func(name, from, to string) {
		add("conductor %q {\n  from = %s\n  to = %s\n  size = \"12 AWG\"\n  length = \"2 m\"\n  insulation = let.jacket\n  bundle = 2\n}", name, from, to)
	}
	lamp := func(name, from string) {
		add("load %q {\n  kind = \"light\"\n  draw = \"1 A\"\n  critical = \"none\"\n}", name)
		wire(name, from, "load."+name)
	}
	selector := func(name string) {
		add("switch %q {\n  kind = \"manual\"\n  terminals = [\"c\", \"a\", \"b\"]\n  rating = \"30 A\"\n  voltage_rating = \"32 V dc\"\n  transition = \"break-before-make\"", name)
		add("  position \"a\" { joins = [[\"c\", \"a\"]] }\n  position \"off\" {}\n  position \"b\" { joins = [[\"c\", \"b\"]] }\n}")
	}
	for i := range count {
		s := fmt.Sprint("lamps", i)
		fuse(s, "bus.dc_half")
		selector(s)
		wire(s, "fuse."+s+".load", "switch."+s+".c")
		lamp(s+"a", "switch."+s+".a")
		lamp(s+"b", "switch."+s+".b")
	}
	for i := range count / 2 {
		s := fmt.Sprint("outside", i)
		fuse(s, "bus.dc_half")
		add("connector %q {\n  style = %q\n  rating = \"15 A\"\n  voltage_rating = \"48 V dc\"\n  exposed = \"free\"\n  load_break = true\n}", s, s)
		wire(s, "fuse."+s+".load", "connector."+s+".fixed")
		lamp(s+"lamp", "connector."+s+".free")
	}
	for i := range count / 4 {
		s := fmt.Sprint("either", i)
		fuse(s, "bus.dc_half")
		fuse(s+"fixed", "source.fixed")
		selector(s)
		wire(s, "fuse."+s+".load", "switch."+s+".a")
		wire(s+"fixed", "fuse."+s+"fixed.load", "switch."+s+".b")
		lamp(s+"lamp", "switch."+s+".c")
	}
	return b.String()
}

// TestCamperIsLookedAtWhole: a trailer with a lift-out pack, sun, engine and shore, ten selectors and six
// plugs more, 1e10 states, is answered over all of them.
func TestCamperIsLookedAtWhole(t *testing.T) {
	var list []*lint.Rule
	for _, r := range All() {
		if r.Run != nil {
			list = append(list, r)
		}
	}
	plan, diags := schema.Decode("f.wiring.hcl", []byte(camper(11)), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	r := check.Run(plan, list, check.Options{Today: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)})
	if s := r.Summary.States; !s.Complete || len(s.Total) < 11 || len(r.Failures) > 0 {
		t.Errorf("%+v, %v", s, r.Failures)
	}
}

// BenchmarkFamilies lints plans with more and more selectors (60 of three positions are 4e28 states): how
// much longer than bare parsing, by the rules that run once.
func BenchmarkFamilies(b *testing.B) {
	var list []*lint.Rule
	for _, r := range All() {
		if r.Run != nil {
			list = append(list, r)
		}
	}
	for _, kind := range []string{"lamps", "buses", "chain", "camper"} {
		for _, count := range []int{15, 30, 60} {
			if kind == "camper" {
				count /= 3
			}
			b.Run(fmt.Sprintf("%s/%d", kind, count), func(b *testing.B) {
				text := []byte(family(kind, count))
				if kind == "camper" {
					text = []byte(camper(count))
				}
				var parse, run time.Duration
				for range b.N {
					start := time.Now()
					hclsyntax.ParseConfig(text, "f.wiring.hcl", hcl.InitialPos)
					parse += time.Since(start)
					plan, diags := schema.Decode("f.wiring.hcl", text, nil)
					if diags.HasErrors() {
						b.Fatal(diags)
					}
					start = time.Now()
					r := check.Run(plan, list, check.Options{Today: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)})
					run += time.Since(start)
					if r.Tainted() {
						b.Fatalf("not complete: %v", r.Failures)
					}
				}
				b.ReportMetric(float64(run)/float64(parse), "x-parse")
			})
		}
	}
}
