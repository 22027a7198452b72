# A cabin off the grid: two 48 V batteries, two strings of modules, an inverter, a generator that is
# started by hand in dark weeks, and a 12 V side for lights and the gas alarm.
#
# The step-down to 12 V is isolated and hangs on the batteries' bus ahead of the disconnect, so the
# alarm has power as long as there is any. The disconnect takes the inverter away.
system "siskin" {
  title    = "Cabin with a 48 V bank"
  practice = ["cabin"]
  ambient  = "35 C"
  coldest  = "-32 C"
  revision = "1, 2026-08-02"
}

let {
  jacket  = "90 C"
  modules = 3
  strings = 2
  lights  = ["0.6 A", "0.6 A", "0.4 A"]
}

# --- spaces -------------------------------------------------------------------------------------

compartment "power_room" {
  label      = "Power room"
  ambient    = "35 C"
  coldest    = "5 C"
  ventilated = true
  occupied   = false
  notes      = "Insulated, on the warm side of the house."
}

compartment "rooms" {
  label         = "Rooms"
  ambient       = "35 C"
  ventilated    = true
  occupied      = true
  gas_appliance = true
}

compartment "shed" {
  label      = "Generator shed"
  ambient    = "40 C"
  ventilated = true
  occupied   = false
  fuel_vapor = true
  unheated   = true
  vented_to  = "outside, at floor and ridge"
}

# --- bank ---------------------------------------------------------------------------------------

source "bank_a" {
  label              = "Battery A"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "51.2 V"
  capacity           = "100 Ah"
  usable             = "90 %"
  short_circuit      = "3.2 kA"
  discharge_limit    = "100 A"
  charge_limit       = "60 A"
  charge_voltage_max = "58.4 V"
  cold_charge_cutoff = true
  max_series         = 1
  compartment        = compartment.power_room

  bms {
    opens_charge_below  = "2 C"
    opens_above         = "59 V"
    warns_before_cutoff = true
  }
}

fuse "bank_a" {
  label          = "Battery A main, 125 A"
  kind           = "class-t"
  rating         = "125 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.bank_a
}

