# A hard one: a ring of two batteries that takes both switches to close, one on either side.

system "dunlin" {}
source "a" { # want danger `"a" and "b" are joined head to tail in a ring with no load between them, as if one were th`
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}

source "b" { # want danger `"b" and "a" are joined head to tail in a ring with no load between them, as if one were th`
  kind = "battery"
  chemistry = "agm"
  voltage = "12 V"
  capacity = "100 Ah"
}

switch "x" {
  terminals = ["a","b"]
  position "off" {}
  position "on" {
    joins = [["a","b"]]
  }
}

switch "y" {
  terminals = ["a","b"]
  position "off" {}
  position "on" {
    joins = [["a","b"]]
  }
}

load "l" {
  draw = "5 A"
}

conductor "ll" {
  from = source.a
  to = load.l
  size = "2 AWG"
  length = "1 m"
}

conductor "p1" {
  from = source.a.pos
  to = switch.x.a.pos
  polarity = "positive"
  size = "2 AWG"
  length = "1 m"
}

conductor "p2" {
  from = switch.x.b.pos
  to = source.b.neg
  polarity = "positive"
  size = "2 AWG"
  length = "1 m"
}

conductor "p3" {
  from = source.b.pos
  to = switch.y.a.pos
  polarity = "positive"
  size = "2 AWG"
  length = "1 m"
}

conductor "p4" {
  from = switch.y.b.pos
  to = source.a.neg
  polarity = "positive"
  size = "2 AWG"
  length = "1 m"
}
