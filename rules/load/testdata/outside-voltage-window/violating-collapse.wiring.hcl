# On this lead the transmitter has no operating point: what the sounder beside it gets is not known.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

bus "panel" {
  label = "Panel"
}

conductor "feed" {
  from       = source.house
  to         = bus.panel
  size       = "14 AWG"
  length     = "14 m"
  insulation = "105 C"
}

conductor "a" {
  from       = bus.panel
  to         = load.radio
  size       = "10 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "b" {
  from       = bus.panel
  to         = load.sounder
  size       = "14 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "radio" { # want notice "\"Transmitter\" gets no more than [56].*works from 10 V"
  label = "Transmitter"
  kind = "electronics"
  power = "200 W"
  rated_voltage = "12 V"
  voltage_min = "10 V"
  voltage_max = "16 V"
}

load "sounder" { # want not-proven "an operating point"
  label = "Sounder"
  kind = "motor"
  behavior = "constant-current"
  draw = "500 mA"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
