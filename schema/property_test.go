package schema

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func everything(t *testing.T) string {
	t.Helper()
	src, err := os.ReadFile("testdata/good/everything.wiring.hcl")
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// topLevel parts a plan into its blocks, each with the lines before it.
func topLevel(src string) []string {
	var out []string
	for len(src) > 0 {
		n := cut([]byte(src), 0)
		out = append(out, src[:n])
		src = src[n:]
	}
	return out
}

// A plan with lines and words lost, doubled, swapped or mangled is never more than a list of errors.
func TestDamagedPlans(t *testing.T) {
	src := everything(t)
	lines := strings.SplitAfter(src, "\n")
	rapid.Check(t, func(rt *rapid.T) {
		out := slices.Clone(lines)
		for range rapid.IntRange(1, 6).Draw(rt, "damages") {
			i, j := rapid.IntRange(0, len(out)-1).Draw(rt, "line"), rapid.IntRange(0, len(out)-1).Draw(rt, "other")
			switch rapid.IntRange(0, 5).Draw(rt, "kind") {
			case 0:
				out[i] = ""
			case 1:
				out[i] += out[i]
			case 2:
				out[i], out[j] = out[j], out[i]
			case 3:
				k := rapid.IntRange(0, len(out[i])).Draw(rt, "column")
				out[i] = out[i][:k] + rapid.SampledFrom([]string{"{", "}", "\"", "[", "]", "(", "\n", ".", "${", "=", "null", "/*", "<<E\n", "é", "\xff", " 5 "}).Draw(rt, "junk") + out[i][k:]
			case 4:
				words := strings.Fields(out[i])
				if len(words) > 1 {
					out[i] = strings.Join(words[:len(words)-1], " ") + "\n"
				}
			case 5:
				k := rapid.IntRange(0, len(out[i])).Draw(rt, "column")
				out[i] = out[i][:k]
			}
		}
		text := strings.Join(out, "")
		p, diags := Decode("plan.wiring.hcl", []byte(text), folder("good"))
		texts := map[string][]byte{"plan.wiring.hcl": []byte(text)}
		for _, d := range diags {
			if d.Subject.Filename == "plan.wiring.hcl" {
				inFile(t, *d.Subject, texts)
			}
		}
		for _, b := range p.Blocks() {
			if p.Block(b.Header().Addr) != b {
				rt.Fatalf("%s is lost", b.Header().Addr)
			}
		}
	})
}

// One broken block hides no other: all the rest is in the plan, and so are their errors.
func TestBrokenBlockHidesNoOther(t *testing.T) {
	blocks := topLevel(everything(t))
	whole, _ := Decode("plan.wiring.hcl", []byte(strings.Join(blocks, "")), folder("good"))
	junk := []string{"rating = 10 A\n", "x = (\n", "x = [\n", "{\n", "}\n}\n", "\"a\" = 5\n", "x = \"open\n", "x = 'a'\n", "x = ${\n", "x y z\n", "= 5\n", "a { b = 1 c = 2 }\n"}
	rapid.Check(t, func(rt *rapid.T) {
		i := rapid.IntRange(1, len(blocks)-1).Draw(rt, "broken")
		out := slices.Clone(blocks)
		open := strings.IndexByte(out[i], '{') + 1
		out[i] = out[i][:open] + "\n" + rapid.SampledFrom(junk).Draw(rt, "junk") + out[i][open:]
		wrong := "fuse \"wrong\" {\n  raiting = \"1 A\"\n}\n"
		text := strings.Join(out, "") + wrong
		p, diags := Decode("plan.wiring.hcl", []byte(text), folder("good"))
		from, to := strings.Count(strings.Join(out[:i], ""), "\n")+1, strings.Count(strings.Join(out[:i+1], ""), "\n")+1
		found := 0
		for _, d := range diags {
			if strings.Contains(d.Detail, "raiting") {
				found++
			} else if line := d.Subject.Start.Line; d.Subject.Filename == "plan.wiring.hcl" && (line < from || line > to) && !follows(d.Summary) {
				rt.Fatalf("an error outside the broken block: %s %s: %s", d.Subject, d.Summary, d.Detail)
			}
		}
		if found != 1 || len(diags) < 2 {
			rt.Fatalf("errors are missing: %v", diags)
		}
		for _, b := range whole.Blocks() {
			h := b.Header()
			in := h.Range.Filename == "plan.wiring.hcl" && (h.Range.Start.Line < from || h.Range.Start.Line >= to)
			if in && p.Block(h.Addr) == nil {
				rt.Fatalf("%s is hidden by the broken block at lines %d to %d:\n%s", h.Addr, from, to, out[i])
			}
		}
	})
}

// follows tells errors elsewhere that a broken block may cause: what it defined is gone.
func follows(summary string) bool {
	return slices.Contains([]string{"Unknown reference", "Unknown value", "Unknown terminal", "Unknown position", "Figures contradict each other", "Missing name", "Wrong kind of part"}, summary)
}

// The pieces in which a file is parsed make no difference to what is read, nor to where.
func TestPiecesMakeNoDifference(t *testing.T) {
	blocks := append(topLevel(everything(t)), "# a remark\n", "\n", "let {\n  text = <<EOT\nfuse \"no\" {\n}\nEOT\n}\n", "/*\nbus \"no\" {\n}\n*/\n", "bus \"indented\" {\n  }\n")
	rapid.Check(t, func(rt *rapid.T) {
		var b strings.Builder
		for range rapid.IntRange(0, 12).Draw(rt, "blocks") {
			b.WriteString(rapid.SampledFrom(blocks).Draw(rt, "block"))
		}
		text := b.String()
		if rapid.Bool().Draw(rt, "windows") {
			text = strings.ReplaceAll(text, "\n", "\r\n")
		}
		d := newDecoder("plan.wiring.hcl", nil)
		want, _ := d.parseNative("plan.wiring.hcl", []byte(text), len(text)+1)
		got, _ := d.parseNative("plan.wiring.hcl", []byte(text), rapid.IntRange(0, 500).Draw(rt, "size"))
		if len(d.problems.list) > 0 {
			rt.Fatalf("errors: %v", d.problems.list)
		}
		if g, w := outline(got), outline(want); g != w {
			rt.Fatalf("in pieces:\n%s\nat once:\n%s", g, w)
		}
	})
}

func outline(blocks []block) string {
	var b strings.Builder
	for _, x := range blocks {
		fmt.Fprintf(&b, "%s %q %v %+v", x.typ, x.labels, x.header, x.whole)
		in := x.body(nil)
		for _, a := range in.attributes {
			fmt.Fprintf(&b, " %s %+v", a.name, a.expr.Range())
		}
		b.WriteString("\n" + outline(in.blocks))
	}
	return b.String()
}
