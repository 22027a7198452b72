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
  to   = fuse.main.line
  size = "10 AWG"
}

fuse "main" { # want notice "If \"main\" opens"
  kind   = "class-t"
  rating = "100 A"
}

conductor "b" {
  from = fuse.main.load
  to   = fuse.panel.line
  size = "10 AWG"
}

fuse "panel" { # want not-proven warning "reset of fuse.panel is not written"
  kind   = "breaker"
  rating = "50 A"
}

conductor "c" {
  from = fuse.panel.load
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
