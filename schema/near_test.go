package schema

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	known := []string{"rating", "reset", "kind", "curve", "on", "a", "b"}
	for word, want := range map[string]string{
		"raiting": "rating", "ratign": "rating", "RATING": "rating", "rest": "reset", "kid": "kind", "curev": "curve",
		"no": "", "c": "", "A": "a", "zebra": "", "": "", strings.Repeat("x", 100): "",
	} {
		n := nearer{budget: 100}
		if got := strings.Join(n.nearest(word, known), " "); got != want {
			t.Errorf("nearest(%q) = %q, want %q", word, got, want)
		}
	}
	n := nearer{budget: 100}
	if got := n.hint("mode.parked", []string{"mode.packed", "mode.parker", "mode.barked", "mode.marked", "mode.towing"}); got != " Did you mean mode.packed, mode.parker or mode.barked?" {
		t.Errorf("hint: %q", got)
	}
	if got := n.hint("zebra", []string{"a", "b"}); got != " What there is: a, b." {
		t.Errorf("hint: %q", got)
	}
	spent := nearer{}
	if got := spent.nearest("ratign", known); got != nil {
		t.Errorf("a spent budget still finds %q", got)
	}
}

func TestDistance(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"a", "", 1}, {"", "abc", 3}, {"abc", "abc", 0}, {"abc", "acb", 1}, {"abc", "xbz", 2}, {"kitten", "sitting", 3}} {
		if got := distance(test.a, test.b); got != test.want {
			t.Errorf("distance(%q, %q) = %d, want %d", test.a, test.b, got, test.want)
		}
	}
}
