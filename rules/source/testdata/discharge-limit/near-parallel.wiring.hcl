# Two packs side by side on leads of one length: each has half of 150 A.

system "t" {
}

source "a" {
  label           = "Pack A"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

source "b" {
  label           = "Pack B"
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
  length = "1 m"
}

conductor "b" {
  from   = source.b
  to     = bus.house
  size   = "1/0 AWG"
  length = "1 m"
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
