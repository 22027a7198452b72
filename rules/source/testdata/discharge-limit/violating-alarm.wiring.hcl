# The alarm goes dark with the heater; one with a battery of its own would not. Running lights make it worse.

system "t" {
}

source "pack" { # want caution "\"Pack\" is asked for up to 121 A"
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

source "boat" { # want warning "\"Boat pack\" is asked for up to 121 A"
  label           = "Boat pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

source "own" { # want notice "\"Quiet pack\" is asked for up to 121 A"
  label           = "Quiet pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "pack_heat" {
  from   = source.pack
  to     = load.pack_heat
  size   = "1/0 AWG"
  length = "1 m"
}

conductor "pack_little" {
  from   = source.pack
  to     = load.pack_little
  size   = "1/0 AWG"
  length = "1 m"
}

load "pack_heat" {
  draw     = "120 A"
  behavior = "constant-current"
}

load "pack_little" {
  draw     = "1 A"
  behavior = "constant-current"
  critical = "life-safety"
}

conductor "boat_heat" {
  from   = source.boat
  to     = load.boat_heat
  size   = "1/0 AWG"
  length = "1 m"
}

conductor "boat_little" {
  from   = source.boat
  to     = load.boat_little
  size   = "1/0 AWG"
  length = "1 m"
}

load "boat_heat" {
  draw     = "120 A"
  behavior = "constant-current"
}

load "boat_little" {
  draw     = "1 A"
  behavior = "constant-current"
  critical = "navigation"
}

conductor "own_heat" {
  from   = source.own
  to     = load.own_heat
  size   = "1/0 AWG"
  length = "1 m"
}

conductor "own_little" {
  from   = source.own
  to     = load.own_little
  size   = "1/0 AWG"
  length = "1 m"
}

load "own_heat" {
  draw     = "120 A"
  behavior = "constant-current"
}

load "own_little" {
  draw     = "1 A"
  behavior = "constant-current"
  critical = "life-safety"
  own_battery = true
}
