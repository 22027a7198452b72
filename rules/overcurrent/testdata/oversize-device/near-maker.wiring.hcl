# A radio behind a device of the size that its maker allows, after a larger one; a lamp behind a supply that gives no more
# than its maker allows, whatever the device; a bilge pump, which another rule asks of.

system "maker" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "anl"
  rating = "40 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "6 AWG"
  length = "2 m"
}

bus "panel" {}

fuse "radio" {
  kind   = "blade"
  rating = "10 A"
  on     = bus.panel
}

conductor "to_radio" {
  from   = fuse.radio.load
  to     = load.radio
  size   = "14 AWG"
  length = "1 m"
}

load "radio" {
  draw     = "5 A"
  max_fuse = "10 A"
}

conductor "to_pump" {
  from   = bus.panel
  to     = load.pump
  size   = "8 AWG"
  length = "1 m"
}

load "pump" {
  kind     = "bilge-pump"
  draw     = "3 A"
  max_fuse = "5 A"
}

source "mains_supply" {
  kind    = "supply"
  voltage = "12 V"
  rated   = "60 W"
}

fuse "supply" {
  kind   = "blade"
  rating = "15 A"
  on     = source.mains_supply
}

conductor "to_lamp" {
  from   = fuse.supply.load
  to     = load.lamp
  size   = "12 AWG"
  length = "1 m"
}

load "lamp" {
  draw     = "3 A"
  max_fuse = "7.5 A"
}
