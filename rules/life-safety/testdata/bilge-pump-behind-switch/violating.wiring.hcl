system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "m" {
  from = source.house
  to   = switch.off.battery
  size = "10 AWG"
}

switch "off" {
  label     = "Main switch"
  kind      = "disconnect"
  terminals = ["battery", "panel"]

  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

conductor "p" {
  from = switch.off.panel
  to   = bus.panel
  size = "10 AWG"
}

bus "panel" {
}

fuse "pump" {
  label  = "Pump fuse"
  kind   = "blade"
  rating = "5 A"
  on     = bus.panel
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

load "pump" { # want warning "\"Pump\" has no power with \"Main switch\" at off: the boat fills"
  label       = "Pump"
  kind        = "bilge-pump"
  draw        = "2 A"
  own_battery = false
  max_fuse    = "5 A"
  control     = switch.float
}
