# A battery on each side of the disconnect, the second behind a plug.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "spare" {
  label     = "Spare"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

switch "main" { # want warning "has a battery on each side"
  label     = "Main"
  terminals = ["battery", "house"]
  kind      = "disconnect"

  position "off" {
  }

  position "on" {
    joins = [["battery", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.main.battery
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = switch.main.house
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "1 A"
}

connector "dock" {
  style = "grey"
}

conductor "c" {
  from   = load.lamp
  to     = connector.dock.fixed
  size   = "8 AWG"
  length = "1 m"
}

conductor "d" {
  from   = connector.dock.free
  to     = source.spare
  size   = "8 AWG"
  length = "1 m"
}
