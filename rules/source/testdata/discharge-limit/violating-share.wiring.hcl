# Side by side, but one on a long thin lead: the near one has most of it.

system "t" {
}

source "a" { # want notice "\"Near\" is asked for up to 132 A .*, and gives 100 A"
  label           = "Near"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

source "b" {
  label           = "Far"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

bus "house" {
}

conductor "a" {
  from   = source.a
  to     = bus.house
  size   = "1/0 AWG"
  length = "0.3 m"
}

conductor "b" {
  from   = source.b
  to     = bus.house
  size   = "8 AWG"
  length = "6 m"
}

conductor "feed" {
  from   = bus.house
  to     = load.heater
  size   = "1/0 AWG"
  length = "0.5 m"
}

load "heater" {
  draw     = "150 A"
  behavior = "constant-current"
}
