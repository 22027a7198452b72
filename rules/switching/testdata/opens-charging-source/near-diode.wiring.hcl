# One of the batteries behind the diodes stays.

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

switch "s2" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "w1" {
  from   = source.engine
  to     = converter.one.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = source.engine
  to     = converter.two.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.one.out
  to     = source.first
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.two.out
  to     = switch.s2.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = switch.s2.b
  to     = source.second
  size   = "2 AWG"
  length = "1 m"
}
