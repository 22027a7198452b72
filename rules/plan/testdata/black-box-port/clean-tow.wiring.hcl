system "t" {
}

connector "tow" {
  label = "Tow plug"
  style = "seven pins"
  tow   = true
}

load "lamp" {
  kind = "light"
  draw = "1 A"
}

conductor "a" {
  from = connector.tow.free
  to   = load.lamp
  size = "10 AWG"
}

source "vehicle" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "80 Ah"
}

conductor "b" {
  from = source.vehicle
  to   = connector.tow.fixed
  size = "10 AWG"
}
