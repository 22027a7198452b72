system "gull" {
  title = "An alarm whose control switch opens nothing"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

fuse "tap" {
  kind   = "blade"
  rating = "3 A"
  on     = source.pack
}

switch "mute" {
  terminals = ["a", "b"]
  position "quiet" {
    joins = []
  }
}

conductor "alarm_feed" {
  from   = fuse.tap.load
  to     = load.co
  size   = "14 AWG"
  length = "3 m"
}

load "co" { # want danger "\"co\" goes dark with \"pack\" absent"
  kind        = "alarm"
  critical    = "life-safety"
  draw        = "0.1 A"
  own_battery = false
  control     = switch.mute
}
