package network_test

import (
	"slices"
	"testing"
)

// TestServed: loads behind a step-down, and behind another one after it; not those that a battery feeds
// too. A ring of converters ends.
func TestServed(t *testing.T) {
	n, _ := build(t, head+`
source "pack" {
  kind = "battery"
}
source "spare" {
  kind = "battery"
}
converter "down" {
  kind = "dc-dc"
}
converter "usb" {
  kind = "dc-dc"
}
converter "charge" {
  kind = "dc-dc"
}
converter "back" {
  kind = "dc-dc"
}
load "lamp" {
}
load "phone" {
}
load "radio" {
}
conductor "a" {
  from = source.pack
  to   = converter.down.in
}
conductor "b" {
  from = converter.down.out
  to   = load.lamp
}
conductor "c" {
  from = converter.down.out
  to   = converter.usb.in
}
conductor "d" {
  from = converter.usb.out
  to   = load.phone
}
conductor "e" {
  from = source.pack
  to   = converter.charge.in
}
conductor "f" {
  from = converter.charge.out
  to   = source.spare
}
conductor "g" {
  from = source.spare
  to   = load.radio
}
conductor "h" {
  from = converter.usb.out
  to   = converter.back.in
}
conductor "i" {
  from = converter.back.out
  to   = converter.down.in
}
`)
	for at, want := range map[string][]string{"down": {"load.lamp", "load.phone"}, "usb": {"load.phone"}, "charge": nil, "back": nil} {
		var got []string
		for i := range n.Converters {
			if n.Converters[i].Name != at {
				continue
			}
			for _, l := range n.Served(i) {
				got = append(got, n.Loads[l].Addr)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("converter.%s alone feeds %v; want %v", at, got, want)
		}
	}
}
