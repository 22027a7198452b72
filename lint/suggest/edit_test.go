package suggest

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestApply(t *testing.T) {
	for _, c := range []struct {
		edits []Edit
		want  string // "" is an error
	}{
		{nil, "abcdef"},
		{[]Edit{{"", 4, 6, "EF"}, {"", 0, 1, "A"}}, "AbcdEF"},
		{[]Edit{{"", 2, 2, "-"}, {"", 2, 2, "-"}}, "ab-cdef"},
		{[]Edit{{"", 0, 3, ""}, {"", 3, 6, "x"}}, "x"},
		{[]Edit{{"", 0, 3, ""}, {"", 2, 4, "x"}}, ""},
		{[]Edit{{"", 2, 2, "x"}, {"", 2, 3, "y"}}, ""},
		{[]Edit{{"", 6, 7, ""}}, ""},
		{[]Edit{{"", 3, 2, ""}}, ""},
	} {
		got, err := Apply([]byte("abcdef"), c.edits)
		if string(got) != c.want || (err != nil) != (c.want == "") {
			t.Errorf("%v gives %q, %v; want %q", c.edits, got, err, c.want)
		}
	}
}

// twoTexts draws a text of few different lines, and another made from it by some edits of lines.
func twoTexts(t *rapid.T) (string, string) {
	line := rapid.SampledFrom([]string{"a", "b", "c = 1", "", "  é", "\tö = \"30 A\"", "}", "\\ No newline"})
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
	old := rapid.SliceOfN(line, 0, 30).Draw(t, "old")
	new := slices.Clone(old)
	for range rapid.IntRange(0, 5).Draw(t, "edits") {
		at := rapid.IntRange(0, len(new)).Draw(t, "at")
		to := min(at+rapid.IntRange(0, 3).Draw(t, "out"), len(new))
		new = slices.Replace(new, at, to, rapid.SliceOfN(line, 0, 3).Draw(t, "in")...)
	}
	text := func(lines []string, what string) string {
		s := strings.Join(lines, end)
		if rapid.Bool().Draw(t, what) && len(lines) > 0 {
			s += end
		}
		return s
	}
	return text(old, "old ends"), text(new, "new ends")
}

func TestBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, new := twoTexts(t)
		edits := Between("f", []byte(old), []byte(new))
		got, err := Apply([]byte(old), edits)
		if err != nil || string(got) != new {
			t.Fatalf("%q by %v becomes %q, %v; want %q", old, edits, got, err, new)
		}
		a, b := lines([]byte(old)), lines([]byte(new))
		at := 0
		for _, h := range changes(a, b) {
			if !slices.Equal(a[at:h.a0], b[h.b0-(h.a0-at):h.b0]) || h.a0 == h.a1 && h.b0 == h.b1 {
				t.Fatalf("between the hunks the texts differ: %v", h)
			}
			at = h.a1
		}
	})
}

// tools are the programs that must take our diffs; "" is in place of a program that is not installed.
var tools = [][]string{{"git", "apply", "--whitespace=nowarn"}, {"patch", "-p1", "-s"}}

func TestDiffsApply(t *testing.T) {
	for _, tool := range tools {
		if _, err := exec.LookPath(tool[0]); err != nil {
			t.Skipf("%s is not installed", tool[0])
		}
		rapid.Check(t, func(t *rapid.T) {
			old, new := twoTexts(t)
			if old == "" || new == "" || old == new { // a file that comes or goes is not ours to write
				return
			}
			checkPatch(t, tool, "plan.wiring.hcl", old, new)
		})
	}
}

func TestDiffOfOddNames(t *testing.T) {
	for _, tool := range tools {
		if _, err := exec.LookPath(tool[0]); err != nil {
			t.Skipf("%s is not installed", tool[0])
		}
		for _, name := range []string{"two words.hcl", "quote\"d.hcl", "a\nb.hcl", "bäume/öl.hcl", "tab\there.hcl", "back\\slash.hcl"} {
			checkPatch(t, tool, name, "a\nb\nc\n", "a\nB\nc\n")
		}
	}
}

func checkPatch(t interface{ Fatalf(string, ...any) }, tool []string, name, old, new string) {
	dir, err := os.MkdirTemp("", "ferrule-diff")
	if err != nil {
		t.Fatalf("%v", err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatalf("%v", err)
	}
	if err := os.WriteFile(path, []byte(old), 0o644); err != nil {
		t.Fatalf("%v", err)
	}
	diff := Unified(name, []byte(old), []byte(new))
	cmd := exec.Command(tool[0], tool[1:]...)
	cmd.Dir, cmd.Stdin = dir, strings.NewReader(diff)
	cmd.Env = append(os.Environ(), "GIT_CEILING_DIRECTORIES="+filepath.Dir(dir), "GIT_CONFIG_GLOBAL=/dev/null", "GIT_CONFIG_SYSTEM=/dev/null")
	out, err := cmd.CombinedOutput()
	got, _ := os.ReadFile(path)
	if err != nil || !bytes.Equal(got, []byte(new)) {
		t.Fatalf("%s of\n%q\non %q gives %q, want %q: %v\n%s", tool[0], diff, old, got, new, err, out)
	}
}

func TestUnified(t *testing.T) {
	old := "a\nb\nc\nd\ne\nf\ng\nh\ni\nj\nk\nl\nm"
	new := strings.Replace(strings.Replace(old, "b\n", "", 1), "\nm", "\nM\n", 1)
	want := "--- a/x.hcl\n+++ b/x.hcl\n@@ -1,5 +1,4 @@\n a\n-b\n c\n d\n e\n@@ -10,4 +9,4 @@\n j\n k\n l\n-m\n\\ No newline at end of file\n+M\n"
	if got := Unified("./x.hcl", []byte(old), []byte(new)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
