# Two large loads that an interlock keeps apart; a mode limits the third.

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

conductor "oven_1" {
  from   = source.pack
  to     = switch.oven.a
  size   = "1/0 AWG"
  length = "1 m"
}

switch "oven" {
  terminals  = ["a", "b"]
  rating     = "100 A"

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "oven_2" {
  from   = switch.oven.b
  to     = load.oven
  size   = "1/0 AWG"
  length = "1 m"
}

load "oven" {
  draw     = "70 A"
  behavior = "constant-current"
}

conductor "heater_1" {
  from   = source.pack
  to     = switch.heater.a
  size   = "1/0 AWG"
  length = "1 m"
}

switch "heater" {
  terminals  = ["a", "b"]
  rating     = "100 A"

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "heater_2" {
  from   = switch.heater.b
  to     = load.heater
  size   = "1/0 AWG"
  length = "1 m"
}

load "heater" {
  draw     = "70 A"
  behavior = "constant-current"
}

conductor "third" {
  from   = source.pack
  to     = load.third
  size   = "1/0 AWG"
  length = "1 m"
}

load "third" {
  draw     = "20 A"
  behavior = "constant-current"
}

interlock "one_of_two" {
  never = [{ switch.oven = "on", switch.heater = "on" }]
  by    = "hardware"
}
