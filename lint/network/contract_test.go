package network_test

import (
	"testing"

	"ferrule/lint/network"
)

// TestContract: what wires and fuses join is one node, what a switch parts is two, and every contact and
// port is still there.
func TestContract(t *testing.T) {
	n, _ := build(t, `system "t" {
}
source "b" {
  kind = "battery"
  voltage = "12 V"
}
fuse "f" {
  kind = "blade"
  rating = "10 A"
}
switch "s" {
  terminals = ["a", "b"]
}
load "l" {
  draw = "1 A"
}
conductor "w" {
  from = source.b
  to = fuse.f.line
}
conductor "x" {
  from = fuse.f.load
  to = switch.s.a
}
conductor "y" {
  from = switch.s.b
  to = load.l
}
`)
	z := n.Whole()
	c := n.Contract(z)
	at := func(name string) network.NodeID { return c.At(n.Node(name)) }
	if at("source.b.pos") != at("switch.s.a.pos") || at("switch.s.b.pos") != at("load.l.pos") || at("source.b.neg") != at("load.l.neg") {
		t.Error("what wires join is apart")
	}
	if at("switch.s.a.pos") == at("switch.s.b.pos") || at("source.b.pos") == at("source.b.neg") {
		t.Error("what a switch parts is joined")
	}
	if len(c.Network.Edges) != 1 || n.Edges[c.Edges[0]].Kind != network.Contact || len(c.Nodes) != 3 {
		t.Errorf("%d nodes, edges %v", len(c.Nodes), c.Edges)
	}
	if c.Loads[0].Hot != at("load.l.pos") || c.Sources[0].Ret != at("source.b.neg") || c.At(network.None) != network.None {
		t.Error("a port has moved")
	}
}
