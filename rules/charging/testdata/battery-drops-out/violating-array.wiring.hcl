# An array with no controller: only the battery holds it.
system "teal" {}

source "roof" { # want warning "With \"Roof\" present and \"Disconnect\" at off, \"Roof\" runs and no battery is across it. \"Gas alarm\" sees up to 22 V"
  label   = "Roof"
  kind    = "solar"
  voc     = "22 V"
  isc     = "6 A"
  coldest = "25 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "disconnect" {
  label     = "Disconnect"
  kind      = "disconnect"
  terminals = ["battery", "bus"]

  position "off" {}
  position "on" { joins = [["battery", "bus"]] }
}

bus "house" {}

conductor "roof" {
  from = source.roof
  to   = bus.house
  size = "8 AWG"
}

conductor "battery" {
  from = source.house
  to   = switch.disconnect.battery
  size = "8 AWG"
}

conductor "feed" {
  from = switch.disconnect.bus
  to   = bus.house
  size = "8 AWG"
}

conductor "alarm" {
  from = bus.house
  to   = load.alarm
  size = "8 AWG"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}
