# The door of the trailer opens only with the pack in its dock.
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
