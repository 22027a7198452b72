system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from = source.house
  to   = connector.dock.free
  size = "10 AWG"
}

connector "dock" { # want warning "If \"dock\" is pulled"
  style = "dock"
}

conductor "c" {
  from = connector.dock.fixed
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
