# A van that is lived in: lithium house battery under the bed, charged from the engine through a
# current-limiting converter and from the roof. The body is the return of everything that the
# vehicle's maker fitted, and of the step light; the house side has returns of its own.
system "wren" {
  title    = "Van with lithium house battery"
  practice = ["vehicle"]
  ambient  = "45 C"
  coldest  = "-25 C"
  revision = "7, 2026-09-20"
}

let {
  jacket       = "105 C"
  roof_modules = 2
  loads = {
    fridge = "5 A"
    pump   = "5.5 A"
    fan    = "2.4 A"
  }
}

# --- spaces -------------------------------------------------------------------------------------

compartment "engine_bay" {
  label      = "Engine bay"
  ambient    = "60 C"
  engine     = true
  ventilated = true
  occupied   = false
}

compartment "under_bed" {
  label      = "Under the bed"
  ambient    = "45 C"
  ventilated = true
  occupied   = false
  unheated   = true
  coldest    = "-15 C"
}

compartment "living" {
  label         = "Living space"
  ambient       = "45 C"
  ventilated    = true
  occupied      = true
  gas_appliance = true
}

# --- vehicle ------------------------------------------------------------------------------------

bus "body" {
  label    = "Body"
  polarity = "chassis"
  rating   = "300 A"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "150 A"
  regulated_voltage = "14.4 V"
  compartment       = compartment.engine_bay
}

source "start" {
  label        = "Vehicle battery"
  kind         = "battery"
  role         = "starting"
  chemistry    = "flooded"
  voltage      = "12 V"
  capacity     = "95 Ah"
  charge_limit = "20 A"
  resistance   = "5 mohm"
  compartment  = compartment.engine_bay
}

fuse "alternator" {
  label          = "Alternator, 200 A"
  kind           = "anl"
  rating         = "200 A"
  voltage_rating = "32 V dc"
  interrupting   = "6 kA"
  on             = source.start.pos
  compartment    = compartment.engine_bay
}

conductor "alternator_lead" {
  from       = source.alternator.pos
  to         = fuse.alternator.load
  polarity   = "positive"
  size       = "1/0 AWG"
  length     = "1 m"
  insulation = let.jacket
  bundle     = 1
  through    = [compartment.engine_bay]
}

conductor "engine_strap" {
  from       = source.alternator.neg
  to         = bus.body
  polarity   = "negative"
  size       = "1/0 AWG"
  length     = "0.4 m"
  insulation = let.jacket
  bundle     = 1
  through    = [compartment.engine_bay]
}

conductor "battery_strap" {
  from       = source.start.neg
  to         = bus.body
  polarity   = "negative"
  size       = "1/0 AWG"
  length     = "0.4 m"
  insulation = let.jacket
  bundle     = 1
  through    = [compartment.engine_bay]
}

# --- from the engine to the house, one way ------------------------------------------------------

fuse "converter_in" {
  label          = "Charge converter in, at the vehicle battery, 60 A"
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
  compartment    = compartment.engine_bay
}

conductor "converter_run" {
  from       = fuse.converter_in.load
  to         = converter.charge.in
  size       = "6 AWG"
  length     = "4.8 m"
  insulation = let.jacket
  bundle     = 2
  sheathed   = true
  through    = [compartment.engine_bay, compartment.under_bed]
}

