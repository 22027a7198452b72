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
  to   = switch.relay.battery
  size = "10 AWG"
}

switch "relay" { # want warning "If \"relay\" opens"
  kind      = "relay"
  terminals = ["battery", "panel"]
}

conductor "c" {
  from = switch.relay.panel
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
