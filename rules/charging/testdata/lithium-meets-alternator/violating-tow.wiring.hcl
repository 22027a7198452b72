# The tow plug is a contact like any other.

system "t" {
  practice = ["general"]
}

source "pack" { # want danger "Lithium battery \"Pack\" meets the alternator \"Engine\" with nothing between that limits current. Up to .* flows"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  rated             = "120 A"
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

connector "tow" {
  label = "Tow plug"
  style = "seven"
  tow   = true
}

conductor "a" {
  from   = source.engine
  to     = source.truck
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.truck
  to     = connector.tow.fixed
  size   = "8 AWG"
  length = "1 m"
}

conductor "c" {
  from   = connector.tow.free
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
