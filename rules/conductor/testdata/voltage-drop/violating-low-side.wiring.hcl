# A hard one: two selectors in the negative, behind a disconnect of both poles: the drop is worst with both at their heavy
# load.

system "dunlin" {
}

source "house" {
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "400 Ah"
}

switch "d" {
  terminals = ["i", "o"]
  poles = 2
  position "off" {
  }
  position "on" {
    joins = [["i", "o"]]
  }
}

bus "m" {
}

conductor "main" {
  from = source.house
  to = switch.d.i
  size = "8 AWG"
  length = "1 m"
}

conductor "main2" { # want notice `Between "house" and the bus at the end of "main2" 0\.523 V is lost with everything on, 4\.`
  from = switch.d.o
  to = bus.m
  size = "8 AWG"
  length = "1 m"
}

switch "s0" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

switch "s1" {
  terminals = ["c", "a", "b"]
  transition = "break-before-make"
  position "p0" {
    joins = [["c", "a"]]
  }
  position "p1" {
    joins = [["c", "b"]]
  }
}

conductor "ns0" {
  from = bus.m.neg
  to = switch.s0.c.pos
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

load "s0a" {
  draw = "1 A"
  behavior = "constant-current"
}

load "s0b" { # want notice `Between "house" and "s0b" 1\.44 V is lost with everything on, 12 % of nominal; the limit i`
  draw = "40 A"
  behavior = "constant-current"
}

conductor "ps0a" {
  from = bus.m
  to = load.s0a
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "qs0a" {
  from = switch.s0.a.pos
  to = load.s0a.neg
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "ps0b" {
  from = bus.m
  to = load.s0b
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "qs0b" {
  from = switch.s0.b.pos
  to = load.s0b.neg
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "ns1" {
  from = bus.m.neg
  to = switch.s1.c.pos
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

load "s1a" {
  draw = "1 A"
  behavior = "constant-current"
}

load "s1b" { # want notice `Between "house" and "s1b" 1\.44 V is lost with everything on, 12 % of nominal; the limit i`
  draw = "40 A"
  behavior = "constant-current"
}

conductor "ps1a" {
  from = bus.m
  to = load.s1a
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "qs1a" {
  from = switch.s1.a.pos
  to = load.s1a.neg
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "ps1b" {
  from = bus.m
  to = load.s1b
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}

conductor "qs1b" {
  from = switch.s1.b.pos
  to = load.s1b.neg
  size = "8 AWG"
  length = "1 m"
  polarity = "positive"
}
