# Nothing at all parts the house battery from the starting one.

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
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = source.house
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
