# Family, key or volts left out where it matters: one is asked for.

system "unsaid" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "lamp_outlet" {
  from = source.house
  to   = connector.lamp.fixed
}

connector "lamp" { # want warning not-proven "turns on `style` of connector.bank"
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

source "bank" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

conductor "bank" {
  from = source.bank
  to   = connector.bank.fixed
}

connector "bank" { # want warning not-proven "Whether \"bank\" and \"lamp\" fit each other, or agree, turns on `style` of connector.bank"
  exposed    = "free"
  apart_from = [connector.first, connector.second]
}

conductor "inverter" {
  from = connector.bank.free
  to   = converter.inverter.in
}

converter "inverter" {
  kind = "inverter"
}

# The two halves of one side may be pin and socket.
conductor "first" {
  from = source.house
  to   = connector.first.fixed
}

connector "first" { # want warning not-proven "turns on `exposed` of connector.first"
  style      = "round"
  key        = "notch"
  apart_from = [connector.lamp]
}

conductor "second" {
  from = source.bank
  to   = connector.second.fixed
}

connector "second" { # want warning not-proven "turns on `exposed` of connector.second|turns on `exposed` of connector.first"
  style = "round"
  key   = "notch"
}
