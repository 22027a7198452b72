# Both, for a blink: the selector makes before it breaks, so that the lights do not flicker. Nobody can park it at both,
# but the throw from truck to pack passes through it: lead-acid meets lithium in a selector made for 30 A.
system "selector" {
  title    = "A camper that lives from the truck or from its own pack"
  practice = ["general"]
  ambient  = "25 C"
}

source "start" {
  label         = "Truck battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "90 Ah"
  charge_limit  = "25 A"
  resistance    = "6 mohm"
  short_circuit = "2 kA"
}

fuse "truck" {
  label          = "Truck, 60 A"
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "truck" {
  label      = "From the truck"
  from       = fuse.truck.load
  to         = switch.select.truck
  size       = "6 AWG"
  length     = "2 m"
  insulation = "105 C"
}

source "pack" {
  label              = "Pack"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  charge_limit       = "50 A"
  discharge_limit    = "100 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  resistance         = "3 mohm"
  short_circuit      = "4 kA"
}

fuse "pack" {
  label          = "Pack, 60 A"
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

conductor "pack" {
  label      = "From the pack"
  from       = fuse.pack.load
  to         = switch.select.pack
  size       = "6 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

source "roof" {
  label           = "Roof modules"
  kind            = "solar"
  voltage         = "18 V"
  voc             = "22 V"
  isc             = "30 A"
  vmp             = "18 V"
  imp             = "28 A"
  voc_coefficient = "-0.29 %/C"
  coldest         = "-20 C"
}

conductor "roof" {
  from       = source.roof
  to         = converter.controller.in
  size       = "8 AWG"
  length     = "4 m"
  insulation = "105 C"
}

converter "controller" {
  label              = "Solar controller"
  kind               = "mppt"
  efficiency         = 0.95
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  charges            = [source.pack]

  input {
    voltage_max = "50 V"
    current_max = "40 A"
    accepts     = ["solar"]
  }

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

fuse "controller" {
  label          = "Controller, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

conductor "controller" {
  label      = "From the controller"
  from       = fuse.controller.load
  to         = converter.controller.out
  size       = "8 AWG"
  length     = "1 m"
  insulation = "105 C"
}

switch "select" {
  label          = "Selector"
  kind           = "manual"
  terminals      = ["truck", "pack", "house"]
  rating         = "30 A"
  voltage_rating = "48 V dc"
  transition     = "make-before-break"

  position "off" {}
  position "truck" { joins = [["truck", "house"]] }
  position "pack" { joins = [["pack", "house"]] }
  position "both" { joins = [["truck", "pack", "house"]] }
}

interlock "never_both" {
  by    = "hardware"
  notes = "a stop pin in the selector's face keeps it from being parked at both"
  never = [{ switch.select = "both" }]
}

conductor "house" {
  label      = "To the house"
  from       = switch.select.house
  to         = bus.house
  size       = "4 AWG"
  length     = "1 m"
  insulation = "105 C"
}

bus "house" {
  label  = "House bus"
  rating = "100 A"
}

fuse "lights" {
  label          = "Lights, 15 A"
  kind           = "terminal"
  rating         = "15 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "lights" {
  label      = "Lights"
  from       = fuse.lights.load
  to         = load.lights
  size       = "12 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "lights" {
  label       = "Lights"
  kind        = "light"
  draw        = "10 A"
  behavior    = "constant-current"
  critical    = "none"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

waiver "drains" {
  rule   = "charging/drains-starting-battery"
  at     = source.start
  reason = "the truck position is for an hour at noon, with the engine run after it"
  by     = "the owner"
}
