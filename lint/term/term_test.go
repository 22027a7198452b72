package term

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"plain \"text\" é 水":           "plain \"text\" é 水",
		"a\x1b[31mred":                 `a\x1b[31mred`,
		"bell\a del\x7f nul\x00":       `bell\x07 del\x7f nul\x00`,
		"c1 \u009b31m":                 `c1 \x9b31m`,
		"two\nlines\r\tand":            `two\nlines\r\tand`,
		"right\u202eto left\u202c":     `right\u202eto left\u202c`,
		"isolate\u2066x\u2069":         `isolate\u2066x\u2069`,
		"zero\u200bwidth\u200d\ufeff":  `zero\u200bwidth\u200d\ufeff`,
		"line\u2028sep para\u2029":     `line\u2028sep para\u2029`,
		"tag\U000e0041":                `tag\U000e0041`,
		"filler\u3164":                 `filler\u3164`,
		"broken \xff\xc3":              `broken \xff\xc3`,
		"no\u00a0break\u202fnor\u3000": "no break nor ",
		"replacement \ufffd":           "replacement \ufffd",
	} {
		if got := Clean(in); got != want {
			t.Errorf("Clean(%q) = %q, wanted %q", in, got, want)
		}
	}
}

func TestCleanIsHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")))
		if !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return !Shown(r) }) {
			t.Fatalf("%q", s)
		}
		if Clean(s) != s {
			t.Fatalf("cleaning %q again gives %q", s, Clean(s))
		}
	})
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		in    string
		width int
		want  string
	}{
		{"", 10, ""},
		{"one two three", 10, "one two|three"},
		{"a fault of 1 420 A there", 16, "a fault of|1 420 A there"},
		{"abcdefghijklmnopqrstuvwxyz end", 10, "abcdefghij|klmnopqrst|uvwxyz end"},
		{"水水水水水 x", 8, "水水水水|水 x"},
		{"narrow", 1, "narrow"},
	} {
		if got := strings.Join(Wrap(c.in, c.width), "|"); got != c.want {
			t.Errorf("Wrap(%q, %d) = %q, wanted %q", c.in, c.width, got, c.want)
		}
	}
}

func TestWrapLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, width := Clean(rapid.String().Draw(t, "text")), rapid.IntRange(8, 60).Draw(t, "width")
		lines := Wrap(s, width)
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.ReplaceAll(s, " ", ""); got != want {
			t.Fatalf("%q became %q", want, got)
		}
		for _, l := range lines {
			if Width(l) > width {
				t.Fatalf("%q is wider than %d", l, width)
			}
		}
	})
}

func TestPad(t *testing.T) {
	if got := Pad("水", 4) + Pad("longer", 2); got != "水  longer" {
		t.Errorf("%q", got)
	}
}
