# One life-safety load, and a lamp that nothing depends on.
system "t" {
  practice = ["us-boat"]
}

source "house" { # want warning "opens, \"alarm\" goes dark"
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.house
  to   = bus.panel
  size = "10 AWG"
}

load "alarm" {
  kind     = "alarm"
  draw     = "1 A"
  critical = "life-safety"

  own_battery = false
}

load "lamp" {
  kind     = "light"
  draw     = "1 A"
  critical = "none"
}

conductor "r" {
  from = bus.panel
  to   = load.alarm
  size = "10 AWG"
}

conductor "g" {
  from = bus.panel
  to   = load.lamp
  size = "10 AWG"
}

bus "panel" {
}
