# The disconnect darkens the alarm, but it can be thrown in storage only, where nobody is aboard.

system "snipe" {
}

source "battery" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "disconnect" {
  terminals       = ["battery", "house"]
  reachable_while = [mode.storage]
  position "off" {
  }
  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "one" {
  from   = source.battery
  to     = switch.disconnect.battery
  size   = "10 AWG"
  length = "1 m"
}

conductor "two" {
  from   = switch.disconnect.house
  to     = load.alarm
  size   = "16 AWG"
  length = "1 m"
}

load "alarm" {
  kind        = "alarm"
  draw        = "100 mA"
  critical    = "life-safety"
  own_battery = false
}

mode "camping" {
  state = { switch.disconnect = "on" }
}

mode "storage" {
  state    = { switch.disconnect = "off" }
  occupied = false
}
