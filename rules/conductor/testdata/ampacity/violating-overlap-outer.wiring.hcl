# A hard one: the thin wire is one of two to the panel, and both loads of the selector behind it run only while that is thrown.

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

fuse "f" {
  kind = "class-t"
  rating = "300 A"
  voltage_rating = "58 V dc"
  interrupting = "20 kA"
  on = source.house
}

conductor "main" {
  from = fuse.f.load
  to = switch.s.c
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
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

bus "m" {
  rating = "200 A"
}

conductor "wa" {
  from = switch.s.a
  to = bus.m
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

conductor "wb" { # want warning `"wb" \(10 AWG\) carries up to 80 A, and can carry 55\.9 A where it runs\.`
  from = switch.s.b
  to = bus.m
  size = "10 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

conductor "c" {
  from = bus.m
  to = switch.t.c
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

switch "t" {
  terminals = ["c", "a", "b"]
  transition = "make-before-break"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "x" {
  from = switch.t.a
  to = load.x
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "x" {
  draw = "40 A"
  behavior = "constant-current"
}

conductor "y" {
  from = switch.t.b
  to = load.y
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "y" {
  draw = "40 A"
  behavior = "constant-current"
}
