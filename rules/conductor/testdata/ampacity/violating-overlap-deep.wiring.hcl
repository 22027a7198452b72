# A hard one: while the selector is thrown both its sides are fed, and the selectors on either stand at their heavy load.

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

conductor "main" { # want warning `"main" \(10 AWG\) carries up to 70 A, and can carry 55\.9 A where it runs\.`
  from = fuse.f.load
  to = switch.s.c
  size = "10 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

switch "s" {
  terminals = ["c", "a", "b"]
  transition = "make-before-break"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "a" {
  from = switch.s.a
  to = load.l
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "l" {
  draw = "20 A"
  behavior = "constant-current"
}

conductor "b0" {
  from = switch.s.b
  to = switch.t0.c
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

switch "t0" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "b0a" {
  from = switch.t0.a
  to = load.x0
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "x0" {
  draw = "1 A"
  behavior = "constant-current"
  critical = "navigation"
}

conductor "b0b" {
  from = switch.t0.b
  to = load.y0
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "y0" {
  draw = "25 A"
  behavior = "constant-current"
  critical = "navigation"
}

conductor "b1" {
  from = switch.s.b
  to = switch.t1.c
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

switch "t1" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "b1a" {
  from = switch.t1.a
  to = load.x1
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "x1" {
  draw = "1 A"
  behavior = "constant-current"
  critical = "navigation"
}

conductor "b1b" {
  from = switch.t1.b
  to = load.y1
  size = "2 AWG"
  length = "0.5 m"
  insulation = "105 C"
}

load "y1" {
  draw = "25 A"
  behavior = "constant-current"
  critical = "navigation"
}
