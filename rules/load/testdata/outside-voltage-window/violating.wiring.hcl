# A fridge at the end of a thin lead: more than a tenth is lost, and it needs 10.4 V.

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
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "fridge" {
  from       = bus.panel
  to         = load.fridge
  size       = "16 AWG"
  length     = "9 m"
  insulation = "105 C"
}

load "fridge" { # want notice "\"Fridge\" gets no more than (9|10)\\.?\\d* V, and works from 10.4 V"
  label = "Fridge"
  kind = "motor"
  draw = "6 A"
  behavior = "constant-current"
  voltage_min = "10.4 V"
  voltage_max = "16 V"
}
