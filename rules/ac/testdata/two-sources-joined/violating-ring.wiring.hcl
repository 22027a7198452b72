# The generator and the inverter share a bar; the charger on that bar keeps the battery, so the inverter runs
# whenever the generator does.
system "t" {
  practice = ["us-rv"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
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

converter "inverter" { # want danger "Inverter\" and \"Generator\" meet"
  label        = "Inverter"
  kind         = "inverter"
  rated        = "2000 W"
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

conductor "g" {
  from      = source.generator
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "inv" {
  from      = converter.inverter.out
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

conductor "ch" {
  from      = bus.panel
  to        = converter.charger.in
  size      = "10 AWG"
  grounding = "10 AWG"
}

converter "charger" {
  kind = "charger"

  output {
    voltage = "14.4 V"
  }
}

conductor "charge" {
  from = converter.charger.out
  to   = source.pack
  size = "6 AWG"
}
