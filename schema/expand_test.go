package schema

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
)

const panel = `
bus "panel" {}
source "pack" {
  kind      = "battery"
  removable = true
}
branch "lights" {
  label   = "Lights"
  part_of = source.pack
  from    = bus.panel
  fuse { rating = "5 A" }
  conductor { length = "4 m" }
  load "bench" {
    label       = "Bench"
    compartment = compartment.bow_box
    switched    = true
  }
  load "step" {}
  load "door" { switched = true }
}
compartment "bow_box" {}
`

func addresses(p *Plan) []string {
	var out []string
	for _, b := range p.Blocks() {
		out = append(out, b.Header().Addr)
	}
	return out
}

func TestBranchExpands(t *testing.T) {
	p := decode(t, panel)
	parts := []string{
		"branch.lights.fuse", "branch.lights.conductor", "branch.lights.switch.bench", "branch.lights.load.bench",
		"branch.lights.load.step", "branch.lights.switch.door", "branch.lights.load.door",
	}
	want := slices.Concat([]string{"system.gull", "bus.panel", "source.pack", "branch.lights"}, parts, []string{"compartment.bow_box"})
	if got := addresses(p); !slices.Equal(got, want) {
		t.Errorf("blocks are %q, want %q", got, want)
	}
	if got := p.Branches[0].Parts; !slices.Equal(got, parts) {
		t.Errorf("parts are %q", got)
	}
	for _, addr := range parts {
		h := p.Block(addr).Header()
		if h.PartOf.Addr != "source.pack" {
			t.Errorf("%s is part of %q: a branch's part_of is its parts'", addr, h.PartOf.Addr)
		}
		if h.Range.Start.Line < 8 || h.Range.Start.Line > 20 {
			t.Errorf("%s stands at %v, outside its branch", addr, h.Range)
		}
	}
	if f := p.Fuses[0]; f.Named() != "Lights" || p.Conductors[0].Named() != "Lights" {
		t.Errorf("fuse and conductor go by the branch's label, not %q and %q", f.Named(), p.Conductors[0].Named())
	}
}

