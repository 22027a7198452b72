# Half of what is drawn hangs behind a diode, on a wire drawn towards the battery.

system "t" {
}

source "pack" { # want notice "\"Pack\" is asked for up to 120 A"
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "oven" {
  from   = load.oven
  to     = source.pack
  size   = "1/0 AWG"
  length = "1 m"
}

load "oven" {
  draw     = "60 A"
  behavior = "constant-current"
}

conductor "in" {
  from   = converter.d.in
  to     = source.pack
  size   = "1/0 AWG"
  length = "1 m"
}

converter "d" {
  kind = "diode"
}

conductor "out" {
  from   = converter.d.out
  to     = load.heater
  size   = "1/0 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "60 A"
  behavior = "constant-current"
}
