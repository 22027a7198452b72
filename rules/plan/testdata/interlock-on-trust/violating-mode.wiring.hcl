# The alarm has power because nobody is meant to sleep aboard without the pack.
system "t" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

conductor "a" {
  from = source.pack
  to   = load.alarm
  size = "10 AWG"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  critical    = "life-safety"
  own_battery = false
}

mode "camping" { # want warning "Only trust in \"camping\" keeps away a danger: life-safety/alarm-can-be-switched-off of \"Gas alarm\""
  state    = { source.pack = "present" }
  occupied = true
  by       = "habit"
}
