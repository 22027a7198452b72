# A small sailing boat with a diesel, two batteries and no common bus between them.
#
# The alternator keeps the starting battery and nothing else; a current-limiting converter passes a
# share of it on to the lithium house battery. The bilge pump and the alarm are fed ahead of the house
# disconnect, and everything that charges the house battery sits on the battery's side of it too: off
# means off. The house battery's main fuse is on its own post.
system "curlew" {
  title    = "26 ft sailing boat with lithium house battery"
  practice = ["us-boat"]
  ambient  = "35 C"
  coldest  = "-5 C"
  revision = "2, 2026-10-03"
}

let {
  jacket    = "105 C"
  heavy     = awg("2/0")
  half_hull = "3.2 m"
  panel_way = "1.2 m"
}

# --- spaces -------------------------------------------------------------------------------------

compartment "engine_space" {
  label      = "Engine space"
  ambient    = "50 C"
  engine     = true
  ventilated = true
  occupied   = false
  fuel_vapor = false
  notes      = "Diesel. No gas, no gasoline."
}

compartment "saloon" {
  label      = "Saloon"
  ambient    = "35 C"
  ventilated = true
  occupied   = true
  notes      = "Spirit stove."
}

compartment "bilge" {
  label      = "Bilge"
  ambient    = "35 C"
  ventilated = true
  occupied   = false
  wet        = true
}

# --- engine -------------------------------------------------------------------------------------

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  compartment       = compartment.engine_space
}

source "start" {
  label         = "Starting battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "80 Ah"
  charge_limit  = "16 A"
  short_circuit = "2.4 kA"
  compartment   = compartment.engine_space
}

fuse "alternator" {
  label          = "Alternator, at the battery, 125 A"
  kind           = "terminal"
  rating         = "125 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
  compartment    = compartment.engine_space
}

conductor "alternator_lead" {
  from       = source.alternator
  to         = fuse.alternator.load
  size       = "4 AWG"
  length     = "1.3 m"
  insulation = let.jacket
  bundle     = 2
  sheathed   = true
  through    = [compartment.engine_space]
}

switch "engine_off" {
  label          = "Engine battery switch"
  kind           = "disconnect"
  terminals      = ["battery", "engine"]
  rating         = "275 A"
  voltage_rating = "32 V dc"
  poles          = 1
  on             = source.start
  compartment    = compartment.engine_space

  position "off" {}
  position "on" { joins = [["battery", "engine"]] }
}

conductor "starter_cable" {
  from       = switch.engine_off.engine
  to         = load.starter
  size       = let.heavy
  length     = "1.1 m"
  insulation = let.jacket
  bundle     = 2
  cranking   = true
  through    = [compartment.engine_space]
}

load "starter" {
  label       = "Starter"
  kind        = "motor"
  draw        = "140 A"
  voltage_min = "8 V"
  voltage_max = "16 V"
  critical    = "none"
  compartment = compartment.engine_space
}

# --- from the engine to the house, one way ------------------------------------------------------

fuse "converter_in" {
  label          = "Charge converter in, at the starting battery, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
  compartment    = compartment.engine_space
}

conductor "converter_in" {
  from       = fuse.converter_in.load
  to         = converter.charge.in
  size       = "8 AWG"
  length     = "2.2 m"
  insulation = let.jacket
  bundle     = 2
  sheathed   = true
  through    = [compartment.engine_space, compartment.saloon]
}

converter "charge" {
  label          = "Charge converter"
  kind           = "dc-dc"
  rated          = "290 W"
  efficiency     = 0.9
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  trigger        = "13.3 V"
  charges        = [source.house]
  compartment    = compartment.saloon

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "28 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "converter_out" {
  from       = converter.charge.out
  to         = fuse.converter_out.load
  size       = "10 AWG"
  length     = "0.6 m"
  insulation = let.jacket
  bundle     = 2
}

