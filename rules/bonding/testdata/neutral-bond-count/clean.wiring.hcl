system "t" {
  practice = ["us-rv"]
}

source "shore" {
  label        = "Post"
  kind         = "shore"
  voltage      = "120 V ac"
  neutral_bond = "bonded"
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
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

connector "shore" {
  label = "Shore cord"
  style = "30 A inlet"
}

conductor "shore_cord" {
  from      = source.shore
  to        = connector.shore.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "shore_lead" {
  from      = connector.shore.fixed
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
