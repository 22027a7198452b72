# The pack is asked for more than it gives, but its main device lets only 90 A of that pass for long.

system "t" {
}

source "pack" {
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

fuse "main" {
  kind   = "class-t"
  rating = "90 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.house
  size   = "1/0 AWG"
  length = "1 m"
}

bus "house" {
}

conductor "oven" {
  from   = bus.house
  to     = load.oven
  size   = "1/0 AWG"
  length = "1 m"
}

load "oven" {
  draw     = "60 A"
  behavior = "constant-current"
}

conductor "heater" {
  from   = bus.house
  to     = load.heater
  size   = "1/0 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "60 A"
  behavior = "constant-current"
}