fuse "converter_out" {
  label          = "Charge converter out, 30 A"
  kind           = "cartridge"
  rating         = "30 A"
  voltage_rating = "125 V dc"
  interrupting   = "10 kA"
  on             = bus.house_post
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
  short_circuit      = "4.8 kA"
  discharge_limit    = "150 A"
  charge_limit       = "100 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  compartment        = compartment.saloon

  bms {
    opens_charge_below  = "2 C"
    opens_above         = "15 V"
    warns_before_cutoff = true
  }
}

fuse "house_main" {
  label          = "House main, 150 A"
  kind           = "class-t"
  rating         = "150 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
  compartment    = compartment.saloon
}

conductor "house_lead" {
  from       = fuse.house_main.load
  to         = bus.house_post
  size       = let.heavy
  length     = "0.4 m"
  insulation = let.jacket
  bundle     = 2
}

bus "house_post" {
  label       = "House post, ahead of the switch"
  rating      = "250 A"
  studs       = 8
  compartment = compartment.saloon
}

conductor "post_to_switch" {
  from       = bus.house_post
  to         = switch.house_off.battery
  size       = "1/0 AWG"
  length     = "0.3 m"
  insulation = let.jacket
  bundle     = 2
}

switch "house_off" {
  label          = "House disconnect"
  kind           = "disconnect"
  terminals      = ["battery", "panel"]
  rating         = "275 A"
  voltage_rating = "48 V dc"
  poles          = 1
  compartment    = compartment.saloon

  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

conductor "panel_feed" {
  from       = switch.house_off.panel
  to         = bus.panel
  size       = "1/0 AWG"
  length     = let.panel_way
  insulation = let.jacket
  bundle     = 2
}

bus "panel" {
  label       = "Breaker panel"
  rating      = "150 A"
  studs       = 12
  compartment = compartment.saloon
}

# --- what stays on when everything is off -------------------------------------------------------

fuse "bilge" {
  label          = "Bilge pump, 5 A, at the house battery"
  kind           = "cartridge"
  rating         = "5 A"
  voltage_rating = "125 V dc"
  interrupting   = "10 kA"
  on             = source.house
}

conductor "bilge_feed" {
  from       = fuse.bilge.load
  to         = switch.float.feed
  size       = "14 AWG"
  length     = "2.4 m"
  insulation = let.jacket
  bundle     = 2
  sheathed   = true
  through    = [compartment.saloon, compartment.bilge]
}

switch "float" {
  label          = "Float switch"
  kind           = "manual"
  terminals      = ["feed", "pump"]
  rating         = "10 A"
  voltage_rating = "30 V dc"
  poles          = 1
  compartment    = compartment.bilge

  position "down" {}
  position "up" { joins = [["feed", "pump"]] }
}

conductor "bilge_lead" {
  from       = switch.float.pump
  to         = load.bilge_pump
  size       = "14 AWG"
  length     = "0.3 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.bilge]
}

load "bilge_pump" {
  label       = "Bilge pump"
  kind        = "bilge-pump"
  draw        = "2.8 A"
  max_fuse    = "5 A"
  voltage_min = "9 V"
  voltage_max = "15 V"
  critical    = "life-safety"
  own_battery = false
  control     = switch.float
  compartment = compartment.bilge
}

branch "monoxide" {
  label = "Carbon monoxide alarm"
  from  = bus.house_post

  fuse {
    label          = "Alarm, 1 A, ahead of the switch"
    kind           = "cartridge"
    rating         = "1 A"
    voltage_rating = "125 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "16 AWG"
    length     = let.half_hull
    insulation = let.jacket
    bundle     = 2
  }

  load "alarm" {
    kind        = "alarm"
    draw        = "80 mA"
    voltage_min = "9 V"
    voltage_max = "16 V"
    critical    = "life-safety"
    own_battery = false
  }
}

# --- sun ----------------------------------------------------------------------------------------

source "sun" {
  label           = "Deck modules"
  kind            = "solar"
  voltage         = "18 V"
  series          = 1
  parallel        = 2
  voc             = "22.8 V"
  isc             = "3.4 A"
  vmp             = "18.6 V"
  imp             = "3.2 A"
  voc_coefficient = "-0.30 %/C"
  peak_sun        = "4 h"
  max_series_fuse = "10 A"
}

conductor "sun_run" {
  from           = source.sun
  to             = converter.tracker.in
  size           = "12 AWG"
  length         = "5 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
  bundle         = 2
  sheathed       = true
}

converter "tracker" {
  label          = "Solar controller"
  kind           = "mppt"
  rated          = "200 W"
  efficiency     = 0.96
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  charges        = [source.house]
  compartment    = compartment.saloon

  input {
    voltage_min = "15 V"
    voltage_max = "75 V"
    current_max = "15 A"
    accepts     = ["solar"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "15 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "tracker_out" {
  from       = converter.tracker.out
  to         = fuse.tracker_out.load
  size       = "10 AWG"
  length     = "0.8 m"
  insulation = let.jacket
  bundle     = 2
}

fuse "tracker_out" {
  label          = "Solar controller, 20 A"
  kind           = "cartridge"
  rating         = "20 A"
  voltage_rating = "125 V dc"
  interrupting   = "10 kA"
  on             = bus.house_post
}

# --- shore, for the charger alone -----------------------------------------------------------------

source "shore" {
  label         = "Dock pedestal"
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "5 kA"
  neutral_bond  = "bonded"
}

fuse "pedestal" {
  label          = "Pedestal breaker, 30 A"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  on             = source.shore
}

conductor "dock_cord" {
  from           = fuse.pedestal.load
  to             = connector.inlet.free
  size           = "10 AWG"
  length         = "9 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

connector "inlet" {
  label          = "Shore inlet"
  style          = "30 A twist inlet"
  follows        = source.shore
  rating         = "30 A"
  voltage_rating = "125 V ac"
  key            = "twist"
  exposed        = "fixed"
}

conductor "inlet_lead" {
  from           = connector.inlet.fixed
  to             = fuse.shore_main.line
  size           = "10 AWG"
  length         = "1.5 m"
  insulation     = "105 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

fuse "shore_main" {
  label          = "Shore main and charger, 15 A"
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  trip           = "elci 30 mA"
}

conductor "charger_in" {
  from           = fuse.shore_main.load
  to             = converter.shore_charger.in
  size           = "14 AWG"
  length         = "0.8 m"
  insulation     = "105 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "14 AWG"
}

converter "shore_charger" {
  label              = "Shore charger"
  kind               = "charger"
  rated              = "360 W"
  efficiency         = 0.9
  isolated           = true
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  charges            = [source.house]
  compartment        = compartment.saloon

  input {
    voltage_min = "90 V ac"
    voltage_max = "135 V ac"
    current_max = "5 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "25 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "charger_out" {
  from       = converter.shore_charger.out
  to         = fuse.charger_out.load
  size       = "8 AWG"
  length     = "0.9 m"
  insulation = let.jacket
  bundle     = 2
}

fuse "charger_out" {
  label          = "Shore charger, 40 A"
  kind           = "cartridge"
  rating         = "40 A"
  voltage_rating = "125 V dc"
  interrupting   = "10 kA"
  on             = bus.house_post
}

# --- foredeck -----------------------------------------------------------------------------------

branch "windlass" {
  label = "Windlass"
  from  = source.house

  fuse {
    label          = "Windlass, 70 A, at the house battery"
    kind           = "terminal"
    rating         = "70 A"
    voltage_rating = "58 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "2 AWG"
    length     = times(let.half_hull, 1.5)
    insulation = let.jacket
    bundle     = 2
    sheathed   = true
    through    = [compartment.saloon]
  }

  load "windlass" {
    label    = "Windlass"
    kind     = "motor"
    draw     = "60 A"
    max_fuse = "70 A"
    switched = true
    critical = "none"
  }
}

waiver "windlass" {
  rule   = "overcurrent/undersize-device"
  at     = branch.windlass.fuse
  reason = "The maker names 70 A. The windlass runs for two minutes at a time, with the engine on; the device has never opened."
  by     = "the owner"
  until  = "2028-06-01"
}

# --- panel --------------------------------------------------------------------------------------

branch "running_lights" {
  label = "Running lights"
  from  = bus.panel

  fuse {
    label             = "1 Running lights, 5 A"
    kind              = "blade"
    rating            = "5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "14 AWG"
    length     = "6.5 m"
    insulation = let.jacket
    bundle     = 4
    sheathed   = true
  }

  load "sidelights" {
    kind        = "light"
    draw        = "0.5 A"
    voltage_min = "9 V"
    voltage_max = "32 V"
    critical    = "navigation"
    switched    = true
  }

  load "steaming_light" {
    kind        = "light"
    draw        = "0.3 A"
    voltage_min = "9 V"
    voltage_max = "32 V"
    critical    = "navigation"
    switched    = true
  }
}

branch "anchor_light" {
  label = "Anchor light"
  from  = bus.panel

  fuse {
    label             = "2 Anchor light, 3 A"
    kind              = "blade"
    rating            = "3 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "14 AWG"
    length     = "13 m"
    insulation = let.jacket
    bundle     = 6
    sheathed   = true
  }

  load "anchor_light" {
    kind        = "light"
    draw        = "0.25 A"
    voltage_min = "9 V"
    voltage_max = "32 V"
    critical    = "navigation"
    switched    = true
  }
}

branch "radio" {
  label = "Radio"
  from  = bus.panel

  fuse {
    label             = "3 Radio, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "10 AWG"
    length     = "1.6 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "radio" {
    kind        = "electronics"
    draw        = "5.5 A"
    max_fuse    = "10 A"
    voltage_min = "9 V"
    voltage_max = "15.6 V"
    critical    = "navigation"
  }
}

branch "instruments" {
  label = "Instruments and pilot"
  from  = bus.panel

  fuse {
    label             = "4 Instruments and pilot, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "10 AWG"
    length     = "2 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "depth_and_wind" {
    kind        = "electronics"
    draw        = "1.2 A"
    voltage_min = "9 V"
    voltage_max = "32 V"
    critical    = "navigation"
  }

  load "pilot" {
    kind     = "motor"
    draw     = "4 A"
    critical = "none"
  }
}

branch "saloon_lights" {
  label = "Saloon lights"
  from  = bus.panel

  fuse {
    label             = "5 Saloon lights, 5 A"
    kind              = "blade"
    rating            = "5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "16 AWG"
    length     = let.half_hull
    insulation = let.jacket
    bundle     = 6
  }

  load "saloon_light" {
    kind     = "light"
    draw     = times("0.25 A", 4)
    critical = "none"
  }
}

branch "fridge" {
  label = "Fridge"
  from  = bus.panel

  fuse {
    label             = "6 Fridge, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "10 AWG"
    length     = "2.6 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "compressor" {
    kind     = "motor"
    draw     = "4.5 A"
    critical = "none"
  }
}

branch "water" {
  label = "Fresh water pump"
  from  = bus.panel

  fuse {
    label             = "7 Fresh water, 7.5 A"
    kind              = "blade"
    rating            = "7.5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.house_main
  }

  conductor {
    size       = "14 AWG"
    length     = "2.8 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "pressure_pump" {
    kind     = "motor"
    draw     = "4 A"
    critical = "none"
  }
}

# --- how it is used -----------------------------------------------------------------------------

mode "sailing" {
  state = {
    source.shore     = "absent"
    switch.house_off = "on"
  }
  occupied = true
}

mode "berthed" {
  state = {
    source.shore      = "present"
    source.alternator = "absent"
  }
  occupied = true
}

mode "laid_up" {
  state = {
    source.shore      = "absent"
    source.alternator = "absent"
    switch.house_off  = "off"
    switch.engine_off = "off"
  }
  occupied = false
  notes    = "Ashore under a cover; the bilge pump stays live."
}
