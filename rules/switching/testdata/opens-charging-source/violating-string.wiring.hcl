# The lower battery of a string cuts off by itself; the string stays on the alternator otherwise.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "24 V"
  rated             = "80 A"
  regulated_voltage = "28.4 V"
}

source "top" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

source "bottom" { # want "If the BMS of \"bottom\" opens, \"engine\" runs on"
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "150 Ah"
  cold_charge_cutoff = true
}

fuse "main" {
  kind   = "class-t"
  rating = "100 A"
}

conductor "w1" {
  from     = source.engine.pos
  to       = fuse.main.line.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "w2" {
  from     = fuse.main.load.pos
  to       = source.top.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "w3" {
  from     = source.top.neg
  to       = source.bottom.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "w4" {
  from     = source.engine.neg
  to       = source.bottom.neg
  size     = "2 AWG"
  length   = "1 m"
  polarity = "negative"
}
