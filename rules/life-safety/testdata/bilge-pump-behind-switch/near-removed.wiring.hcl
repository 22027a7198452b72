# The pack is at home, and no other battery is aboard: the boat is on its trailer.
system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true

  bms {
    warns_before_cutoff = false
  }
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
}
