package schema

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"
)

// hostile are texts that would overflow the stack, or take time or memory without bound, if they
// were handed to the parser or evaluated as they are. Each is an error instead.
func hostile(n int) map[string]string {
	many := strings.Repeat
	return map[string]string{
		"parentheses":  "let { a = " + many("(", n) + "1" + many(")", n) + " }",
		"mixed":        "let { a = " + many("( [", n) + " }",
		"negations":    "let { a = " + many("!", n) + "true }",
		"minus signs":  "let { a = " + many("- ", n) + "1 }",
		"additions":    "let { a = " + many("1+", n) + "1 }",
		"conditions":   "let { a = " + many("true?1:", n) + "1 }",
		"brackets":     "let { a = " + many("[", n) + " }",
		"indexes":      "let { a = let.b" + many("[0]", n) + " }",
		"splats":       "let { a = let.b" + many("[*]", n) + " }",
		"dots":         "let { a = let.b" + many(".b", n) + " }",
		"blocks":       many("a {\n", n),
		"templates":    "let { a = " + many("\"${", n) + " }",
		"directives":   "let { a = \"" + many("%{if true}", n) + "\" }",
		"namespaces":   "let { a = " + many("a::", n) + "b() }",
		"heredocs":     many("a = <<A\n", n),
		"long heredoc": "let {\n  a = <<A\n" + many("x\n", n) + "A\n}\n",
		"quotes":       many("\"", n),
		"comments":     many("/*", n),
		"digits":       "let { a = " + many("9", n) + " }",
		"labels":       "fuse " + many("\"a\" ", n) + "{}",
		"bad blocks":   many("a{}\n", n),
		"twice":        many("fuse \"x\" {}\n", n/10),
		"chain":        chain(n / 20),
		"wrong names":  wrongNames(n / 40),
		"loops":        "let { a = " + many("[for x in [1,2,3,4,5,6,7,8,9] : ", 8) + "x" + many("]", 8) + " }",
		"doubling":     "let {\n  a0 = \"aaaaaaaaaaaaaaaa\"\n" + doubling(40) + "}\n",
		"tall number":  "let { a = \"${1e999999999}\" }",
		"text number":  "let { a = \"${\"1e999999999\" + 0}\" }",
		"long index":   "let {\n  a = \"" + many("9", 900) + "\"\n  b = [1][\"${let.a}" + many("${let.a}", 100) + "\"]\n}\n",
	}
}

func chain(n int) string {
	var b strings.Builder
	b.WriteString("let {\n")
	for i := range n {
		fmt.Fprintf(&b, "  a%d = let.a%d\n", i, i+1)
	}
	return b.String() + fmt.Sprintf("  a%d = let.nowhere\n}\n", n)
}

func doubling(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "  a%d = \"${let.a%d}${let.a%d}\"\n", i+1, i, i)
	}
	return b.String()
}

func wrongNames(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "bus \"b%d\" {\n  part_of = source.c%d\n}\nsource \"q%d\" {\n}\n", i, i, i)
	}
	return b.String()
}

func TestHostileTexts(t *testing.T) {
	for name, src := range hostile(40_000) {
		start := time.Now()
		_, diags := Decode("plan.wiring.hcl", []byte("system \"gull\" {}\n"+src), nil)
		if len(diags) == 0 {
			t.Errorf("%s: no error", name)
		}
		if took := time.Since(start); took > 10*time.Second { // a hundredth of it on an idle machine
			t.Errorf("%s took %v", name, took)
		}
	}
}

func TestHostileJSON(t *testing.T) {
	const n = 100_000
	for name, src := range map[string]string{
		"arrays":      strings.Repeat("[", n),
		"objects":     strings.Repeat(`{"a":`, n),
		"templates":   `{"let": {"a": "` + strings.Repeat("${", n) + `"}}`,
		"parentheses": `{"let": {"a": "${` + strings.Repeat("(", n/2) + `}"}}`,
		"digits":      `{"let": {"a": ` + strings.Repeat("9", n) + `}}`,
		"tall number": `{"let": {"a": 1e999999999, "b": "${let.a}"}}`,
		"rule":        `{"house_rule": {"r": {"for": "fuse", "require": "` + strings.Repeat("!", n) + `x"}}}`,
		"reference":   `{"fuse": {"r": {"on": "` + strings.Repeat("a.", n) + `x"}}}`,
	} {
		if _, diags := Decode("plan.wiring.json", []byte(src), nil); len(diags) == 0 {
			t.Errorf("%s: no error", name)
		}
	}
}

// What is deep but sane is read.
func TestDepthThatIsAllowed(t *testing.T) {
	decode(t, "fuse \"main\" { rating = "+strings.Repeat("(", 60)+"\"5 A\""+strings.Repeat(")", 60)+" }\n")
	decode(t, "let { a = "+strings.Repeat("1 + ", 800)+"1 }\n")
	decode(t, "bus \"b\" { notes = \""+strings.Repeat("- = * ( [ ", 5000)+"\" }\n")
	decode(t, "bus \"b\" {\n  notes = <<EOT\n"+strings.Repeat("a line of notes, (with brackets)\n", 2000)+"EOT\n}\n")
}

// Errors beyond a bound are counted, not listed.
// Unknown blocks are blocks: each gets its own error, and none is said to be too long.
func TestManyUnknownBlocks(t *testing.T) {
	for _, block := range []string{"gizmo \"a\" {\n}\n", "Gizmo-2 {\n}\n"} {
		_, diags := Decode("a.wiring.hcl", []byte(strings.Repeat(block, longestBlock/len(block)+100)), nil)
		for _, x := range diags {
			if x.Summary == "Too long or too deep" {
				t.Fatalf("%q: %s", block, x.Detail)
			}
		}
		if len(diags) < mostErrors {
			t.Errorf("%q: %d errors", block, len(diags))
		}
	}
}

func TestTooLargeSaysMiB(t *testing.T) {
	_, diags := Decode("a.wiring.hcl", bytes.Repeat([]byte("#"), MaxFile+1), nil)
	if len(diags) != 1 || !strings.Contains(diags[0].Detail, "more than 4 MiB") {
		t.Errorf("%v", diags)
	}
}

func TestManyErrors(t *testing.T) {
	_, diags := Decode("plan.wiring.hcl", []byte(strings.Repeat("zebra \"x\" {}\n", 3000)), nil)
	last := diags[len(diags)-1]
	if len(diags) != mostErrors+1 || last.Summary != "Too many errors" || !strings.Contains(last.Detail, "2001 more") && !strings.Contains(last.Detail, "2000 more") {
		t.Errorf("%d errors, the last %q", len(diags), last.Detail)
	}
}
