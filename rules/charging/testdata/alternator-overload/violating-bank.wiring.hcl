# Lead-acid accepts a quarter of its capacity: 4 x 100 Ah take 100 A.

system "t" {
  practice = ["general"]
}

source "engine" { # want warning "charges \"House\""
  label             = "Engine"
  kind              = "alternator"
  rated             = "60 A"
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

source "house" {
  label     = "House"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
  parallel  = 4
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
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}
