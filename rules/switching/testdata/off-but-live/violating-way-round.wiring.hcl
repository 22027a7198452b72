# A hard one: two switches and a bus lead round the disconnect: with it off and both of them on, what is behind it is live.

system "dunlin" {
  practice = ["us-boat"]
  ambient = "25 C"
}

source "h" {
  label = "h"
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
  resistance = "6 mohm"
  short_circuit = "2 kA"
  discharge_limit = "200 A"
  charge_limit = "100 A"
  role = "house"
}

fuse "f" {
  label = "f"
  kind = "terminal"
  rating = "60 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = source.h
}

bus "m" {
  label = "m"
  rating = "300 A"
}

bus "n" {
  label = "n"
  rating = "300 A"
}

switch "main" { # want warning `With "main" off, a way round it joins its two sides`
  label = "main"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  kind = "disconnect"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "w1" {
  from = fuse.f.load
  to = switch.main.a
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w2" {
  from = switch.main.b
  to = bus.m
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

switch "x" {
  label = "x"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

switch "y" {
  label = "y"
  terminals = ["a", "b"]
  rating = "300 A"
  voltage_rating = "125 V dc"
  poles = 1
  transition = "break-before-make"
  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "w3" {
  from = fuse.f.load
  to = switch.x.a
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w4" {
  from = switch.x.b
  to = bus.n
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w5" {
  from = bus.n
  to = switch.y.a
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

conductor "w6" {
  from = switch.y.b
  to = bus.m
  size = "2 AWG"
  length = "0.3 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

fuse "f_l" {
  label = "f_l"
  kind = "terminal"
  rating = "5 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = bus.m
}

conductor "w7" {
  from = fuse.f_l.load
  to = load.l
  size = "12 AWG"
  length = "1 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

load "l" {
  label = "l"
  kind = "light"
  draw = "2 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
  rated_voltage = "12 V"
  critical = "none"
  own_battery = false
}

fuse "f_l2" {
  label = "f_l2"
  kind = "terminal"
  rating = "5 A"
  voltage_rating = "125 V dc"
  interrupting = "20 kA"
  on = bus.n
}

conductor "w8" {
  from = fuse.f_l2.load
  to = load.l2
  size = "12 AWG"
  length = "1 m"
  insulation = "105 C"
  voltage_rating = "600 V"
}

load "l2" {
  label = "l2"
  kind = "light"
  draw = "2 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
  rated_voltage = "12 V"
  critical = "none"
  own_battery = false
}
