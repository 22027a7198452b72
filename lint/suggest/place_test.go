package suggest

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ferrule/lint"
	"ferrule/schema"
)

const drawn = `# a comment
system "tern" {}

fuse "main" { # behind the brace
  label  = "Main, 40 A" # what it says
  kind   = "anl"
  rating = "40 A"   // as fitted

  # of the maker
  interrupting = "6 kA"
}

switch "off" {
  terminals = ["a", "b"]

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

branch "lamp" {
  from = fuse.main.load
  fuse { rating = "5 A" }
  conductor {
    size = "14 AWG"
  }
  load "lamp" {
    draw = "1 A"
  }
}`

// placed applies changes to a text and demands that it can be read as a plan would be.
func placed(t *testing.T, src string, changes ...lint.Change) (string, error) {
	t.Helper()
	plan, _ := schema.Decode("tern.wiring.hcl", []byte(src), nil)
	p, err := newPage("tern.wiring.hcl", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	edits, err := p.edits(plan, changes)
	if err != nil {
		return "", err
	}
	out, err := Apply([]byte(src), edits)
	if err != nil {
		return "", err
	}
	if _, err := newPage("tern.wiring.hcl", out); err != nil {
		t.Fatalf("no plan any more:\n%s", out)
	}
	return string(out), nil
}

func TestPlace(t *testing.T) {
	for _, c := range []struct {
		name     string
		changes  []lint.Change
		old, new string // the lines that differ
	}{
		{"a value, with its comment kept", []lint.Change{lint.Set("fuse.main", "rating", `"30 A"`)}, "  rating = \"40 A\"   // as fitted\n", "  rating = \"30 A\"   // as fitted\n"},
		{"a new attribute under the sign of the others", []lint.Change{lint.Set("fuse.main", "on", "source.x")}, "// as fitted\n", "// as fitted\n  on     = source.x\n"},
		{"one too long for the column", []lint.Change{lint.Set("fuse.main", "voltage_rating", `"58 V dc"`)}, "// as fitted\n", "// as fitted\n  voltage_rating = \"58 V dc\"\n"},
		{"two at one place, in order", []lint.Change{lint.Set("fuse.main", "on", "x.y"), lint.Set("fuse.main", "reset", `"manual"`)}, "// as fitted\n", "// as fitted\n  on     = x.y\n  reset  = \"manual\"\n"},
		{"a line gone", []lint.Change{lint.Unset("fuse.main", "kind")}, "  kind   = \"anl\"\n", ""},
		{"a line gone that has a comment", []lint.Change{lint.Unset("fuse.main", "label")}, `label  = "Main, 40 A" #`, ` #`},
		{"nothing to take out", []lint.Change{lint.Unset("fuse.main", "curve")}, "", ""},
		{"a block on one line", []lint.Change{lint.Set("branch.lamp.fuse", "kind", `"blade"`)}, `fuse { rating = "5 A" }`, "fuse {\n    rating = \"5 A\"\n    kind = \"blade\"\n  }"},
		{"a block on one line, changed and added to", []lint.Change{lint.Set("branch.lamp.fuse", "rating", `"3 A"`), lint.Set("branch.lamp.fuse", "kind", `"blade"`)},
			`fuse { rating = "5 A" }`, "fuse {\n    rating = \"3 A\"\n    kind = \"blade\"\n  }"},
		{"an empty one", []lint.Change{lint.Set("system.tern", "ambient", `"40 C"`)}, `"tern" {}`, "\"tern\" {\n  ambient = \"40 C\"\n}"},
		{"within a branch", []lint.Change{lint.Set("branch.lamp.conductor", "size", `"12 AWG"`)}, `"14 AWG"`, `"12 AWG"`},
		{"a position gone", []lint.Change{{At: "switch.off", In: "position on", Drop: true}}, "  position \"on\" { joins = [[\"a\", \"b\"]] }\n", ""},
		{"a new block", []lint.Change{{At: "fuse.main", Block: "bus \"x\" {\n}\n"}}, "6 kA\"\n}\n", "6 kA\"\n}\n\nbus \"x\" {\n}\n"},
		{"two new ones", []lint.Change{{At: "fuse.main", Block: "bus \"x\" {\n}\n"}, {At: "fuse.main", Block: "bus \"y\" {\n}\n"}}, "6 kA\"\n}\n", "6 kA\"\n}\n\nbus \"x\" {\n}\n\nbus \"y\" {\n}\n"},
		{"a new block behind a branch at the end of the file", []lint.Change{{At: "branch.lamp.fuse", Block: "bus \"x\" {\n}\n"}}, "\"1 A\"\n  }\n}", "\"1 A\"\n  }\n}\n\nbus \"x\" {\n}"},
		{"a block gone", []lint.Change{{At: "fuse.main", Drop: true}}, drawn[strings.Index(drawn, "fuse"):strings.Index(drawn, "switch")], ""},
		{"a block gone of which an attribute was to go", []lint.Change{lint.Unset("fuse.main", "kind"), {At: "fuse.main", Drop: true}}, drawn[strings.Index(drawn, "fuse"):strings.Index(drawn, "switch")], ""},
		{"a block gone, another in its place", []lint.Change{{At: "fuse.main", Drop: true}, {At: "fuse.main", Block: "bus \"x\" {\n}\n"}},
			drawn[strings.Index(drawn, "fuse"):strings.Index(drawn, "\nswitch")], "bus \"x\" {\n}\n"},
	} {
		for _, end := range []string{"\n", "\r\n"} {
			as := func(s string) string { return strings.ReplaceAll(s, "\n", end) }
			got, err := placed(t, as(drawn), c.changes...)
			if want := strings.Replace(as(drawn), as(c.old), as(c.new), 1); err != nil || got != want {
				t.Errorf("%s: %v\n%q\nwant\n%q", c.name, err, got, want)
			}
		}
	}
}

// TestPlaceInLet has values that a let block says: that is where they are changed, unless something else says
// the same by it.
func TestPlaceInLet(t *testing.T) {
	const src = "let {\n  main = \"40 A\" # from the sheet\n  %s\n}\nfuse \"main\" {\n  rating = let.main\n}\nfuse \"other\" {\n  rating = %s\n}\n"
	for _, c := range []struct {
		name, more, other string
		there             bool
	}{
		{"used once", "", `"5 A"`, true},
		{"used twice", "", "let.main", false},
		{"used by another name", "more = let.main", `"5 A"`, false},
		{"used within an expression", "", "times(let.main, 2)", false},
		{"beside a list", "all = { other = \"5 A\" }", "let.all.other", true},
		{"of which a part is used", "", "let.main.x", false},
		{"perhaps used", "", `let["main"]`, false},
	} {
		text := fmt.Sprintf(src, c.more, c.other)
		want := strings.Replace(text, "rating = let.main", `rating = "30 A"`, 1)
		if c.there {
			want = strings.Replace(text, `"40 A"`, `"30 A"`, 1)
		}
		if got, err := placed(t, text, lint.Set("fuse.main", "rating", `"30 A"`)); err != nil || got != want {
			t.Errorf("%s: %v\n%s", c.name, err, got)
		}
	}
}

func TestPlaceRefuses(t *testing.T) {
	for what, c := range map[string]lint.Change{
		"there is no":          lint.Set("fuse.none", "rating", `"1 A"`),
		"has no block output":  {At: "fuse.main", In: "output", Attr: "voltage", Value: `"1 V"`},
		"not written as a blo": lint.Set("branch.lamp.switch.lamp", "rating", `"1 A"`),
	} {
		src := strings.Replace(drawn, `draw = "1 A"`, "draw = \"1 A\"\n    switched = true", 1)
		if _, err := placed(t, src, c); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("%+v: %v, want %q", c, err, what)
		}
	}
	if _, err := placed(t, drawn, lint.Set("fuse.main", "rating", `"1 A"`), lint.Set("fuse.main", "rating", `"2 A"`)); err == nil {
		t.Error("one attribute took two values")
	}
}