converter "charge" {
  label          = "Charge converter"
  kind           = "dc-dc"
  rated          = "440 W"
  efficiency     = 0.9
  isolated       = true
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  trigger        = "ignition"
  charges        = [source.house]
  compartment    = compartment.under_bed

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    current_max = "42 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "converter_out" {
  from       = converter.charge.out
  to         = fuse.converter_out.load
  size       = "8 AWG"
  length     = "0.7 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

fuse "converter_out" {
  label          = "Charge converter out, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.post
}

# --- house battery ------------------------------------------------------------------------------

source "house" {
  label              = "House battery"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "200 Ah"
  usable             = "80 %"
  short_circuit      = "5 kA"
  discharge_limit    = "200 A"
  charge_limit       = "100 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  compartment        = compartment.under_bed
  notes              = "Heats itself from the charger below 5 C before it lets charge in."

  bms {
    opens_charge_below  = "0 C"
    opens_above         = "15 V"
    warns_before_cutoff = true
  }
}

fuse "house_main" {
  label          = "House main, 200 A"
  kind           = "class-t"
  rating         = "200 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
  compartment    = compartment.under_bed
}

conductor "house_lead" {
  from       = fuse.house_main.load
  to         = bus.post
  size       = "2/0 AWG"
  length     = "0.3 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

bus "post" {
  label       = "House post, ahead of the switch"
  rating      = "250 A"
  studs       = 10
  compartment = compartment.under_bed
}

conductor "house_ground" {
  from       = bus.post.neg
  to         = bus.body
  polarity   = "negative"
  size       = "2/0 AWG"
  length     = "0.5 m"
  insulation = let.jacket
  bundle     = 1
  through    = [compartment.under_bed]
}

# --- ahead of the switch ------------------------------------------------------------------------

branch "alarm" {
  label = "Gas and monoxide alarm"
  from  = bus.post

  fuse {
    label          = "Alarm, 2 A, ahead of the switch"
    kind           = "cartridge"
    rating         = "2 A"
    voltage_rating = "125 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "16 AWG"
    length     = "3.4 m"
    insulation = let.jacket
    bundle     = 4
    through    = [compartment.under_bed, compartment.living]
  }

  load "alarm" {
    kind        = "alarm"
    draw        = "110 mA"
    voltage_min = "8 V"
    voltage_max = "16 V"
    critical    = "life-safety"
    own_battery = false
    compartment = compartment.living
  }
}

branch "heater" {
  label = "Diesel heater"
  from  = bus.post

  fuse {
    label          = "Diesel heater, 15 A, ahead of the switch"
    kind           = "cartridge"
    rating         = "15 A"
    voltage_rating = "125 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "10 AWG"
    length     = "1.6 m"
    insulation = let.jacket
    bundle     = 2
    through    = [compartment.under_bed]
  }

  load "heater" {
    kind        = "heater"
    draw        = "8.3 A"
    max_fuse    = "15 A"
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    critical    = "none"
    notes       = "It must run down by itself: cutting its power while it burns cooks it."
  }
}

waiver "heater" {
  rule   = "switching/no-battery-disconnect"
  at     = source.house
  reason = "Only the heater stays on the battery: its maker wants it ahead of the switch, behind a fuse of its own."
  by     = "the owner"
  until  = "2028-06-01"
}

# --- inverter -----------------------------------------------------------------------------------

fuse "inverter" {
  label          = "Inverter, 150 A"
  kind           = "class-t"
  rating         = "150 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.post
}

conductor "inverter_lead" {
  from       = fuse.inverter.load
  to         = switch.inverter_off.battery
  size       = "1/0 AWG"
  length     = "0.4 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

switch "inverter_off" {
  label          = "Inverter switch"
  kind           = "disconnect"
  terminals      = ["battery", "inverter"]
  rating         = "300 A"
  voltage_rating = "48 V dc"
  poles          = 1
  compartment    = compartment.under_bed

  position "off" {}
  position "on" { joins = [["battery", "inverter"]] }
}

conductor "inverter_feed" {
  from       = switch.inverter_off.inverter
  to         = converter.inverter.in
  size       = "1/0 AWG"
  length     = "0.5 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

converter "inverter" {
  label          = "Inverter"
  kind           = "inverter"
  rated          = "1000 W"
  efficiency     = 0.88
  isolated       = true
  blocks_reverse = true
  limits_current = true
  inrush         = "400 A"
  neutral_bond   = "bonded"
  compartment    = compartment.under_bed

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    current_max = "95 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "120 V ac"
    current_max = "8.4 A"
  }
}

branch "outlet" {
  label = "Galley outlet"
  from  = converter.inverter.out

  fuse {
    label          = "Galley outlet, 10 A"
    kind           = "breaker"
    rating         = "10 A"
    voltage_rating = "240 V ac"
    interrupting   = "3 kA"
    reset          = "manual"
    trip           = "gfci 5 mA"
  }

  conductor {
    size           = "14 AWG"
    length         = "2.2 m"
    insulation     = "90 C"
    voltage_rating = "600 V ac"
    bundle         = 2
    sheathed       = true
    grounding      = "14 AWG"
  }

  load "outlet" {
    kind       = "other"
    draw       = "8 A"
    critical   = "none"
    receptacle = true

    hours_per_day = "1 h"
    notes         = "Kettle, or a charger for tools."
  }
}

# --- roof ---------------------------------------------------------------------------------------

source "roof" {
  label           = "Roof modules"
  kind            = "solar"
  voltage         = "36 V"
  series          = let.roof_modules
  parallel        = 1
  voc             = "24.4 V"
  isc             = "6.2 A"
  vmp             = "20.2 V"
  imp             = "5.7 A"
  voc_coefficient = "-0.29 %/C"
  coldest         = "-25 C"
  peak_sun        = "4.2 h"
  max_series_fuse = "15 A"
}

conductor "roof_run" {
  from           = source.roof
  to             = converter.tracker.in
  size           = "10 AWG"
  length         = "4 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
  bundle         = 2
  sheathed       = true
}

converter "tracker" {
  label              = "Solar controller"
  kind               = "mppt"
  rated              = "290 W"
  efficiency         = 0.97
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  charges            = [source.house]
  compartment        = compartment.under_bed

  input {
    voltage_min = "16 V"
    voltage_max = "75 V"
    current_max = "15 A"
    accepts     = ["solar"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "tracker_out" {
  from       = converter.tracker.out
  to         = fuse.tracker_out.load
  size       = "10 AWG"
  length     = "0.6 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

fuse "tracker_out" {
  label          = "Solar controller, 30 A"
  kind           = "cartridge"
  rating         = "30 A"
  voltage_rating = "125 V dc"
  interrupting   = "10 kA"
  on             = bus.post
}

# --- behind the switch --------------------------------------------------------------------------

switch "house_off" {
  label          = "House disconnect"
  kind           = "disconnect"
  terminals      = ["battery", "panel"]
  rating         = "300 A"
  voltage_rating = "48 V dc"
  poles          = 1
  on             = bus.post
  compartment    = compartment.under_bed

  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

conductor "panel_feed" {
  from       = switch.house_off.panel
  to         = bus.panel
  size       = "2/0 AWG"
  length     = "0.9 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.under_bed]
}

bus "panel" {
  label       = "Fuse panel"
  rating      = "200 A"
  studs       = 12
  compartment = compartment.living
}

branch "ceiling" {
  label = "Ceiling lights"
  from  = bus.panel

  fuse {
    label             = "1 Ceiling lights, 5 A"
    kind              = "blade"
    rating            = "5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "16 AWG"
    length     = "3.2 m"
    insulation = let.jacket
    bundle     = 6
  }

  load "front_light" {
    kind     = "light"
    draw     = times("0.25 A", 4)
    critical = "none"
    switched = true
  }

  load "rear_light" {
    kind     = "light"
    draw     = "0.5 A"
    critical = "none"
    switched = true
  }
}

branch "fan" {
  label = "Roof fans"
  from  = bus.panel

  fuse {
    label             = "2 Roof fans, 7.5 A"
    kind              = "blade"
    rating            = "7.5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "12 AWG"
    length     = "3.6 m"
    insulation = let.jacket
    bundle     = 6
  }

  load "front_fan" {
    kind     = "motor"
    draw     = let.loads.fan
    critical = "none"
  }

  load "rear_fan" {
    kind     = "motor"
    draw     = let.loads.fan
    critical = "none"
  }
}

branch "fridge" {
  label = "Fridge"
  from  = bus.panel

  fuse {
    label             = "3 Fridge, 15 A"
    kind              = "blade"
    rating            = "15 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "10 AWG"
    length     = "2.4 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "compressor" {
    kind        = "motor"
    draw        = let.loads.fridge
    max_fuse    = "15 A"
    voltage_min = "10.4 V"
    critical    = "none"
  }
}

branch "water" {
  label = "Water pump"
  from  = bus.panel

  fuse {
    label             = "4 Water pump, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "12 AWG"
    length     = "2 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "pump" {
    kind     = "motor"
    draw     = let.loads.pump
    critical = "none"
  }
}

branch "usb" {
  label = "USB sockets"
  from  = bus.panel

  fuse {
    label             = "5 USB sockets, 7.5 A"
    kind              = "blade"
    rating            = "7.5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "14 AWG"
    length     = "2.5 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "usb" {
    kind     = "electronics"
    draw     = "4.5 A"
    critical = "none"
  }
}

use "left_bunk" {
  kit        = "./kits/reading-light.wiring.hcl"
  feed       = bus.panel
  fuse_label = "6 Left bunk, 3 A"
  main       = fuse.house_main
  length     = "2.6 m"
}

use "right_bunk" {
  kit        = "./kits/reading-light.wiring.hcl"
  feed       = bus.panel
  fuse_label = "7 Right bunk, 3 A"
  main       = fuse.house_main
  length     = "3.8 m"
  draw       = "0.4 A"
}

# The step light's return is the sill it is screwed to.
fuse "step_light" {
  label             = "8 Step light, 3 A"
  kind              = "blade"
  rating            = "3 A"
  voltage_rating    = "32 V dc"
  interrupting      = "1 kA"
  series_rated_with = fuse.house_main
  on                = bus.panel
}

conductor "step_light" {
  from       = fuse.step_light.load
  to         = load.step_light.pos
  polarity   = "positive"
  size       = "16 AWG"
  length     = "2.2 m"
  insulation = let.jacket
  bundle     = 1
}

conductor "step_light_ground" {
  from       = load.step_light.neg
  to         = bus.body
  polarity   = "negative"
  size       = "16 AWG"
  length     = "0.2 m"
  insulation = let.jacket
  bundle     = 1
}

load "step_light" {
  label    = "Step light"
  kind     = "light"
  draw     = "0.3 A"
  critical = "none"
}

# --- how it is used -----------------------------------------------------------------------------

mode "driving" {
  state = {
    source.alternator   = "present"
    switch.inverter_off = "off"
  }
  occupied = true
}

mode "parked" {
  state    = { source.alternator = "absent" }
  occupied = true
}

mode "stored" {
  state = {
    source.alternator   = "absent"
    switch.house_off    = "off"
    switch.inverter_off = "off"
  }
  occupied = false
  by       = "habit"
}
