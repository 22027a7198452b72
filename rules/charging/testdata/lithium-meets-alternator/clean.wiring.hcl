# A current-limiting converter stands between the two.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
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

connector "tow" {
  label = "Tow plug"
  style = "seven"
  tow   = true
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  isolated       = false
  blocks_reverse = true
  limits_current = true

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

conductor "s" {
  from   = source.engine
  to     = source.truck
  size   = "8 AWG"
  length = "1 m"
}

conductor "a" {
  from   = source.truck
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "1 m"
}

conductor "c" {
  from   = connector.tow.free
  to     = converter.boost["in"]
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = converter.boost["out"]
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
