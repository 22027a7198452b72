# The relay to the battery follows a pack that can be lifted out.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "first" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

source "pack" { # want "Lifting out \"pack\", which \"relay\" follows, leaves \"engine\""
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
  removable = true
}

switch "relay" {
  terminals = ["a", "b"]
  kind      = "relay"
  follows   = source.pack
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

load "lamp" {
  kind = "other"
  draw = "5 A"
}

conductor "w1" {
  from   = source.engine
  to     = switch.relay.a
  size   = "2 AWG"
  length = "1 m"
}

conductor "w2" {
  from   = switch.relay.b
  to     = source.first
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = source.pack
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
