# Two batteries on each other: if the lower one opens, the string is gone.
system "t" {
  practice = ["us-boat"]
}

source "top" {
  label     = "Top"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "low" { # want warning "If the BMS of \"Low\" opens"
  label     = "Low"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.top.pos
  to   = bus.panel.pos
  polarity = "positive"
  size = "10 AWG"
}

conductor "b" {
  from = source.top.neg
  to   = source.low.pos
  polarity = "positive"
  size = "10 AWG"
}

conductor "c" {
  from = source.low.neg
  to   = bus.panel.neg
  polarity = "negative"
  size = "10 AWG"
}

load "red" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
}

load "green" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
}

conductor "r" {
  from = bus.panel
  to   = load.red
  size = "10 AWG"
}

conductor "g" {
  from = bus.panel
  to   = load.green
  size = "10 AWG"
}

bus "panel" {
}
