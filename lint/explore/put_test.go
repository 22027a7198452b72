package explore_test

import (
	"slices"
	"testing"

	"ferrule/lint/explore"
)

const latched = `
system "latched" {
}

source "pack" {
  kind      = "battery"
  voltage   = "12 V"
  removable = true
}

connector "dock" {
  follows = source.pack
}

connector "bolted" {
}

switch "knob" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "out" {
  from = connector.dock.fixed
  to   = switch.knob.a
}

conductor "pack" {
  from = source.pack
  to   = connector.dock.free
}

interlock "bar" {
  never = [
    { switch.knob = "on", source.pack = "absent" },
    { connector.bolted = "unmated" },
  ]
}
`

func TestLeaving(t *testing.T) {
	_, s := build(t, latched)
	if _, can := s.Leaving(s.Net.Var("connector.bolted"), 0); can {
		t.Error("an interlock never lets the connector be unmated")
	}
	left, can := s.Leaving(s.Net.Var("source.pack"), 0)
	knob := s.Net.Var("switch.knob")
	if on, known := left.Allows(map[int]int{knob: 1}); !can || on || !known {
		t.Errorf("can leave: %v; with the knob on: %v", can, on)
	}
	if off, _ := left.Allows(map[int]int{knob: 0, s.Net.Var("source.pack"): 1}); !off {
		t.Error("with the knob off the pack can leave")
	}
	if same, can := s.Leaving(knob, 0); same != s || !can {
		t.Error("nothing holds the knob")
	}
}

func TestPut(t *testing.T) {
	_, s := build(t, latched)
	dock, pack := s.Net.Var("connector.dock"), s.Net.Var("source.pack")
	z := s.Net.ZoneOf(s.Net.Node("connector.dock.free.pos"))
	views, _ := s.Views(z, explore.All())
	i := slices.IndexFunc(views, func(v *explore.View) bool { return v.At(pack) == 1 })
	v := views[i]
	w := v.Put(dock, 0)
	a, b := s.Net.Node("connector.dock.free.pos"), s.Net.Node("connector.dock.fixed.pos")
	if !v.Joined(a, b) || w.Joined(a, b) || w.At(pack) != 1 || v.At(dock) != 1 {
		t.Errorf("mated %v, drawn %v, pack at %d, dock before at %d", v.Joined(a, b), w.Joined(a, b), w.At(pack), v.At(dock))
	}
}
