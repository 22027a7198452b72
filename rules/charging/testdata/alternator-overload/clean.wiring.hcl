# One limiting converter under half the rating.

system "t" {
  practice = ["general"]
}

source "engine" {
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

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from   = source.engine
  to     = source.truck
  size   = "8 AWG"
  length = "1 m"
}

converter "one" {
  kind           = "dc-dc"
  limits_current = true
  blocks_reverse = true
  efficiency     = "90 %"

  output {
    voltage     = "14.4 V"
    current_max = "12 A"
  }
}

conductor "b" {
  from   = source.truck
  to     = converter.one["in"]
  size   = "8 AWG"
  length = "1 m"
}

conductor "d" {
  from   = converter.one["out"]
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
