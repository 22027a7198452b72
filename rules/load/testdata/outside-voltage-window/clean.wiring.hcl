# Short thick leads and wide windows.

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
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

conductor "spare" {
  from       = bus.panel
  to         = load.lamp
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "fridge" {
  label = "Fridge"
  kind = "motor"
  draw = "5 A"
  surge = "20 A"
  surge_time = "1 s"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

load "lamp" {
  label = "Lamp"
  kind = "light"
  draw = "1 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
