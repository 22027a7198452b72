# The battery switch gives power to one inverter or to the other: each bonds while it runs, and they never run together.
system "t" {
  practice = ["us-rv"]
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
  label      = "Battery switch"
  kind       = "manual"
  transition = "break-before-make"
  terminals  = ["battery", "left", "right"]

  position "left" { joins = [["battery", "left"]] }
  position "off" {}
  position "right" { joins = [["battery", "right"]] }
}

conductor "dc_left" {
  from = switch.dc.left
  to   = converter.left.in
  size = "2/0 AWG"
}

converter "left" {
  label        = "Inverter left"
  kind         = "inverter"
  rated        = "1000 W"
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

conductor "ac_left" {
  from      = converter.left.out
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "dc_right" {
  from = switch.dc.right
  to   = converter.right.in
  size = "2/0 AWG"
}

converter "right" {
  label        = "Inverter right"
  kind         = "inverter"
  rated        = "1000 W"
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

conductor "ac_right" {
  from      = converter.right.out
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
