# Two outlets of one bus, and a key of its own for the panel.

system "keyed" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "first" {
  from = source.house
  to   = connector.first.fixed
}

conductor "second" {
  from = source.house
  to   = connector.second.fixed
}

connector "first" {
  style = "genderless"
  key   = "red"
}

connector "second" {
  style = "genderless"
  key   = "red"
}

conductor "lamp" {
  from = connector.first.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

conductor "fan" {
  from = connector.second.free
  to   = load.fan
}

load "fan" {
  draw = "1 A"
}

source "panel" {
  kind = "solar"
  vmp  = "37 V"
}

conductor "panel" {
  from = source.panel
  to   = connector.panel.free
}

connector "panel" {
  style = "genderless"
  key   = "yellow"
}

conductor "tracker" {
  from = connector.panel.fixed
  to   = converter.tracker.in
}

converter "tracker" {
  kind = "mppt"
}
