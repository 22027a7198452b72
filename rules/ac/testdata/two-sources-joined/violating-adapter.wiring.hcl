# The inverter is plugged into the inlet by a cord, and the shore comes back through a two-way adapter.
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

converter "inverter" { # want danger "Inverter\" and \"Post\" meet.*\"Adapter, inverter side\" mated.*\"Adapter, shore side\" mated"
  label        = "Inverter"
  kind         = "inverter"
  rated        = "2000 W"
  neutral_bond = "switched"

  output {
    voltage = "120 V ac"
  }
}

conductor "a" {
  from      = converter.inverter.out
  to        = connector.plug.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

connector "plug" {
  label = "Adapter, inverter side"
  style = "household"
}

conductor "b" {
  from      = connector.plug.fixed
  to        = bus.adapter
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "adapter" {
}

conductor "c" {
  from      = source.shore
  to        = connector.shore.free
  size      = "10 AWG"
  grounding = "10 AWG"
}

connector "shore" {
  label = "Adapter, shore side"
  style = "household"
}

conductor "d" {
  from      = connector.shore.fixed
  to        = bus.adapter
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "e" {
  from      = bus.adapter
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
