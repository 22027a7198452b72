# What the house battery feeds in one position, a converter on the starting battery feeds in the other.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"charger\" .*and \"choice\" at engine: 20 A"
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

converter "charger" {
  kind    = "dc-dc"
  trigger = "12 V"
  input {
    current_max = "20 A"
  }
  output {
    voltage     = "13.8 V"
    current_max = "20 A"
  }
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

switch "choice" {
  terminals = ["battery", "charger", "cabin"]
  position "battery" {
    joins = [["battery", "cabin"]]
  }
  position "engine" {
    joins = [["charger", "cabin"]]
  }
}

conductor "w2" {
  from   = source.start
  to     = converter.charger.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.charger.out
  to     = switch.choice.charger
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = source.house
  to     = switch.choice.battery
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = switch.choice.cabin
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
