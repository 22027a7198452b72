# No rating: not proven.

system "t" {
  practice = ["general"]
}

source "engine" { # want not-proven warning "how hard that works it is not known: `rated` of source.engine is missing"
  label             = "Engine"
  kind              = "alternator"
  regulated_voltage = "14.4 V"
}

source "truck" {
  label     = "Truck"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
  role      = "starting"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "relay" {
  label     = "Relay"
  terminals = ["start", "house"]
  kind      = "relay"
  follows   = source.engine

  position "released" {
  }

  position "pulled" {
    joins = [["start", "house"]]
  }
}

conductor "a" {
  from   = source.engine
  to     = source.truck
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.truck
  to     = switch.relay.start
  size   = "8 AWG"
  length = "1 m"
}

conductor "c" {
  from   = switch.relay.house
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
