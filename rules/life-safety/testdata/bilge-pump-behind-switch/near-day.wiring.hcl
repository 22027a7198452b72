system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
}

fuse "pump" {
  label  = "Pump fuse"
  kind   = "blade"
  rating = "5 A"
  on     = source.house
}

conductor "a" {
  from = fuse.pump.load
  to   = switch.float.feed
  size = "10 AWG"
}

switch "float" {
  label     = "Float"
  terminals = ["feed", "pump"]

  position "down" {}
  position "up" { joins = [["feed", "pump"]] }
}

conductor "b" {
  from = switch.float.pump
  to   = load.pump
  size = "10 AWG"
}

load "pump" {
  label       = "Pump"
  kind        = "bilge-pump"
  draw        = "2 A"
  own_battery = false
  max_fuse    = "5 A"
  control     = switch.float
  behavior    = "constant-current"

  hours_per_day = "5 h"
}
