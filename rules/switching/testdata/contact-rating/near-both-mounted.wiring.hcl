# The common terminal sits on the bus, and both batteries are on at once: the load is no more for that.

system "dunlin" {
  practice = ["us-rv"]
}
source "a" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "200 Ah"
}
source "b" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "200 Ah"
}
bus "m" {
  rating = "200 A"
}
switch "s" {
  on = bus.m
  terminals = ["c", "one", "two"]
  rating = "100 A"
  voltage_rating = "48 V dc"
  transition = "make-before-break"
  position "one" { joins = [["c", "one"]] }
  position "both" { joins = [["c", "one", "two"]] }
  position "two" { joins = [["c", "two"]] }
}
conductor "wa" {
  from = source.a
  to = switch.s.one
  size = "2 AWG"
  length = "1 m"
}
conductor "wb" {
  from = source.b
  to = switch.s.two
  size = "2 AWG"
  length = "1 m"
}
conductor "wl" {
  from = bus.m
  to = load.l
  size = "2 AWG"
  length = "1 m"
}
load "l" {
  draw = "80 A"
  behavior = "constant-current"
}
