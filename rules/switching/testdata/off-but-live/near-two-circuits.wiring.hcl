# Two circuits through one disconnect: its two feeds are joined on the bus, and are no two sides of it.

system "dunlin" {}
source "b" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}
fuse "f" {
  rating = "60 A"
  on = source.b
}
bus "m" {}
conductor "w0" {
  from = fuse.f.load
  to = bus.m
  size = "2 AWG"
  length = "1 m"
}
switch "d" {
  kind = "disconnect"
  terminals = ["in1","out1","in2","out2"]
  position "off" {}
  position "on" {
    joins = [["in1","out1"],["in2","out2"]]
  }
}
conductor "a1" {
  from = bus.m
  to = switch.d.in1
  size = "2 AWG"
  length = "1 m"
}
conductor "a2" {
  from = bus.m
  to = switch.d.in2
  size = "2 AWG"
  length = "1 m"
}
load "x" {
  draw = "5 A"
}
load "y" {
  draw = "5 A"
}
conductor "o1" {
  from = switch.d.out1
  to = load.x
  size = "2 AWG"
  length = "1 m"
}
conductor "o2" {
  from = switch.d.out2
  to = load.y
  size = "2 AWG"
  length = "1 m"
}
