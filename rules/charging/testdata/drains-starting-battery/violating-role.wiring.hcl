# The battery is the alternator's own, and whether it starts the engine is not written.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want not-proven "Whether \"Starting battery\" has to start the engine is not written"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  label     = "Starting battery"
}

conductor "w1" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

switch "link" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  role      = "house"
}

load "fridge" {
  kind = "other"
  draw = "5 A"
}

conductor "w2" {
  from   = source.start
  to     = switch.link.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = switch.link.b
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = source.house
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
