# Gendered plugs of one shape: a panel and a battery outlet of like volts, and one wired plus for minus.

system "function" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "outlet" {
  from = source.house
  to   = connector.outlet.fixed
}

connector "outlet" { # want danger "\"outlet\" and \"turned\" fit each other"
  style   = "flat two-pin"
  key     = "rib"
  exposed = "free"
}

conductor "lamp" {
  from = connector.outlet.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

source "other" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
}

conductor "plus" {
  from     = source.other.pos
  to       = connector.turned.fixed.neg
  polarity = "positive"
}

conductor "minus" {
  from     = source.other.neg
  to       = connector.turned.fixed.pos
  polarity = "negative"
}

connector "turned" { # want danger "\"turned\" and \"outlet\" fit each other: the fixed half of \"outlet\", with 12 V of \"house\", then meets the free half of \"turned\", which is made for 12 V of \"other\", plus and minus changed over"
  style   = "flat two-pin"
  key     = "rib"
  exposed = "free"
}

conductor "turned_plus" {
  from     = connector.turned.free.neg
  to       = load.fan.pos
  polarity = "positive"
}

conductor "turned_minus" {
  from     = connector.turned.free.pos
  to       = load.fan.neg
  polarity = "negative"
}

load "fan" {
  draw = "2 A"
}

source "panel" {
  kind = "solar"
  vmp  = "14 V"
}

conductor "panel" {
  from = source.panel
  to   = connector.panel.fixed
}

connector "panel" { # want warning "the fixed half of \"panel\", with 14 V of \"panel\", then meets the free half of \"pump\", which is made for 12 V of \"house\""
  style   = "round"
  key     = "notch"
  exposed = "free"
}

conductor "tracker" {
  from = connector.panel.free
  to   = converter.tracker.in
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  output {
    voltage = "14.4 V"
  }
}

conductor "charge" {
  from = converter.tracker.out
  to   = source.house
}

conductor "pump_outlet" {
  from = source.house
  to   = connector.pump.fixed
}

connector "pump" { # want warning "\"pump\" and \"panel\" fit each other"
  style   = "round"
  key     = "none"
  exposed = "free"
}

conductor "pump" {
  from = connector.pump.free
  to   = load.pump
}

load "pump" {
  draw = "4 A"
}
