# Both batteries hang behind diodes, and both can be switched off.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "first" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

source "second" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

converter "one" {
  kind = "diode"
}

converter "two" {
  kind = "diode"
}

switch "s1" { # want "Throwing \"s1\" leaves \"engine\""
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

switch "s2" { # want "Throwing \"s2\" leaves \"engine\""
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

fuse "main" { # want "If \"main\" opens, \"engine\" runs on"
  kind   = "class-t"
  rating = "150 A"
}

conductor "w1" {
  from   = source.engine
  to     = fuse.main.line
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = fuse.main.load
  to     = converter.one.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = fuse.main.load
  to     = converter.two.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.one.out
  to     = switch.s1.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = switch.s1.b
  to     = source.first
  size   = "2 AWG"
  length = "1 m"
}

conductor "w6" {
  from   = converter.two.out
  to     = switch.s2.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w7" {
  from   = switch.s2.b
  to     = source.second
  size   = "2 AWG"
  length = "1 m"
}
