package network_test

import (
	"slices"
	"testing"
)

// TestMains: neutrals that a one-pole switch leaves joined make one system of two lines; its returns hold
// the grounds and the wire that bonds them, and a bar of one pole for lines is live.
func TestMains(t *testing.T) {
	n, problems := build(t, head+`
source "a" {
  kind    = "generator"
  voltage = "120 V ac"
}
source "b" {
  kind    = "generator"
  voltage = "120 V ac"
}
source "far" {
  kind    = "generator"
  voltage = "120 V ac"
}
bus "lines" {
  polarity = "positive"
}
bus "neutrals" {
  polarity = "negative"
}
conductor "a_line" {
  from     = source.a.line
  to       = bus.lines
  polarity = "positive"
}
conductor "a_neutral" {
  from     = source.a.neutral
  to       = bus.neutrals
  polarity = "negative"
}
conductor "b_neutral" {
  from     = source.b.neutral
  to       = bus.neutrals
  polarity = "negative"
}
conductor "bond" {
  from     = source.a.neutral
  to       = source.a.ground
  polarity = "negative"
}
`)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	all := n.Mains()
	if len(all) != 2 {
		t.Fatalf("%d systems, wanted that of a and b, and that of the far one", len(all))
	}
	if z := all[0]; len(z.Sources) != 2 || z.Local(n.Node("source.a.ground")) < 0 {
		t.Errorf("the first system has %d sources; ground of a: %d", len(z.Sources), z.Local(n.Node("source.a.ground")))
	}
	if slices.Contains(returns(n), "bus.lines.pos") || n.ZoneOf(n.Node("bus.lines")) != n.ZoneOf(n.Node("source.a.line")) {
		t.Error("a bar for lines is no return")
	}
	for _, name := range []string{"a_neutral", "bond"} {
		e := n.EdgesOf("conductor." + name)
		if len(e) != 1 || !slices.Contains(all[0].Returns, e[0]) || n.Bond(e[0]) != (name == "bond") {
			t.Errorf("%s: edges %v, among the returns %v", name, e, all[0].Returns)
		}
	}
}
