# With the battery switched off the charger alone feeds more than it can: that bus browns out, whatever the wire.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

switch "off" {
  label     = "Disconnect"
  kind      = "disconnect"
  terminals = ["battery", "panel"]
  on        = source.house

  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

bus "panel" {
  label = "Panel"
}

conductor "feed" {
  from   = switch.off.panel
  to     = bus.panel
  size   = "2 AWG"
  length = "1 m"
}

source "small" {
  label             = "Small supply"
  kind              = "supply"
  regulated_voltage = "13.8 V"
  rated             = "10 A"
}

conductor "small" {
  from   = source.small
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

conductor "lamp" {
  from   = bus.panel
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

load "lamp" {
  label       = "Lamps"
  kind        = "light"
  draw        = "14 A"
  behavior    = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

conductor "radio" {
  from   = bus.panel
  to     = load.radio
  size   = "14 AWG"
  length = "1 m"
}

load "radio" {
  label       = "Radio"
  kind        = "electronics"
  draw        = "1 A"
  critical    = "navigation"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
