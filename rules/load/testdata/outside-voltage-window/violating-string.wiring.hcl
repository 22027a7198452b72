# Two blocks in series drawn as two: the string is what the pump at 24 V sees, and its lead is thin.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "low" {
  label     = "Lower block"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

source "high" {
  label     = "Upper block"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

conductor "link" {
  from     = source.low.pos
  to       = source.high.neg
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.2 m"
}

conductor "out" {
  from     = source.high.pos
  to       = load.pump.pos
  polarity = "positive"
  size     = "16 AWG"
  length   = "15 m"
}

conductor "home" {
  from     = load.pump.neg
  to       = source.low.neg
  polarity = "negative"
  size     = "16 AWG"
  length   = "15 m"
}

load "pump" { # want notice "\"Pump\" gets no more than (19|20)\\.?\\d* V, and works from 21 V"
  label = "Pump"
  kind = "motor"
  draw = "8 A"
  behavior = "constant-current"
  rated_voltage = "24 V"
  voltage_min = "21 V"
  voltage_max = "32 V"
}
