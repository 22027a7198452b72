# Through a step-down: the pack at 48 V takes the lamps at 12 V along.
system "t" {
  practice = ["us-boat"]
}

source "house" { # want warning "If the BMS of \"House battery\" opens"
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.house
  to   = converter.down.in
  size = "10 AWG"
}

converter "down" {
  kind     = "dc-dc"
  isolated = true

  output {
    voltage = "13 V"
  }
}

conductor "b" {
  from = converter.down.out
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
