# The slide on the panel lets one main close at a time; the disconnect that feeds the inverter is no part of it.
system "t" {
  practice = ["us-rv"]
}

source "shore" {
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

source "pack" {
  label     = "Battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

conductor "dc" {
  from = source.pack
  to   = switch.dc.battery
  size = "2/0 AWG"
}

switch "dc" {
  label     = "Battery disconnect"
  kind      = "disconnect"
  terminals = ["battery", "inverter"]

  position "off" {}
  position "on" { joins = [["battery", "inverter"]] }
}

conductor "dc_on" {
  from = switch.dc.inverter
  to   = converter.inverter.in
  size = "2/0 AWG"
}

converter "inverter" {
  label        = "Inverter"
  kind         = "inverter"
  rated        = "2000 W"
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

switch "shore_main" {
  label     = "Shore main"
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

switch "inverter_main" {
  label     = "Inverter main"
  terminals = ["supply", "panel"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["supply", "panel"]] }
}

interlock "slide" {
  never = [{ switch.shore_main = "on", switch.inverter_main = "on" }]
  by    = "hardware"
}

conductor "a" {
  from      = source.shore
  to        = switch.shore_main.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = switch.shore_main.panel
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "c" {
  from      = converter.inverter.out
  to        = switch.inverter_main.supply
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "d" {
  from      = switch.inverter_main.panel
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "panel" {
  label = "AC panel"
}

conductor "outlet" {
  from      = bus.panel
  to        = load.outlet
  size      = "14 AWG"
  grounding = "14 AWG"
}

load "outlet" {
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}
