# Just what the pack gives: 60 A and 40 A. The spare battery is asked for nothing, so what it gives is not asked either.

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

source "spare" {
  label           = "Spare"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
}

conductor "a" {
  from   = source.pack
  to     = load.heater
  size   = "1/0 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.pack
  to     = load.oven
  size   = "1/0 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "60 A"
  behavior = "constant-current"
}

load "oven" {
  draw     = "40 A"
  behavior = "constant-current"
}
