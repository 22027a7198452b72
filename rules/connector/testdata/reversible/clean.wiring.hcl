# A keyed plug, and a pack that lifts out with all its wires.

system "keyed" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

fuse "pack" {
  part_of = source.pack
  kind    = "terminal"
  rating  = "30 A"
  on      = source.pack
}

conductor "pack" {
  part_of = source.pack
  from    = fuse.pack.load
  to      = connector.dock.free
}

connector "dock" {
  follows = source.pack
  key     = "two pins of unlike width"
}

conductor "lamp" {
  from = connector.dock.fixed
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}