// TestPlaceKeepsTheRest changes one attribute of a block among others in a text of any spacing and with comments
// anywhere: every line but its own stays as it was.
func TestPlaceKeepsTheRest(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		seed := rapid.Int64().Draw(rt, "seed")
		rnd := rand.New(rand.NewSource(seed))
		var b strings.Builder
		names := []string{"a", "b", "c"}
		for _, n := range names {
			fmt.Fprintf(&b, "# about %s\nfuse %q {%s\n", n, n, []string{"", " # here", "  "}[rnd.Intn(3)])
			for _, a := range []string{`kind = "anl"`, `rating    = "5 A"`, `reset="manual"`, "# between", "", `label = "x" // end`} {
				if rnd.Intn(3) > 0 {
					b.WriteString(strings.Repeat(" ", rnd.Intn(4)) + a + strings.Repeat(" ", rnd.Intn(2)) + "\n")
				}
			}
			b.WriteString("}\n\n")
		}
		src := b.String()
		attr := rapid.SampledFrom([]string{"kind", "rating", "reset", "label", "polarized"}).Draw(rt, "attr")
		at := "fuse." + rapid.SampledFrom(names).Draw(rt, "name")
		value := rapid.SampledFrom([]string{`"7 A"`, ""}).Draw(rt, "value")
		got, err := placed(t, src, lint.Change{At: at, Attr: attr, Value: value})
		if err != nil {
			rt.Fatal(err)
		}
		was, is := strings.SplitAfter(src, "\n"), strings.SplitAfter(got, "\n")
		all := changes(was, is)
		if len(all) > 1 || len(all) == 1 && (all[0].a1-all[0].a0 > 1 || all[0].b1-all[0].b0 > 1) {
			rt.Fatalf("more than one line changed:\n%s\nbecame\n%s", src, got)
		}
		plan, _ := schema.Decode("tern.wiring.hcl", []byte(got), nil)
		p, err := newPage("tern.wiring.hcl", []byte(got))
		if err != nil {
			rt.Fatal(err)
		}
		block, err := p.find(plan, at, "")
		if err != nil {
			rt.Fatal(err)
		}
		a := block.Body.Attributes[attr]
		if (a == nil) != (value == "") || a != nil && string(a.Expr.Range().SliceBytes(p.src)) != value {
			rt.Fatalf("%s of %s is not %s:\n%s", attr, at, value, got)
		}
		if !slices.Equal(comments(src), comments(got)) {
			rt.Fatalf("comments changed:\n%s\nbecame\n%s", src, got)
		}
	})
}

func comments(src string) []string {
	var out []string
	for l := range strings.Lines(src) {
		for _, mark := range []string{"#", "//"} {
			if _, c, ok := strings.Cut(l, mark); ok {
				out = append(out, strings.TrimSpace(c))
			}
		}
	}
	return out
}

// TestPlaceBehindLongComments has a comment that goes on in the next line behind an attribute and behind a block:
// what is new does not land in it.
func TestPlaceBehindLongComments(t *testing.T) {
	const src = "fuse \"main\" {\n  rating = \"40 A\" /* as\n  fitted */\n} /* the\nend */\nbus \"x\" {\n}\n"
	want := strings.Replace(strings.Replace(src, "fitted */\n", "fitted */\n  on     = bus.x\n", 1), "end */\n", "end */\n\nbus \"y\" {\n}\n", 1)
	got, err := placed(t, src, lint.Set("fuse.main", "on", "bus.x"), lint.Change{At: "fuse.main", Block: "bus \"y\" {\n}\n"})
	if err != nil || got != want {
		t.Errorf("%v\n%s\nwant\n%s", err, got, want)
	}
}
