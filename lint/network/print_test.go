package network

import (
	"strings"
	"testing"

	"ferrule/schema"
)

func TestPrint(t *testing.T) {
	plan, diags := schema.Decode("gull.wiring.hcl", []byte(`
system "gull" {
}
source "pack" {
  kind      = "battery"
  removable = true
}
switch "select" {
  terminals  = ["a\nb", "out side"]
  follows    = source.pack
  position "released" {
  }
  position "pulled in" {
    joins = [["a\nb", "out side"]]
  }
}
converter "boost" {
  kind = "dc-dc"
}
load "lamp" {
  part_of = source.pack
}
conductor "feed" {
  from = source.pack
  to   = switch.select["out side"]
}
`), nil)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	net, diags := Build(plan)
	if diags.HasErrors() {
		t.Fatal(diags)
	}
	var b strings.Builder
	net.Print(&b)
	for _, want := range []string{
		"  0 source.pack: absent, present\n",
		"  1 switch.select: released, pulled in; pulled in while source.pack\n",
		" source.pack.neg (return)\n",
		" wire    conductor.feed: source.pack.pos - switch.select.out side.pos\n",
		`contact switch.select: switch.select.a\nb.pos - switch.select.out side.pos, when switch.select = pulled in` + "\n",
		"  0 source.pack: source.pack.pos over source.pack.neg, while source.pack is present\n",
		"  0 load.lamp: load.lamp.pos over load.lamp.neg, while source.pack is present\n",
		"  0 converter.boost in: converter.boost.in.pos over converter.boost.in.neg; out: converter.boost.out.pos over converter.boost.out.neg\n",
		"Zones: 4\n",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, &b)
		}
	}
}
