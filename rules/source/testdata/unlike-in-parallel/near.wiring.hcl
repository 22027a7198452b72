# Two of a kind may be joined; a series string is no parallel; a thin long lead is not stiff.

system "t" {
  practice = ["general"]
}

source "left" {
  label     = "Left"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "right" {
  label     = "Right"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "far" {
  label     = "Far"
  kind      = "battery"
  chemistry = "gel"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "low" {
  label     = "Low"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "6 V"
  capacity  = "100 Ah"
}

source "high" {
  label     = "High"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "6 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from   = source.left
  to     = source.right
  size   = "8 AWG"
  length = "1 m"
}

conductor "link" {
  polarity = "positive"
  from     = source.low.pos
  to       = source.high.neg
  size     = "4 AWG"
  length   = "0.3 m"
}

conductor "d" {
  from   = source.far
  to     = load.lamp
  size   = "18 AWG"
  length = "12 m"
}

load "lamp" {
  draw = "1 A"
}

# Unlike, and joined through a quarter of an ohm of thin wire.

source "meter" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "2 Ah"
}

conductor "meter" {
  from   = source.left
  to     = source.meter
  size   = "18 AWG"
  length = "6 m"
}
