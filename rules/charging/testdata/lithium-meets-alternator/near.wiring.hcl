# The same selector as the violating one, break-before-make; and lead-acid may meet its alternator.

system "t" {
  practice = ["vehicle"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "second" {
  label     = "Second"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "truck" {
  label     = "Truck"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
  role      = "starting"
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  rated             = "120 A"
  regulated_voltage = "14.4 V"
}

conductor "s" {
  from   = source.engine
  to     = source.truck
  size   = "8 AWG"
  length = "1 m"
}

conductor "t" {
  from   = source.truck
  to     = source.second
  size   = "8 AWG"
  length = "1 m"
}

switch "pick" {
  label     = "Pick"
  terminals = ["pack", "truck", "house"]
  transition = "break-before-make"

  position "truck" {
    joins = [["truck", "house"]]
  }

  position "pack" {
    joins = [["pack", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.pick.pack
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.truck
  to     = switch.pick.truck
  size   = "8 AWG"
  length = "1 m"
}
