# One ground too many, or none. On shore there is one bond, at the pedestal; on the inverter one, its own. The generator has a bonding
# plug and comes in beside the inverter, whose neutral is not switched: two. The portable pack floats and goes into the shore inlet: none.
system "hidden" {
  title    = "Trailer with three supplies and an inverter"
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
  neutral_bond   = "bonded"
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
  to             = switch.second.inverter
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

conductor "shore_plug_cord" {
  from           = fuse.post.load
  to             = connector.shore_plug.free
  size           = "10 AWG"
  length         = "7 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

connector "shore_plug" {
  label          = "Shore plug in the inlet"
  style          = "30 A inlet"
  rating         = "30 A"
  exposed        = "none"
  voltage_rating = "250 V ac"
  load_break     = true
}

conductor "shore_plug_lead" {
  from           = connector.shore_plug.fixed
  to             = bus.inlet
  size           = "10 AWG"
  length         = "0.2 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

source "generator" {
  label         = "Portable generator"
  kind          = "generator"
  voltage       = "120 V ac"
  rated         = "15 A"
  short_circuit = "60 A"
  neutral_bond  = "bonded"
  notes         = "With a bonding plug in its second outlet."
}

fuse "generator" {
  label          = "Portable generator, 15 A"
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  on             = source.generator
}

conductor "generator_plug_cord" {
  from           = fuse.generator.load
  to             = connector.generator_plug.free
  size           = "10 AWG"
  length         = "7 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

connector "generator_plug" {
  label          = "Generator plug"
  style          = "30 A inlet"
  rating         = "30 A"
  exposed        = "none"
  voltage_rating = "250 V ac"
  load_break     = true
}

conductor "generator_plug_lead" {
  from           = connector.generator_plug.fixed
  to             = switch.second.generator
  size           = "10 AWG"
  length         = "0.2 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

source "pack" {
  label           = "Portable pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "25.6 V"
  capacity        = "40 Ah"
  removable       = true
  short_circuit   = "1.5 kA"
  resistance      = "12 mohm"
  discharge_limit = "80 A"
}

fuse "pack" {
  label          = "In the pack, 80 A"
  part_of        = source.pack
  kind           = "class-t"
  rating         = "80 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.pack
}

conductor "pack_inside" {
  part_of        = source.pack
  from           = fuse.pack.load
  to             = converter.pack.in
  size           = "4 AWG"
  length         = "0.2 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
}

converter "pack" {
  label          = "Outlet of the portable pack"
  part_of        = source.pack
  kind           = "inverter"
  rated          = "1000 W"
  isolated       = true
  limits_current = true
  neutral_bond   = "floating"
  blocks_reverse = true

  output {
    voltage     = "120 V ac"
    current_max = "9 A"
  }

  input {
    voltage_min = "18 V"
    voltage_max = "30 V"
    current_max = "62 A"
  }
}

conductor "pack_plug_cord" {
  from           = converter.pack.out
  to             = connector.pack_plug.free
  size           = "10 AWG"
  length         = "7 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

connector "pack_plug" {
  label          = "Pack plug in the inlet"
  style          = "30 A inlet"
  rating         = "30 A"
  exposed        = "none"
  voltage_rating = "250 V ac"
  load_break     = true
}

conductor "pack_plug_lead" {
  from           = connector.pack_plug.fixed
  to             = bus.inlet
  size           = "10 AWG"
  length         = "0.2 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

bus "inlet" {
  label  = "Inlet"
  rating = "40 A"
}

interlock "one_plug" {
  never = [
    { connector.shore_plug = "mated", connector.pack_plug = "mated" },
  ]
  by    = "hardware"
  notes = "The inlet takes one plug at a time."
}

conductor "inlet" {
  from           = bus.inlet
  to             = switch.transfer.inlet
  size           = "10 AWG"
  length         = "1 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

switch "second" {
  label          = "Own supply from"
  kind           = "transfer"
  terminals      = ["inverter", "generator", "own"]
  rating         = "30 A"
  poles          = 1
  transition     = "break-before-make"
  voltage_rating = "250 V ac"

  position "inverter" { joins = [["inverter", "own"]] }
  position "generator" { joins = [["generator", "own"]] }
}

conductor "own" {
  from           = switch.second.own
  to             = switch.transfer.inverter
  size           = "10 AWG"
  length         = "0.5 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  grounding      = "10 AWG"
}

switch "transfer" {
  label          = "Outlets from"
  kind           = "transfer"
  terminals      = ["inverter", "inlet", "outlets"]
  rating         = "30 A"
  poles          = 2
  transition     = "break-before-make"
  voltage_rating = "250 V ac"

  position "inverter" { joins = [["inverter", "outlets"]] }
  position "inlet" { joins = [["inlet", "outlets"]] }
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
