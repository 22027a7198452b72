package explore_test

import (
	"testing"

	"ferrule/lint/explore"
)

// TestThrownSwitchTellsOthersApart: what a switch joins while it is thrown may be fed then and never at
// rest, in every position of the switches on it.
func TestThrownSwitchTellsOthersApart(t *testing.T) {
	n, s := build(t, `system "t" {
  practice = ["us-rv"]
}
source "pack" {
  kind = "battery"
}
bus "spare" {}
switch "tie" {
  terminals  = ["a", "b", "c"]
  transition = "make-before-break"
  position "a" { joins = [["c", "a"]] }
  position "b" { joins = [["c", "b"]] }
}
conductor "feed" {
  from = source.pack
  to   = switch.tie.a
}
conductor "spare" {
  from = switch.tie.b
  to   = bus.spare
}
switch "lamps" {
  terminals = ["c", "a", "b"]
  position "a" { joins = [["c", "a"]] }
  position "off" {}
  position "b" { joins = [["c", "b"]] }
}
conductor "lamps" {
  from = bus.spare
  to   = switch.lamps.c
}
load "large" {
  draw     = "6 A"
  behavior = "constant-current"
}
load "small" {
  draw     = "1 A"
  behavior = "constant-current"
}
conductor "large" {
  from = switch.lamps.a
  to   = load.large
}
conductor "small" {
  from = switch.lamps.b
  to   = load.small
}
`)
	for _, name := range []string{"load.large.pos", "load.small.pos"} {
		id := n.Node(name)
		for _, f := range []explore.Filter{s.Closed(explore.All()), s.About(s.Closed(explore.All()), id)} {
			list, complete := s.Views(n.ZoneOf(id), f)
			fed := 0
			for _, v := range list {
				if v.Joined(n.Sources[0].Hot, id) {
					fed++
					if v.Transit == nil {
						t.Errorf("%s is fed at rest", name)
					}
				}
			}
			if fed == 0 || !complete {
				t.Errorf("%s is fed in no state", name)
			}
		}
	}
}
