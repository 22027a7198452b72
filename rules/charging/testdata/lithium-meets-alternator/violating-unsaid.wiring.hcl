# Whether the converter limits is not written.

system "t" {
  practice = ["general"]
}

source "pack" { # want not-proven warning "through \"Boost\", and the plan does not say that it limits current"
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

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  isolated       = false
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

conductor "a" {
  from   = source.truck
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
