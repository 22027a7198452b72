# Needed in a mode in which shore power holds the panel.
system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.house
  to   = bus.panel
  size = "10 AWG"
}

load "red" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
  needed_in = [mode.berthed]
}

load "green" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
  needed_in = [mode.berthed]
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

source "supply" {
  kind              = "supply"
  regulated_voltage = "13 V"
  rated             = "20 A"
}

conductor "s" {
  from = source.supply
  to   = bus.panel
  size = "10 AWG"
}

mode "berthed" {
  state = { source.supply = "present" }
}
