# Parked in either position the starter battery sees its own fuse first. While the selector is thrown
# both feeds meet, and the short bare stub of the spare position carries the starter battery past it.

system "overlap" {
  practice = ["us-boat"]
}

source "start" {
  label     = "Start battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "both" {
  terminals  = ["a", "b", "c"]
  transition = "make-before-break"
  position "first" {
    joins = [["a", "b"]]
  }
  position "second" {
    joins = [["b", "c"]]
  }
}

conductor "post" {
  from   = source.start
  to     = switch.both.a
  size   = "4 AWG"
  length = "12 cm"
}

fuse "spare" {
  kind   = "blade"
  rating = "15 A"
  on     = bus.spare
}

bus "spare" {
}

conductor "b_stub" {
  from   = switch.both.b
  to     = bus.spare
  size   = "14 AWG"
  length = "4 cm"
}

conductor "out" { # want danger "meets source \"Start battery\" with no overcurrent device in the first 177.8 mm"
  from   = switch.both.c
  to     = fuse.house.line
  size   = "10 AWG"
  length = "1.5 m"
}

fuse "house" {
  kind   = "blade"
  rating = "30 A"
}

load "house" {
  draw = "10 A"
}

conductor "load" {
  from   = fuse.house.load
  to     = load.house
  size   = "10 AWG"
  length = "1 m"
}
