# A diode lets the starting battery help the house out.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"fridge\" goes on drinking from \"Starting battery\", with \"Alternator\" absent: .*A"
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

converter "diode" {
  kind = "diode"
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
  role      = "house"
}

load "fridge" {
  kind = "other"
  draw = "5 A"
}

switch "main" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "w2" {
  from   = source.start
  to     = converter.diode.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.diode.out
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = switch.main.a
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = switch.main.b
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
