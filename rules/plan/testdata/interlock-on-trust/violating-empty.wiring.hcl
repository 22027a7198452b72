# Stored without the pack: that nobody is aboard then is not written to be more than a habit.
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

mode "camping" {
  state = { source.pack = "present" }
  by    = "hardware"
}

mode "stored" { # want not-proven warning "Without \"stored\" there is a danger"
  state    = { source.pack = "absent" }
  occupied = false
}
