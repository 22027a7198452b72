# A starting battery is made for its alternator; a house battery on the same wires is not, and what
# the last one is for is not written.

system "t" {
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "start" {
  label        = "Start"
  kind         = "battery"
  chemistry    = "flooded"
  voltage      = "12 V"
  capacity     = "80 Ah"
  charge_limit = "16 A"
  role         = "starting"
}

source "house" { # want caution "\"Engine\" pushes up to [0-9.]+ A into \"House\", and it takes 25 A"
  label        = "House"
  kind         = "battery"
  chemistry    = "flooded"
  voltage      = "12 V"
  capacity     = "100 Ah"
  charge_limit = "25 A"
  role         = "house"
}

conductor "a" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

switch "relay" {
  kind      = "relay"
  follows   = source.engine
  terminals = ["start", "house"]
  rating    = "100 A"

  position "open" {}
  position "closed" { joins = [["start", "house"]] }
}

conductor "b" {
  from   = source.start
  to     = switch.relay.start
  size   = "2 AWG"
  length = "1 m"
}

conductor "c" {
  from   = switch.relay.house
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

source "second" {
  label             = "Engine"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "what" { # want not-proven "what this one is for is not written"
  label        = "What"
  kind         = "battery"
  chemistry    = "flooded"
  voltage      = "12 V"
  capacity     = "100 Ah"
  charge_limit = "25 A"
}

conductor "d" {
  from   = source.second
  to     = source.what
  size   = "2 AWG"
  length = "1 m"
}
