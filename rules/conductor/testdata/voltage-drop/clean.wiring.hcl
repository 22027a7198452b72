# As violating, with thicker wire.

system "wren" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "fan" {
  kind   = "terminal"
  rating = "10 A"
  on     = source.house
}

conductor "fan" {
  from   = fuse.fan.load
  to     = load.fan
  size   = "10 AWG"
  length = "20 m"
}

load "fan" {
  kind     = "motor"
  draw     = "5 A"
  behavior = "constant-current"
}

fuse "panel" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "panel" {
  from   = fuse.panel.load
  to     = bus.panel
  size   = "4 AWG"
  length = "3 m"
}

bus "panel" {
}

conductor "galley" {
  from   = bus.panel
  to     = load.galley
  size   = "10 AWG"
  length = "1 m"
}

load "galley" {
  kind     = "other"
  draw     = "20 A"
  behavior = "constant-current"
}
