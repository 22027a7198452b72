# A switch takes the charger off the battery: both its terminals are fed, and neither feeds anything else.

system "t" {
  practice = ["general"]
}

source "start" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

converter "charge" {
  kind           = "dc-dc"
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
  }
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "charging" {
  terminals = ["charger", "battery"]

  position "off" {}
  position "on" { joins = [["charger", "battery"]] }
}

conductor "in" {
  from = source.start
  to   = converter.charge.in
  size = "8 AWG"
}

conductor "out" {
  from = converter.charge.out
  to   = switch.charging.charger
  size = "8 AWG"
}

conductor "battery" {
  from = switch.charging.battery
  to   = source.house
  size = "8 AWG"
}
