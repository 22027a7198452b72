# One of two packs can be switched away: the other has all of it then.

system "t" {
}

source "a" { # want notice "\"Pack A\" is asked for up to 150 A"
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

conductor "b1" {
  from   = source.b
  to     = switch.b.a
  size   = "1/0 AWG"
  length = "0.5 m"
}

switch "b" {
  terminals  = ["a", "b"]
  rating     = "100 A"

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "b2" {
  from   = switch.b.b
  to     = bus.house
  size   = "1/0 AWG"
  length = "0.5 m"
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
