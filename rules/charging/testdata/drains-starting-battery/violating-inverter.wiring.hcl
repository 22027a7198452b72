# An inverter on the starting battery runs the charger of the house battery.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"inverter\" goes on drinking from \"Starting battery\""
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

converter "inverter" {
  kind  = "inverter"
  rated = "500 W"
  output {
    voltage = "120 V ac"
  }
}

converter "charger" {
  kind = "charger"
  output {
    voltage     = "14.4 V"
    current_max = "10 A"
  }
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
  role      = "house"
}

conductor "w2" {
  from   = source.start
  to     = converter.inverter.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.inverter.out
  to     = converter.charger.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.charger.out
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}
