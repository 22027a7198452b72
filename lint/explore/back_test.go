package explore_test

import (
	"testing"

	"ferrule/lint/explore"
	"ferrule/lint/network"
)

// A converter between a battery and a loose plug: its input is live only because current comes back
// through it, so it feeds nothing on the battery's side.
const backwards = `
system "backwards" {
}

source "pack" {
  kind    = "battery"
  voltage = "12 V"
}

converter "boost" {
  kind           = "dc-dc"
  blocks_reverse = false
}

connector "plug" {
}

source "panel" {
  kind    = "supply"
  voltage = "12 V"
}

conductor "out" {
  from = converter.boost.out
  to   = source.pack
}

conductor "in" {
  from = connector.plug.free
  to   = converter.boost.in
}

conductor "up" {
  from = source.panel
  to   = connector.plug.fixed
}
`

func TestLiveBackwards(t *testing.T) {
	n, s := build(t, backwards)
	back := func(c *network.Converter) bool { return c.BlocksReverse.False() }
	c := &n.Converters[0]
	feeds := func(e *explore.Energy, p network.Port) (in bool) {
		for _, x := range e.By(p) {
			in = in || x.Source < 0
		}
		return in
	}
	views, _ := s.Views(n.Together(c.In.Hot, c.Out.Hot), explore.All())
	seen := map[bool]bool{}
	for _, v := range views {
		fed := v.At(n.Var("connector.plug")) == 1 && v.At(n.Var("source.panel")) == 1
		seen[fed] = true
		e := v.Live(back, nil)
		if !e.Feeds(c.In) || !feeds(e, c.In) {
			t.Errorf("input dead in %v", v.State(v.Zone.Vars))
		}
		if feeds(e, c.Out) != fed {
			t.Errorf("in %v the converter feeds its output: %v", v.State(v.Zone.Vars), !fed)
		}
		if w := v.Live(back, func(s *network.Source) bool { return s.Kind.Value == "battery" }); feeds(w, c.In) {
			t.Errorf("in %v the converter feeds its input from its own output", v.State(v.Zone.Vars))
		}
	}
	if !seen[true] || !seen[false] {
		t.Error("both cases must occur")
	}
}
