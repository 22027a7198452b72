# The live half has the sockets, what stays behind is dark, and a fixed dock never comes apart.

system "shrouded" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "outlet" {
  from = source.house
  to   = connector.outlet.fixed
}

connector "outlet" {
  exposed = "free"
}

conductor "lamp" {
  from = connector.outlet.free
  to   = load.lamp
}

load "lamp" {
  draw = "1 A"
}

conductor "dock" {
  from = source.house
  to   = connector.dock.fixed
}

connector "dock" {
  mated = "always"
}

conductor "dock_lamp" {
  from = connector.dock.free
  to   = load.dock_lamp
}

load "dock_lamp" {
  draw = "1 A"
}
