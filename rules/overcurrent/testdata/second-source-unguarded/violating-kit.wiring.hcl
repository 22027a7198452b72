# The thin lead is inside a kit, the battery with its device outside.

system "kits" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "pack" {
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

conductor "in" {
  from   = fuse.pack.load
  to     = use.sun.bus.battery
  size   = "6 AWG"
  length = "1 m"
}

source "panel" {
  kind = "solar"
  voc  = "40 V"
  isc  = "9 A"
}

conductor "roof" {
  from   = source.panel
  to     = use.sun.bus.panel
  size   = "8 AWG"
  length = "4 m"
}

use "sun" {
  kit = "./controller.wiring.hcl"
}
