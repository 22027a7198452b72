# Its own battery is its own, behind a fuse too; a second one of 100 Ah accepts 25 A, under half of 60 A.

system "t" {
  practice = ["general"]
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  rated             = "60 A"
  regulated_voltage = "14.4 V"
}

fuse "main" {
  kind   = "anl"
  rating = "100 A"
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
  to     = fuse.main.line
  size   = "8 AWG"
  length = "1 m"
}

conductor "a2" {
  from   = fuse.main.load
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
