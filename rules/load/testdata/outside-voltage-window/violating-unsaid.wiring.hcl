# An alarm without a window is never passed by what is usual; a wire without a length leaves the volts unknown.

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

conductor "a" {
  from       = bus.panel
  to         = load.alarm
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

conductor "b" {
  from = bus.panel
  to   = load.pump
  size = "10 AWG"
}

load "alarm" { # want not-proven "\"Alarm\" gets up to 12.8 V, and the most" not-proven caution "the least it works at is not written"
  label = "Alarm"
  kind = "alarm"
  draw = "100 mA"
}

load "pump" { # want not-proven "`length` of conductor.b is missing"
  label = "Pump"
  kind = "motor"
  draw = "2 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
