# The relay follows the engine.

system "t" {
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "e" {
  from   = source.alternator
  to     = source.start
  size   = "10 AWG"
  length = "2 m"
}

conductor "c" {
  from   = source.start
  to     = switch.combiner.engine
  size   = "10 AWG"
  length = "2 m"
}

switch "combiner" {
  label     = "Combiner"
  kind      = "relay"
  terminals = ["engine", "house"]
  follows   = source.alternator

  position "open" {}
  position "closed" { joins = [["engine", "house"]] }
}

conductor "h" {
  from   = switch.combiner.house
  to     = source.house
  size   = "10 AWG"
  length = "2 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "l" {
  from   = source.house
  to     = load.fridge
  size   = "10 AWG"
  length = "2 m"
}

load "fridge" {
  label = "Fridge"
  kind  = "other"
  draw  = "5 A"
}
