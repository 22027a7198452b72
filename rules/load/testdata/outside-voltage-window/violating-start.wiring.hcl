# The pump runs well; while it starts, the radio on the same thin feeder drops out.

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
  size       = "10 AWG"
  length     = "6 m"
  insulation = "105 C"
}

conductor "pump" {
  from       = bus.panel
  to         = load.pump
  size       = "10 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "radio" {
  from       = bus.panel
  to         = load.radio
  size       = "14 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "pump" {
  label = "Pump"
  kind = "motor"
  draw = "6 A"
  surge = "30 A"
  surge_time = "1 s"
  behavior = "constant-current"
  voltage_min = "6 V"
  voltage_max = "16 V"
}

load "radio" { # want notice "\"Radio\" gets no more than [0-9.]* V while \"Pump\" starts, and works from 10.5 V"
  label = "Radio"
  kind = "electronics"
  draw = "2 A"
  voltage_min = "10.5 V"
  voltage_max = "16 V"
}
