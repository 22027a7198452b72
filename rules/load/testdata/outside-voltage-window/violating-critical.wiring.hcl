# A sounder that a ship hears by drops out on a low battery when everything runs.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

bus "panel" {
  label = "Panel"
}

conductor "feed" {
  from       = source.house
  to         = bus.panel
  size       = "8 AWG"
  length     = "2 m"
  insulation = "105 C"
}

conductor "sounder" {
  from       = bus.panel
  to         = load.sounder
  size       = "14 AWG"
  length     = "2 m"
  insulation = "105 C"
}

conductor "heater" {
  from       = bus.panel
  to         = load.heater
  size       = "8 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "sounder" { # want warning "\"Sounder\" gets no more than 10\\.?\\d* V, and works from 11 V"
  label = "Sounder"
  kind = "electronics"
  draw = "1 A"
  critical = "navigation"
  voltage_min = "11 V"
  voltage_max = "16 V"
}

load "heater" {
  label = "Blower heater"
  kind = "heater"
  draw = "25 A"
  behavior = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
