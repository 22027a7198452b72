# Two packs in series with a tap: the lower one gives what the tap takes as well.

system "t" {
}

source "upper" {
  label           = "Upper"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

source "lower" { # want notice "\"Lower\" is asked for up to 130 A"
  label           = "Lower"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "middle" {
  from     = source.upper.neg
  to       = source.lower.pos
  polarity = "positive"
  size     = "1/0 AWG"
  length   = "0.5 m"
}

conductor "top" {
  from     = source.upper.pos
  to       = load.heater.pos
  polarity = "positive"
  size     = "1/0 AWG"
  length   = "0.5 m"
}

conductor "heater_back" {
  from     = load.heater.neg
  to       = source.lower.neg
  polarity = "negative"
  size     = "1/0 AWG"
  length   = "0.5 m"
}

conductor "tap" {
  from     = source.lower.pos
  to       = load.tap.pos
  polarity = "positive"
  size     = "1/0 AWG"
  length   = "0.5 m"
}

conductor "tap_back" {
  from     = load.tap.neg
  to       = source.lower.neg
  polarity = "negative"
  size     = "1/0 AWG"
  length   = "0.5 m"
}

load "heater" {
  draw     = "80 A"
  behavior = "constant-current"
}

load "tap" {
  draw     = "50 A"
  behavior = "constant-current"
}
