# As the violating one, with a converter that blocks.

system "wheatear" {
}

source "engine" {
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

connector "tow" {
  tow     = true
  exposed = "free"
}

conductor "vehicle" {
  from   = source.engine
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "5 m"
}

conductor "trailer" {
  from   = connector.tow.free
  to     = converter.boost.in
  size   = "8 AWG"
  length = "4 m"
}

converter "boost" {
  kind           = "dc-dc"
  blocks_reverse = true
}

conductor "charge" {
  from   = converter.boost.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}
