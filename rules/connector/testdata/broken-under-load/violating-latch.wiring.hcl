# A latch that holds the plug in one position of the knob only: in the other it comes out under load.

system "latch" {
}

source "pack" {
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
  removable       = true
}

conductor "pack" {
  part_of = source.pack
  from    = source.pack
  to      = connector.dock.free
}

connector "dock" { # want caution "^\"Dock\" can be pulled apart while one contact carries up to 20 A"
  label      = "Dock"
  follows    = source.pack
  load_break = false
}

conductor "dock" {
  from = connector.dock.fixed
  to   = switch.knob.pack
}

switch "knob" {
  terminals  = ["pack", "house", "aux"]
  transition = "break-before-make"
  position "house" { joins = [["pack", "house"]] }
  position "off" {}
  position "aux" { joins = [["pack", "aux"]] }
}

conductor "house" {
  from = switch.knob.house
  to   = load.house
}

load "house" {
  draw     = "30 A"
  behavior = "constant-current"
}

conductor "aux" {
  from = switch.knob.aux
  to   = load.aux
}

load "aux" {
  draw     = "20 A"
  behavior = "constant-current"
}

interlock "bar" {
  never = [{ switch.knob = "house", source.pack = "absent" }]
  by    = "hardware"
}

# A return that is the only way home is broken like a feed; the plus goes another way.
source "house" {
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "plus" {
  from     = source.house.pos
  to       = load.winch.pos
  polarity = "positive"
}

conductor "minus" {
  from     = source.house.neg
  to       = connector.minus.fixed.neg
  polarity = "negative"
}

connector "minus" { # want caution "\"minus\" can be pulled apart while one contact carries up to 40 A"
  load_break = false
}

conductor "winch" {
  from     = connector.minus.free.neg
  to       = load.winch.neg
  polarity = "negative"
}

load "winch" {
  draw     = "40 A"
  behavior = "constant-current"
}
