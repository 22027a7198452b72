# Lamps alone, and a plug rated to be pulled.

system "calm" {
}

source "house" {
  kind            = "battery"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "lamps" {
  from = source.house
  to   = connector.lamps.fixed
}

connector "lamps" {
  load_break = false
}

conductor "lamp" {
  from = connector.lamps.free
  to   = load.lamp
}

load "lamp" {
  draw = "5 A"
}

conductor "rated" {
  from = source.house
  to   = connector.rated.fixed
}

connector "rated" {
  load_break = true
}

conductor "heater" {
  from = connector.rated.free
  to   = load.heater
}

load "heater" {
  draw = "30 A"
}