// The joints of a branch: origin to fuse, conductor to the first load or its switch, the rest there too.
func TestBranchJoints(t *testing.T) {
	p := decode(t, panel)
	end := func(r Ref) string { return strings.TrimSuffix(r.Addr+" "+r.Terminal, " ") }
	var got []string
	for _, l := range p.Links {
		got = append(got, end(l.A)+" - "+end(l.B))
	}
	c := p.Conductors[0]
	got = append(got, end(c.From)+" > "+end(c.To))
	slices.Sort(got)
	want := []string{
		"branch.lights.fuse load > branch.lights.switch.bench feed",
		"branch.lights.switch.bench feed - branch.lights.load.step",
		"branch.lights.switch.bench feed - branch.lights.switch.door feed",
		"branch.lights.switch.bench load - branch.lights.load.bench",
		"branch.lights.switch.door load - branch.lights.load.door",
		"bus.panel - branch.lights.fuse line",
	}
	if !slices.Equal(got, want) {
		t.Errorf("joints are\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestBranchSwitch(t *testing.T) {
	p := decode(t, panel)
	s, ok := Lookup[*Switch](p, "branch.lights.switch.bench")
	if !ok || s.Poles.Or(0) != 1 || s.Kind.Value != "manual" || s.Named() != "Bench" || s.Compartment.Addr != "compartment.bow_box" {
		t.Fatalf("the switch is %+v", s)
	}
	if len(s.Positions) != 2 || s.Positions[0].Name != "off" || len(s.Positions[0].Joins.Groups) != 0 || len(s.Positions[1].Joins.Groups[0]) != 2 {
		t.Errorf("positions are %+v", s.Positions)
	}
	ref := decode(t, panel+"mode \"dark\" { state = { branch.lights.switch.bench = \"off\" } }\n").Modes[0].State
	if !ref.Set || ref.List[0].Ref.Addr != "branch.lights.switch.bench" {
		t.Errorf("the mode's state is %+v", ref)
	}
}

// kits is a ReadFile over texts by name.
func kits(files map[string]string) ReadFile {
	return func(_, path string) (string, []byte, error) {
		src, ok := files[path]
		if !ok {
			return "", nil, errors.New("There is no such kit.")
		}
		return path, []byte(src), nil
	}
}

func TestKitExpands(t *testing.T) {
	files := map[string]string{
		"lamp.wiring.hcl": `
kit "lamp" {}
parameter "feed" {}
parameter "amps" { default = 3 }
let { rating = "${parameter.amps} A" }
bus "strip" {}
fuse "main" {
  rating = let.rating
  on     = parameter.feed
}
conductor "lead" {
  from = fuse.main.load
  to   = bus.strip
}
branch "a" {
  from = bus.strip
  fuse {}
  conductor {}
  load "b" {}
}
use "inner" {
  kit  = "bulb.wiring.hcl"
  feed = bus.strip
  far  = parameter.feed
}
`,
		"bulb.wiring.hcl": `
kit "bulb" {}
parameter "feed" {}
parameter "far" {}
conductor "lead" {
  from = parameter.feed
  to   = load.bulb
}
conductor "back" {
  from     = load.bulb.neg
  to       = parameter.far.neg
  polarity = "negative"
}
load "bulb" {}
`,
	}
	src := `
system "gull" {}
bus "panel" {}
source "pack" {
  kind      = "battery"
  removable = true
}
use "front" {
  kit     = "lamp.wiring.hcl"
  feed    = bus.panel
  amps    = 1 + 1
  part_of = source.pack
}
use "rear" {
  kit  = "lamp.wiring.hcl"
  feed = use.front.bus.strip
}
conductor "on" {
  from = use.front.use.inner.load.bulb
  to   = use.rear.branch.a.fuse.load
}
`
	p, diags := Decode("plan.wiring.hcl", []byte(src), kits(files))
	for _, d := range diags {
		t.Fatalf("%s: %s: %s", d.Subject, d.Summary, d.Detail)
	}
	for addr, want := range map[string]string{
		"use.front.fuse.main":                "2 A on bus.panel part of source.pack, lamp.wiring.hcl",
		"use.rear.fuse.main":                 "3 A on use.front.bus.strip part of , lamp.wiring.hcl",
		"use.front.use.inner.conductor.lead": "use.front.bus.strip > use.front.use.inner.load.bulb",
		"use.rear.use.inner.conductor.back":  "use.rear.use.inner.load.bulb > use.front.bus.strip",
		"use.front.branch.a.load.b":          "part of source.pack",
		"conductor.on":                       "use.front.use.inner.load.bulb > use.rear.branch.a.fuse",
	} {
		got := ""
		switch x := p.Block(addr).(type) {
		case *Fuse:
			got = fmt.Sprintf("%s on %s part of %s, %s", x.Rating.Quantity, x.On.Addr, x.PartOf.Addr, x.Range.Filename)
		case *Conductor:
			got = x.From.Addr + " > " + x.To.Addr
		case *Load:
			got = "part of " + x.PartOf.Addr
		}
		if got != want {
			t.Errorf("%s: %s, want %s", addr, got, want)
		}
	}
	if n := len(p.Uses[0].Parts); n != 11 || !slices.Contains(p.Uses[0].Parts, "use.front.use.inner.load.bulb") {
		t.Errorf("%d parts: %q", n, p.Uses[0].Parts)
	}
}

func TestKitReadOnItsOwn(t *testing.T) {
	src := "kit \"lamp\" { title = \"A lamp\" }\nparameter \"size\" {}\nparameter \"feed\" {}\nfuse \"main\" {\n  rating = \"${parameter.size} A\"\n  on = parameter.feed\n}\n"
	p, diags := Decode("lamp.wiring.hcl", []byte(src), nil)
	if len(diags) > 0 || p.Kit == nil || p.Kit.Title.Value != "A lamp" || len(p.Parameters) != 2 {
		t.Fatalf("%v: %+v", diags, p.Kit)
	}
	if f := p.Fuses[0]; f.Rating.Set || f.On.Addr != "" {
		t.Errorf("what a parameter leaves open is set: %+v", f)
	}
}

func TestKitBounds(t *testing.T) {
	deep := map[string]string{}
	for i := range mostKitDepth + 2 {
		deep[fmt.Sprint(i)] = fmt.Sprintf("kit \"k\" {}\nuse \"u\" { kit = \"%d\" }\n", i+1)
	}
	wide := map[string]string{}
	for i := range 6 {
		wide[fmt.Sprint(i)] = "kit \"k\" {}\n" + strings.Repeat(fmt.Sprintf("use \"u\" { kit = \"%d\" }\n", i+1), 1)
		for j := range 60 {
			wide[fmt.Sprint(i)] += fmt.Sprintf("use \"u%d\" { kit = \"%d\" }\n", j, i+1)
		}
	}
	wide["6"] = "kit \"k\" {}\nbus \"b\" {}\n"
	for want, files := range map[string]map[string]string{"Kits too deep": deep, "Kits too large": wide} {
		_, diags := Decode("plan.wiring.hcl", []byte("system \"gull\" {}\nuse \"a\" { kit = \"0\" }\n"), kits(files))
		if len(diags) == 0 || diags[0].Summary != want {
			t.Errorf("got %v, want %s", diags, want)
		}
		large := 0
		for _, x := range diags {
			if x.Summary == "Kits too large" {
				large++
			}
		}
		if large > 1 {
			t.Errorf("%s is said %d times", "Kits too large", large)
		}
	}
	_, diags := Decode("plan.wiring.hcl", []byte("system \"gull\" {}\nuse \"a\" { kit = \"0\" }\n"), nil)
	if len(diags) != 1 || diags[0].Summary != "Kit cannot be read" {
		t.Errorf("without a way to read kits: %v", diags)
	}
}

func TestIsKit(t *testing.T) {
	for src, want := range map[string]bool{
		"kit \"a\" {}\n": true, "  kit \"a\" {}\n": true, "use \"a\" { kit = \"b\" }\n": false, "system \"kit\" {}\n": false,
		`{"kit": {"a": {}}}`: true, `{"use": {"a": {"kit": "b"}}}`: false, "": false,
	} {
		if got := IsKit("-", []byte(src)); got != want {
			t.Errorf("IsKit(%q) = %t", src, got)
		}
	}
}
