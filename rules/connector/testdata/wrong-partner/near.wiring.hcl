# One family and key, and yet they never meet, or do no harm.

system "near" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "bank" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

# Too far apart.
conductor "near_low" {
  from = source.house
  to   = connector.low.fixed
}

connector "low" {
  style = "genderless"
  key   = "grey"
}

conductor "near_high" {
  from = source.bank
  to   = connector.high.fixed
}

connector "high" {
  style      = "genderless"
  key        = "grey"
  apart_from = [connector.low]
}

# A shutter opens one only while the other is mated.
conductor "shutter_low" {
  from = source.house
  to   = connector.one.fixed
}

connector "one" {
  style = "blade"
  key   = "slot"
}

conductor "shutter_high" {
  from = source.bank
  to   = connector.other.fixed
}

connector "other" {
  style = "blade"
  key   = "slot"
}

interlock "shutter" {
  never = [{ connector.one = "unmated", connector.other = "unmated" }]
  by    = "hardware"
}

# Pins and sockets: both outlets have sockets, so the two outlets do not mate; both lamps have pins. Two
# batteries of like volts behind them.
source "second" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "lamp_outlet" {
  from = source.house
  to   = connector.lamp.fixed
}

connector "lamp" {
  style   = "flat"
  key     = "rib"
  exposed = "free"
}

conductor "lamp" {
  from = connector.lamp.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

conductor "fan_outlet" {
  from = source.second
  to   = connector.fan.fixed
}

connector "fan" {
  style   = "flat"
  key     = "rib"
  exposed = "free"
}

conductor "fan" {
  from = connector.fan.free
  to   = load.fan
}

load "fan" {
  draw = "1 A"
}

# Made fast for good.
conductor "fast" {
  from = source.bank
  to   = connector.fast.fixed
}

connector "fast" {
  style = "flat"
  key   = "rib"
  mated = "always"
}

# Packs of one kind change places.
source "a" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

conductor "a" {
  part_of = source.a
  from    = source.a
  to      = connector.a.free
}

connector "a" {
  style   = "dock"
  key     = "rail"
  follows = source.a
}

conductor "a_out" {
  from = connector.a.fixed
  to   = load.house
}

source "b" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "50 Ah"
  removable = true
}

conductor "b" {
  part_of = source.b
  from    = source.b
  to      = connector.b.free
}

connector "b" {
  style   = "dock"
  key     = "rail"
  follows = source.b
}

conductor "b_out" {
  from = connector.b.fixed
  to   = load.house
}

load "house" {
  draw = "3 A"
}
