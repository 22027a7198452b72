# A dip of half a second while the pump starts: lamps are not asked.

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

conductor "lamp" {
  from       = bus.panel
  to         = load.lamp
  size       = "14 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "pump" {
  label = "Pump"
  kind = "motor"
  draw = "6 A"
  surge = "30 A"
  surge_time = "500 ms"
  behavior = "constant-current"
  voltage_min = "6 V"
  voltage_max = "16 V"
}

load "lamp" {
  label = "Lamp"
  kind = "light"
  draw = "1 A"
  voltage_min = "10.5 V"
  voltage_max = "16 V"
}
