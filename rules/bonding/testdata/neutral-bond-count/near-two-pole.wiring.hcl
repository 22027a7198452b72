# Both bond, and two poles are switched: never both at once.
system "t" {
  practice = ["us-rv"]
}

source "battery" {
  label     = "Battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

conductor "dc" {
  from = source.battery
  to   = converter.inverter.in
  size = "2/0 AWG"
}

converter "inverter" {
  label        = "Inverter"
  kind         = "inverter"
  neutral_bond = "bonded"

  output {
    voltage = "120 V ac"
  }
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
}

connector "generator" {
  label = "Generator cord"
  style = "30 A inlet"
}

conductor "generator_cord" {
  from      = source.generator
  to        = connector.generator.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "generator_lead" {
  from      = connector.generator.fixed
  to        = bus.inlet
  size      = "10 AWG"
  grounding = "10 AWG"
}

switch "transfer" {
  label      = "Transfer"
  kind       = "transfer"
  terminals  = ["inverter", "inlet", "house"]
  transition = "break-before-make"
  poles      = 2

  position "inverter" { joins = [["inverter", "house"]] }
  position "inlet" { joins = [["inlet", "house"]] }
}

conductor "inv" {
  from      = converter.inverter.out
  to        = switch.transfer.inverter
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "inlet" {
  from      = bus.inlet
  to        = switch.transfer.inlet
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "house" {
  from      = switch.transfer.house
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "inlet" {
  label = "Inlet"
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
