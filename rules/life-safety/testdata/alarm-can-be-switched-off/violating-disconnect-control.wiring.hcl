system "gull" {
  title = "A disconnect named as the alarm's control"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  }

fuse "tap" {
  kind   = "blade"
  rating = "3 A"
  on     = source.pack
}

switch "main" {
  kind = "disconnect"
  terminals = ["a", "b"]
  position "off" {
    joins = []
  }
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "alarm_feed" {
  from   = fuse.tap.load
  to     = switch.main.a
  size   = "14 AWG"
  length = "3 m"
}

conductor "behind" {
  from   = switch.main.b
  to     = load.co
  size   = "14 AWG"
  length = "1 m"
}

load "co" { # want danger "\"co\" goes dark with \"main\" at off"
  kind        = "alarm"
  critical    = "life-safety"
  draw        = "0.1 A"
  own_battery = false
  control     = switch.main
}
