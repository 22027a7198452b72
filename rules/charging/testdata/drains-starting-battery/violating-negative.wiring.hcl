# The two batteries are joined by a switch in the negative.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"fridge\" .*and \"link\" at on"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  label     = "Starting battery"
  role      = "starting"
}

conductor "w1" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  role      = "house"
}

load "fridge" {
  kind = "other"
  draw = "5 A"
}

switch "link" {
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "w2" {
  from     = source.start.pos
  to       = source.house.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "w3" {
  from     = source.start.neg
  to       = switch.link.a.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "negative"
}

conductor "w4" {
  from     = switch.link.b.pos
  to       = source.house.neg
  size     = "2 AWG"
  length   = "1 m"
  polarity = "negative"
}

conductor "w5" {
  from   = source.house
  to     = load.fridge
  size   = "2 AWG"
  length = "1 m"
}
