# Everything within its rating; an alternating-current figure is good enough for a 12 V battery, and so is a
# device for a load without a draw.

system "knot" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

conductor "main" {
  from   = fuse.main.load
  to     = switch.main.supply
  size   = "4 AWG"
  length = "1 m"
}

switch "main" {
  terminals      = ["supply", "use"]
  rating         = "60 A"
  voltage_rating = "250 V ac"
  position "off" {}
  position "on" {
    joins = [["supply", "use"]]
  }
}

conductor "feed" {
  from   = switch.main.use
  to     = bus.panel
  size   = "4 AWG"
  length = "1 m"
}

bus "panel" {
  rating = "100 A"
}

conductor "unknown" {
  from   = bus.panel
  to     = load.unknown
  size   = "8 AWG"
  length = "1 m"
}

load "unknown" {
  kind = "other"
}