conductor "bank_a_lead" {
  from           = fuse.bank_a.load
  to             = bus.bank
  size           = "1/0 AWG"
  length         = "0.7 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

source "bank_b" {
  label              = "Battery B"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "51.2 V"
  capacity           = "100 Ah"
  usable             = "90 %"
  short_circuit      = "3.2 kA"
  discharge_limit    = "100 A"
  charge_limit       = "60 A"
  charge_voltage_max = "58.4 V"
  cold_charge_cutoff = true
  max_series         = 1
  compartment        = compartment.power_room

  bms {
    opens_charge_below  = "2 C"
    opens_above         = "59 V"
    warns_before_cutoff = true
  }
}

fuse "bank_b" {
  label          = "Battery B main, 125 A"
  kind           = "class-t"
  rating         = "125 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.bank_b
}

conductor "bank_b_lead" {
  from           = fuse.bank_b.load
  to             = bus.bank
  size           = "1/0 AWG"
  length         = "0.7 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

bus "bank" {
  label       = "48 V bus"
  rating      = "300 A"
  studs       = 8
  compartment = compartment.power_room
}

# --- inverter and house wiring --------------------------------------------------------------------

fuse "inverter" {
  label          = "Inverter, 125 A"
  kind           = "class-t"
  rating         = "125 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.bank
}

conductor "inverter_lead" {
  from           = fuse.inverter.load
  to             = switch.bank_off.bank
  size           = "1/0 AWG"
  length         = "0.4 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

switch "bank_off" {
  label          = "48 V disconnect"
  kind           = "disconnect"
  terminals      = ["bank", "inverter"]
  rating         = "175 A"
  voltage_rating = "125 V dc"
  poles          = 1
  compartment    = compartment.power_room

  position "off" {}
  position "on" { joins = [["bank", "inverter"]] }
}

conductor "inverter_feed" {
  from           = switch.bank_off.inverter
  to             = converter.inverter.in
  size           = "1/0 AWG"
  length         = "0.8 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

converter "inverter" {
  label          = "Inverter"
  kind           = "inverter"
  rated          = "3000 W"
  efficiency     = 0.91
  isolated       = true
  blocks_reverse = true
  limits_current = true
  inrush         = "150 A"
  neutral_bond   = "switched"
  compartment    = compartment.power_room

  input {
    voltage_min = "42 V"
    voltage_max = "64 V"
    current_max = "80 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "120 V ac"
    current_max = "25 A"
  }
}

conductor "inverter_out" {
  from           = converter.inverter.out
  to             = switch.transfer.inverter
  size           = "10 AWG"
  length         = "1.5 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

switch "transfer" {
  label          = "House from"
  kind           = "transfer"
  terminals      = ["inverter", "generator", "house"]
  rating         = "30 A"
  voltage_rating = "240 V ac"
  poles          = 2
  transition     = "break-before-make"
  compartment    = compartment.power_room

  position "inverter" { joins = [["inverter", "house"]] }
  position "generator" { joins = [["generator", "house"]] }
}

conductor "house_feed" {
  from           = switch.transfer.house
  to             = fuse.house_main.line
  size           = "10 AWG"
  length         = "0.5 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

fuse "house_main" {
  label          = "House main, 30 A"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
}

conductor "house_bar" {
  from           = fuse.house_main.load
  to             = bus.ac_panel
  size           = "10 AWG"
  length         = "0.3 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  grounding      = "10 AWG"
}

bus "ac_panel" {
  label       = "House panel"
  rating      = "60 A"
  compartment = compartment.rooms
}

branch "kitchen" {
  label = "Kitchen outlets"
  from  = bus.ac_panel

  fuse {
    label          = "A1 Kitchen outlets, 15 A"
    kind           = "breaker"
    rating         = "15 A"
    voltage_rating = "240 V ac"
    interrupting   = "10 kA"
    reset          = "manual"
    trip           = "gfci 5 mA"
  }

  conductor {
    size           = "12 AWG"
    length         = "8 m"
    insulation     = let.jacket
    voltage_rating = "600 V ac"
    bundle         = 2
    sheathed       = true
    grounding      = "12 AWG"
    stranding      = "solid"
  }

  load "outlets" {
    kind       = "other"
    draw       = "11 A"
    critical   = "none"
    receptacle = true

    hours_per_day = "1.5 h"
    notes         = "Kettle, toaster, mixer: one at a time."
  }
}

branch "well" {
  label = "Well pump"
  from  = bus.ac_panel

  fuse {
    label          = "A2 Well pump, 15 A"
    kind           = "breaker"
    rating         = "15 A"
    voltage_rating = "240 V ac"
    interrupting   = "10 kA"
    reset          = "manual"
  }

  conductor {
    size           = "12 AWG"
    length         = "22 m"
    insulation     = let.jacket
    voltage_rating = "600 V ac"
    bundle         = 2
    sheathed       = true
    grounding      = "12 AWG"
  }

  load "well_pump" {
    kind     = "motor"
    draw     = "7.5 A"
    critical = "none"
  }
}

# --- sun ----------------------------------------------------------------------------------------

source "roof" {
  label           = "South roof"
  kind            = "solar"
  voltage         = "94 V"
  series          = let.modules
  parallel        = let.strings
  voc             = "37.2 V"
  isc             = "13.8 A"
  vmp             = "31.3 V"
  imp             = "13.1 A"
  voc_coefficient = "-0.26 %/C"
  coldest         = "-32 C"
  peak_sun        = "3.4 h"
  max_series_fuse = "25 A"
}

conductor "roof_run" {
  from           = source.roof
  to             = switch.array_off.array
  size           = "8 AWG"
  length         = "11 m"
  insulation     = "90 C"
  voltage_rating = "1 kV dc"
  bundle         = 2
  sheathed       = true
}

switch "array_off" {
  label          = "Array disconnect"
  kind           = "disconnect"
  terminals      = ["array", "controller"]
  rating         = "40 A"
  voltage_rating = "500 V dc"
  poles          = 2
  compartment    = compartment.power_room

  position "off" {}
  position "on" { joins = [["array", "controller"]] }
}

conductor "controller_in" {
  from           = switch.array_off.controller
  to             = converter.tracker.in
  size           = "8 AWG"
  length         = "0.6 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

converter "tracker" {
  label          = "Solar controller"
  kind           = "mppt"
  rated          = "3400 W"
  efficiency     = 0.97
  isolated       = false
  blocks_reverse = true
  limits_current = true
  charges        = [source.bank_a, source.bank_b]
  compartment    = compartment.power_room

  input {
    voltage_min = "65 V"
    voltage_max = "150 V"
    current_max = "50 A"
    accepts     = ["solar"]
  }

  output {
    voltage     = "56.8 V"
    current_max = "50 A"
    profile     = "lifepo4"
    float       = "54 V"
  }
}

conductor "tracker_out" {
  from           = converter.tracker.out
  to             = fuse.tracker_out.load
  size           = "4 AWG"
  length         = "0.9 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

fuse "tracker_out" {
  label          = "Solar controller, 80 A"
  kind           = "class-t"
  rating         = "80 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.bank
}

# --- generator ----------------------------------------------------------------------------------

source "generator" {
  label         = "Generator"
  kind          = "generator"
  voltage       = "120 V ac"
  rated         = "24 A"
  short_circuit = "150 A"
  neutral_bond  = "bonded"
  compartment   = compartment.shed
}

fuse "generator" {
  label          = "Breaker on the generator, 30 A"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "3 kA"
  reset          = "manual"
  on             = source.generator
}

conductor "generator_run" {
  from           = fuse.generator.load
  to             = bus.generator_bar
  size           = "8 AWG"
  length         = "14 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
  through        = [compartment.shed]
}

bus "generator_bar" {
  label       = "Generator bar"
  rating      = "60 A"
  compartment = compartment.power_room
}

conductor "generator_to_transfer" {
  from           = bus.generator_bar
  to             = switch.transfer.generator
  size           = "10 AWG"
  length         = "0.6 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

fuse "charger_in" {
  label          = "Battery charger, 15 A"
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "240 V ac"
  interrupting   = "3 kA"
  reset          = "manual"
  on             = bus.generator_bar
}

conductor "charger_in" {
  from           = fuse.charger_in.load
  to             = converter.charger.in
  size           = "12 AWG"
  length         = "0.8 m"
  insulation     = let.jacket
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "12 AWG"
}

converter "charger" {
  label              = "Battery charger"
  kind               = "charger"
  rated              = "1150 W"
  efficiency         = 0.91
  isolated           = true
  blocks_reverse     = true
  limits_current     = true
  cold_charge_cutoff = true
  charges            = [source.bank_a, source.bank_b]
  compartment        = compartment.power_room

  input {
    voltage_min = "100 V ac"
    voltage_max = "132 V ac"
    current_max = "12 A"
  }

  output {
    voltage     = "56.8 V"
    current_max = "20 A"
    profile     = "lifepo4"
    float       = "54 V"
  }
}

conductor "charger_out" {
  from           = converter.charger.out
  to             = fuse.charger_out.load
  size           = "8 AWG"
  length         = "1.1 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

fuse "charger_out" {
  label          = "Battery charger, at the bus, 40 A"
  kind           = "cartridge"
  rating         = "40 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.bank
}

# --- 12 V side ----------------------------------------------------------------------------------

fuse "step_down" {
  label          = "Step-down, 15 A, ahead of the disconnect"
  kind           = "cartridge"
  rating         = "15 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.bank
}

conductor "step_down_in" {
  from           = fuse.step_down.load
  to             = converter.step_down.in
  size           = "12 AWG"
  length         = "0.9 m"
  insulation     = let.jacket
  voltage_rating = "600 V dc"
  bundle         = 2
}

converter "step_down" {
  label          = "Step-down to 12 V"
  kind           = "dc-dc"
  rated          = "320 W"
  efficiency     = 0.9
  isolated       = true
  blocks_reverse = true
  limits_current = true
  compartment    = compartment.power_room

  input {
    voltage_min = "36 V"
    voltage_max = "75 V"
    current_max = "9 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "13 V"
    current_max = "24 A"
  }
}

conductor "step_down_out" {
  from       = converter.step_down.out
  to         = bus.dc_panel
  size       = "8 AWG"
  length     = "1.8 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.power_room, compartment.rooms]
}

bus "dc_panel" {
  label       = "12 V panel"
  rating      = "60 A"
  studs       = 8
  compartment = compartment.rooms
}

branch "alarm" {
  label = "Gas alarm"
  from  = bus.dc_panel

  fuse {
    label          = "D1 Gas alarm, 2 A"
    kind           = "blade"
    rating         = "2 A"
    voltage_rating = "32 V dc"
    interrupting   = "1 kA"
  }

  conductor {
    size       = "16 AWG"
    length     = "6 m"
    insulation = let.jacket
    bundle     = 2
  }

  load "gas_alarm" {
    kind        = "alarm"
    draw        = "120 mA"
    voltage_min = "9 V"
    voltage_max = "16 V"
    critical    = "life-safety"
    own_battery = false
    compartment = compartment.rooms
  }
}

branch "rooms" {
  label = "Room lights"
  from  = bus.dc_panel

  fuse {
    label          = "D2 Room lights, 5 A"
    kind           = "blade"
    rating         = "5 A"
    voltage_rating = "32 V dc"
    interrupting   = "1 kA"
  }

  conductor {
    size       = "12 AWG"
    length     = "7 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "table_lights" {
    kind     = "light"
    draw     = sum(let.lights)
    critical = "none"
    switched = true
  }

  load "stair_light" {
    kind     = "light"
    draw     = "0.4 A"
    critical = "none"
    switched = true
  }
}

branch "radio_link" {
  label = "Radio link"
  from  = bus.dc_panel

  fuse {
    label          = "D3 Radio link, 5 A"
    kind           = "blade"
    rating         = "5 A"
    voltage_rating = "32 V dc"
    interrupting   = "1 kA"
  }

  conductor {
    size       = "14 AWG"
    length     = "5 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "radio_link" {
    kind        = "electronics"
    draw        = "2 A"
    voltage_max = "15 V"
    critical    = "none"
    switched    = true
  }
}

use "reading" {
  kit        = "./kits/reading-light.wiring.hcl"
  feed       = bus.dc_panel
  main       = fuse.step_down
  fuse_label = "D4 Reading light, 3 A"
  length     = "5.5 m"
}

# --- how it is used -----------------------------------------------------------------------------

mode "lived_in" {
  state    = { source.generator = "absent", switch.transfer = "inverter" }
  occupied = true
}

mode "dark_week" {
  state    = { source.generator = "present" }
  occupied = true
}

mode "shut_up" {
  state = {
    source.generator = "absent"
    switch.bank_off  = "off"
  }
  occupied = false
  by       = "habit"
}
