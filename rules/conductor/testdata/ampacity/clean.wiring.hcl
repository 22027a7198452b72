# 10 AWG, 105 C: 60 A x 0.931. The lamp without a draw is behind a device of less than its wire takes.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "heater" {
  kind   = "blade"
  rating = "40 A"
  on     = source.house
}

conductor "heater" {
  from       = fuse.heater.load
  to         = load.heater
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "heater" {
  kind     = "heater"
  draw     = "25 A"
  behavior = "constant-current"
}

fuse "lamp" {
  kind   = "blade"
  rating = "5 A"
  on     = source.house
}

conductor "lamp" {
  from   = fuse.lamp.load
  to     = load.lamp
  size   = "16 AWG"
  length = "2 m"
}

load "lamp" {
  kind = "light"
}
