package network_test

import (
	"testing"

	"ferrule/lint/network"
)

// TestIslands parts a feed at a switch, where its contacts do not count, and joins it where they do.
func TestIslands(t *testing.T) {
	n, _ := build(t, `
system "tern" {}
source "pack" {
  kind = "battery"
  voltage = "12 V"
}
switch "off" {
  terminals = ["battery", "panel"]
  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}
conductor "in" {
  from = source.pack
  to = switch.off.battery
}
conductor "out" {
  from = switch.off.panel
  to = load.lamp
}
load "lamp" { draw = "1 A" }
`)
	pack, lamp := n.Sources[0].Hot, n.Loads[0].Hot
	for _, contacts := range []bool{true, false} {
		islands := n.Islands(func(e *network.Edge) bool { return contacts || e.Addr != "switch.off" })
		if joined := islands[pack] == islands[lamp]; joined != contacts {
			t.Errorf("contacts %v: joined %v", contacts, joined)
		}
	}
}
