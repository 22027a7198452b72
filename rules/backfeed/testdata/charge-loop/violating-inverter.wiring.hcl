# An inverter feeds the charger of its own battery; each pole is drawn as a wire of its own. 0.88 x 0.85 = 0.748,
# so that 500 W of charge cost 668 W, and 168 W are lost.

system "ring" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "inv_pos" {
  from   = source.house.pos
  to     = switch.inverter.battery
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

switch "inverter" {
  label     = "Inverter disconnect"
  terminals = ["battery", "inverter"]

  position "off" {}
  position "on" { joins = [["battery", "inverter"]] }
}

conductor "inv_lead" {
  from   = switch.inverter.inverter
  to     = converter.inverter.in.pos
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

conductor "inv_neg" {
  from   = source.house.neg
  to     = converter.inverter.in.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}

converter "inverter" { # want caution "energy goes round through .*: of what leaves, 75 % comes back. 168 W becomes heat"
  label      = "Inverter"
  kind       = "inverter"
  rated      = "1500 W"
  efficiency = 0.88

  output {
    voltage     = "120 V ac"
    current_max = "13 A"
  }
}

conductor "inv_out" {
  from   = converter.inverter.out
  to     = bus.panel
  size   = "10 AWG"
  length = "2 m"
}

bus "panel" {
  label = "Panel"
}

switch "charger" {
  label     = "Charger breaker"
  terminals = ["panel", "charger"]
  poles     = 2

  position "off" {}
  position "on" { joins = [["panel", "charger"]] }
}

conductor "charger_feed" {
  from   = bus.panel
  to     = switch.charger.panel
  size   = "10 AWG"
  length = "2 m"
}

conductor "charger_lead" {
  from   = switch.charger.charger
  to     = converter.charger.in
  size   = "10 AWG"
  length = "2 m"
}

converter "charger" {
  label      = "Charger"
  kind       = "charger"
  rated      = "500 W"
  efficiency = 0.85

  output {
    voltage     = "14.4 V"
    current_max = "40 A"
  }
}

conductor "ch_pos" {
  from   = converter.charger.out.pos
  to     = source.house.pos
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

conductor "ch_neg" {
  from   = converter.charger.out.neg
  to     = source.house.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}
