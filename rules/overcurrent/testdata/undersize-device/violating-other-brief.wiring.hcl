# A hard one: the load that draws most is done in seconds; the other, a little smaller, runs for two hours.

system "dunlin" {
  practice = ["general"]
}

source "house" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "400 Ah"
  short_circuit = "2 kA"
}

fuse "f" { # want notice `"f" \(20 A\) carries 32 A for longer than the 6\.37 min after which it opens\.`
  kind = "blade"
  rating = "20 A"
  voltage_rating = "58 V dc"
  interrupting = "5 kA"
  on = source.house
}

switch "s" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "w" {
  from = fuse.f.load
  to = switch.s.c
  size = "8 AWG"
  length = "1 m"
}

load "a" {
  kind = "motor"
  draw = "34 A"
  behavior = "constant-current"
  hours_per_day = "10 s"
}

load "b" {
  kind = "heater"
  draw = "32 A"
  behavior = "constant-current"
  hours_per_day = "2 h"
}

conductor "wa" {
  from = switch.s.a
  to = load.a
  size = "8 AWG"
  length = "1 m"
}

conductor "wb" {
  from = switch.s.b
  to = load.b
  size = "8 AWG"
  length = "1 m"
}
