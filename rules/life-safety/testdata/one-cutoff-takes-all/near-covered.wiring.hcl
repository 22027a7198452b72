# The starting battery covers the lights through a one-way device.
system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from = source.house
  to   = bus.panel
  size = "10 AWG"
}

conductor "s" {
  from = source.start
  to   = converter.one_way.in
  size = "10 AWG"
}

converter "one_way" {
  kind = "diode"
}

conductor "t" {
  from = converter.one_way.out
  to   = bus.panel
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
