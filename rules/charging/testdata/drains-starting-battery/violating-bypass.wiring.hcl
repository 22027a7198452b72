# The isolator opens in time, but a switch lies across it; their negatives are one.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"fridge\" .*, with \"Alternator\" absent and \"bypass\" at on"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  label     = "Starting battery"
  role      = "starting"
}

conductor "w1" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

switch "isolator" {
  terminals = ["a", "b"]
  kind      = "isolator"
  cut_in    = "13.3 V"
  cut_out   = "12.9 V"
  position "open" {}
  position "closed" {
    joins = [["a", "b"]]
  }
}

switch "bypass" {
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
  to     = switch.isolator.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = switch.isolator.b
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = source.start
  to     = switch.bypass.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = switch.bypass.b
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w6" {
  from   = source.house
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
