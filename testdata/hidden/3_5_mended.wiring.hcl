# The inverter reaches the outlets through a two-pole transfer switch, the load centre hangs on the shore side of it.
system "hidden" {
  title    = "Trailer with an inverter behind a transfer switch"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "house" {
  label              = "House battery"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "200 Ah"
  short_circuit      = "4.2 kA"
  resistance         = "4 mohm"
  charge_limit       = "100 A"
  discharge_limit    = "200 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
}

fuse "inverter" {
  label          = "Inverter, 200 A"
  kind           = "class-t"
  rating         = "200 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}

conductor "inverter_feed" {
  from           = fuse.inverter.load
  to             = switch.inverter.battery
  size           = "2/0 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
}

switch "inverter" {
  label          = "Inverter disconnect"
  kind           = "disconnect"
  terminals      = ["battery", "inverter"]
  rating         = "300 A"
  poles          = 1
  voltage_rating = "48 V dc"

  position "off" {}
  position "on" { joins = [["battery", "inverter"]] }
}

conductor "inverter_lead" {
  from           = switch.inverter.inverter
  to             = converter.inverter.in
  size           = "2/0 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
}

converter "inverter" {
  label          = "Inverter"
  kind           = "inverter"
  rated          = "1500 W"
  efficiency     = 0.88
  isolated       = true
  blocks_reverse = true
  limits_current = true
  neutral_bond   = "switched"
  inrush         = "400 A"

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    current_max = "150 A"
  }

  output {
    voltage     = "120 V ac"
    current_max = "13 A"
  }
}

conductor "inverter_out" {
  from           = converter.inverter.out
  to             = switch.transfer.inverter
  size           = "12 AWG"
  length         = "1 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "12 AWG"
}

source "shore" {
  label         = "Camp-site post"
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "5 kA"
  neutral_bond  = "bonded"
}

fuse "post" {
  label          = "Camp-site post, 30 A"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  on             = source.shore
}

conductor "shore_cord" {
  from           = fuse.post.load
  to             = connector.inlet.free
  size           = "10 AWG"
  length         = "7 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

connector "inlet" {
  label          = "Inlet"
  style          = "30 A inlet"
  rating         = "30 A"
  exposed        = "fixed"
  voltage_rating = "250 V ac"
  load_break     = true
}

conductor "inlet_lead" {
  from           = connector.inlet.fixed
  to             = bus.shore_side
  size           = "10 AWG"
  length         = "1 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

bus "shore_side" {
  label  = "Shore side"
  rating = "40 A"
}

conductor "shore_side" {
  from           = bus.shore_side
  to             = switch.transfer.shore
  size           = "10 AWG"
  length         = "0.3 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

switch "transfer" {
  label          = "Outlets from"
  kind           = "transfer"
  terminals      = ["inverter", "shore", "outlets"]
  rating         = "30 A"
  poles          = 2
  transition     = "break-before-make"
  voltage_rating = "250 V ac"

  position "inverter" { joins = [["inverter", "outlets"]] }
  position "shore" { joins = [["shore", "outlets"]] }
}

conductor "outlets" {
  from           = switch.transfer.outlets
  to             = bus.ac_panel
  size           = "10 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

bus "ac_panel" {
  label  = "AC panel"
  rating = "50 A"
}

fuse "outlet" {
  label          = "Outlet, 15 A"
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  trip           = "gfci 5 mA"
  on             = bus.ac_panel
}

conductor "outlet" {
  from           = fuse.outlet.load
  to             = load.outlet
  size           = "14 AWG"
  length         = "3 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "14 AWG"
}

load "outlet" {
  label      = "Galley outlet"
  kind       = "other"
  draw       = "8 A"
  critical   = "none"
  receptacle = true
}

switch "load_center" {
  label          = "Load centre breaker"
  terminals      = ["panel", "charger"]
  rating         = "15 A"
  poles          = 2
  voltage_rating = "250 V ac"

  position "off" {}
  position "on" { joins = [["panel", "charger"]] }
}

conductor "center_feed" {
  from           = bus.shore_side
  to             = switch.load_center.panel
  size           = "10 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

conductor "center_lead" {
  from           = switch.load_center.charger
  to             = converter.load_center.in
  size           = "10 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

converter "load_center" {
  label          = "Load centre, charger"
  kind           = "load-center"
  rated          = "600 W"
  efficiency     = 0.85
  isolated       = true
  blocks_reverse = true
  limits_current = true
  charges        = [source.house]
  needs_battery  = false

  output {
    voltage     = "14.4 V"
    current_max = "40 A"
    profile     = "lifepo4"
  }

  input {
    voltage_min = "100 V ac"
    voltage_max = "135 V ac"
    current_max = "8 A"
  }
}

conductor "charge" {
  from           = converter.load_center.out
  to             = fuse.charge.load
  size           = "8 AWG"
  length         = "1.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
}

fuse "charge" {
  label          = "Charger, 50 A"
  kind           = "class-t"
  rating         = "50 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}
