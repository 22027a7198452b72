# A two-berth trailer that is lived in from a lift-out pack.
#
# The pack slides into a dock in the front box: its plugs mate as it goes home and part as it comes
# out. On the road a boost at the hitch lifts the vehicle's 12 V to 48 V, so that a thin wire carries
# charge to the pack's own solar port; in camp a hand switch gives that port the roof instead. A small
# fixed battery keeps the gas alarm alive whatever else is switched, and can light the trailer while
# the pack is away. A third battery does nothing but stop a trailer that has come off.
system "heron" {
  title    = "Two-berth trailer with a lift-out pack"
  practice = ["us-rv"]
  ambient  = "40 C"
  coldest  = "-20 C"
  revision = "4, 2026-11-14"
}

let {
  roof_modules = 2
  jacket       = "105 C"
  dock_to_knob = "0.9 m"
  road_feed    = awg(10)
}

# --- spaces -------------------------------------------------------------------------------------

compartment "engine_bay" {
  label      = "Engine bay of the vehicle"
  ambient    = "50 C"
  engine     = true
  ventilated = true
  occupied   = false
}

compartment "front_box" {
  label      = "Front box"
  ambient    = "45 C"
  ventilated = true
  occupied   = false
  unheated   = true
  coldest    = "-20 C"
  notes      = "Pack, fixed battery, boost. The gas bottles ride outside, on the drawbar."
}

compartment "cabin" {
  label         = "Cabin"
  ambient       = "40 C"
  ventilated    = true
  occupied      = true
  gas_appliance = true
}

# --- the vehicle --------------------------------------------------------------------------------

source "start" {
  label         = "Vehicle battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "70 Ah"
  short_circuit = "2 kA"
  compartment   = compartment.engine_bay
}

fuse "trailer_feed" {
  label          = "Trailer charge, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
  compartment    = compartment.engine_bay
}

conductor "vehicle_run" {
  from       = fuse.trailer_feed.load
  to         = connector.tow_plug.fixed
  size       = let.road_feed
  length     = "5.2 m"
  insulation = let.jacket
  bundle     = 4
  sheathed   = true
  through    = [compartment.engine_bay]
}

connector "tow_plug" {
  label              = "Tow plug"
  style              = "seven-way blade"
  contacts           = ["brakes"]
  rating             = "30 A"
  voltage_rating     = "32 V dc"
  key                = "slot at the top"
  tow                = true
  exposed            = "free"
  load_break         = true
  contact_resistance = "2 mohm"
  notes              = "The vehicle's own brake controller and lamps use the other pins; its side is not drawn."
}

# --- charge from the road -----------------------------------------------------------------------

conductor "hitch_lead" {
  from       = connector.tow_plug.free
  to         = converter.boost.in
  size       = let.road_feed
  length     = "1.2 m"
  insulation = let.jacket
  bundle     = 4
  sheathed   = true
}

converter "boost" {
  label          = "Hitch boost"
  kind           = "dc-dc"
  rated          = "170 W"
  efficiency     = 0.92
  isolated       = false
  blocks_reverse = true
  limits_current = true
  trigger        = "ignition"
  charges        = [source.pack]
  compartment    = compartment.front_box

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    current_max = "18 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "48 V"
    current_max = "3.5 A"
  }
}

conductor "boost_run" {
  from           = converter.boost.out
  to             = switch.charge_select.road
  size           = "14 AWG"
  length         = "2.6 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
  bundle         = 2
  sheathed       = true
}

# --- roof ---------------------------------------------------------------------------------------

source "roof" {
  label           = "Roof modules"
  kind            = "solar"
  voltage         = "36 V"
  series          = let.roof_modules
  parallel        = 1
  voc             = "21.8 V"
  isc             = "6.1 A"
  vmp             = "18 V"
  imp             = "5.6 A"
  voc_coefficient = "-0.29 %/C"
  coldest         = "-20 C"
  peak_sun        = "4.5 h"
  max_series_fuse = "15 A"
}

conductor "roof_run" {
  from           = source.roof
  to             = switch.charge_select.roof
  size           = "10 AWG"
  length         = "5 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
  bundle         = 2
  sheathed       = true
}

switch "charge_select" {
  label          = "Charge from"
  kind           = "manual"
  terminals      = ["roof", "road", "port"]
  rating         = "20 A"
  voltage_rating = "125 V dc"
  poles          = 1
  transition     = "break-before-make"
  compartment    = compartment.front_box

  position "roof" { joins = [["roof", "port"]] }
  position "road" { joins = [["road", "port"]] }
}

conductor "port_lead" {
  from           = switch.charge_select.port
  to             = connector.dock_charge.fixed
  size           = "10 AWG"
  length         = "0.8 m"
  insulation     = "90 C"
  voltage_rating = "600 V dc"
  bundle         = 2
  through        = [compartment.front_box]
}

# --- the pack, all that lifts out -----------------------------------------------------------------

connector "dock_charge" {
  label          = "Dock, charge side"
  style          = "blind-mate dock, small"
  follows        = source.pack
  rating         = "20 A"
  voltage_rating = "100 V dc"
  key            = "two pins of unlike width"
  exposed        = "none"
  load_break     = true
}

conductor "port_to_tracker" {
  part_of    = source.pack
  from       = connector.dock_charge.free
  to         = converter.pack_tracker.in
  size       = "10 AWG"
  length     = "0.1 m"
  insulation = let.jacket
  bundle     = 2
}

converter "pack_tracker" {
  label              = "Tracker in the pack"
  part_of            = source.pack
  kind               = "mppt"
  rated              = "280 W"
  efficiency         = 0.95
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  charges            = [source.pack]

  input {
    voltage_min = "20 V"
    voltage_max = "60 V"
    current_max = "15 A"
    accepts     = ["solar", "dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

conductor "tracker_out" {
  part_of    = source.pack
  from       = converter.pack_tracker.out
  to         = fuse.tracker.load
  size       = "10 AWG"
  length     = "0.15 m"
  insulation = let.jacket
  bundle     = 2
}

fuse "tracker" {
  label          = "Tracker to cells, 30 A"
  part_of        = source.pack
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

source "pack" {
  label              = "Lift-out pack"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  usable             = "90 %"
  short_circuit      = "2.6 kA"
  discharge_limit    = "100 A"
  charge_limit       = "50 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  removable          = true
  max_series         = 4
  compartment        = compartment.front_box

  bms {
    opens_charge_below  = "2 C"
    opens_above         = "15 V"
    warns_before_cutoff = true
  }
}

fuse "pack_main" {
  label          = "Pack main, 60 A"
  part_of        = source.pack
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

conductor "pack_lead" {
  part_of    = source.pack
  from       = fuse.pack_main.load
  to         = connector.dock_power.free
  size       = "4 AWG"
  length     = "0.2 m"
  insulation = let.jacket
  bundle     = 2
}

connector "dock_power" {
  label              = "Dock, power side"
  style              = "blind-mate dock, large"
  follows            = source.pack
  rating             = "100 A"
  voltage_rating     = "100 V dc"
  key                = "two pins of unlike width"
  exposed            = "none"
  contact_resistance = "0.3 mohm"
}

conductor "dock_to_select" {
  from       = connector.dock_power.fixed
  to         = switch.house_select.pack
  size       = "4 AWG"
  length     = let.dock_to_knob
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.front_box]
}

# --- the fixed battery, with what must never go dark --------------------------------------------

source "fixed" {
  label           = "Fixed battery"
  kind            = "battery"
  role            = "house"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "50 Ah"
  short_circuit   = "1.1 kA"
  discharge_limit = "50 A"
  charge_limit    = "15 A"
  compartment     = compartment.front_box
}

fuse "fixed_main" {
  label          = "Fixed battery to selector, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.fixed
}

conductor "fixed_to_select" {
  from       = fuse.fixed_main.load
  to         = switch.house_select.reserve
  size       = "4 AWG"
  length     = "0.8 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.front_box]
}

branch "gas_alarm" {
  label = "Gas alarm"
  from  = source.fixed

  fuse {
    label          = "Gas alarm, 2 A, ahead of every switch"
    kind           = "cartridge"
    rating         = "2 A"
    voltage_rating = "125 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "16 AWG"
    length     = "3.5 m"
    insulation = let.jacket
    bundle     = 2
    through    = [compartment.front_box, compartment.cabin]
  }

  load "gas_alarm" {
    kind        = "alarm"
    draw        = "90 mA"
    voltage_min = "8 V"
    voltage_max = "16 V"
    critical    = "life-safety"
    own_battery = false
    compartment = compartment.cabin
  }
}

fuse "load_center_out" {
  label          = "Load centre charger, at the fixed battery, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.fixed
}

conductor "load_center_run" {
  from       = converter.load_center.out
  to         = fuse.load_center_out.load
  size       = "10 AWG"
  length     = "2.2 m"
  insulation = let.jacket
  bundle     = 2
  through    = [compartment.cabin, compartment.front_box]
}

# --- house --------------------------------------------------------------------------------------

switch "house_select" {
  label           = "House from"
  kind            = "manual"
  terminals       = ["pack", "reserve", "house"]
  rating          = "100 A"
  voltage_rating  = "48 V dc"
  poles           = 1
  transition      = "break-before-make"
  reachable_while = [mode.camping, mode.stored]
  compartment     = compartment.front_box

  position "pack" { joins = [["pack", "house"]] }
  position "off" {}
  position "reserve" { joins = [["reserve", "house"]] }
}

conductor "panel_feed" {
  from       = switch.house_select.house
  to         = bus.dc_half
  size       = "4 AWG"
  length     = "0.5 m"
  insulation = let.jacket
  bundle     = 2
}

bus "dc_half" {
  label       = "Load centre, DC half"
  rating      = "100 A"
  studs       = 12
  compartment = compartment.cabin
}

branch "ceiling" {
  label = "Ceiling lights"
  from  = bus.dc_half

  fuse {
    label             = "1 Ceiling lights, 5 A"
    kind              = "blade"
    rating            = "5 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.pack_main
  }

  conductor {
    size       = "16 AWG"
    length     = "3 m"
    insulation = let.jacket
    bundle     = 6
  }

  load "galley_light" {
    kind     = "light"
    draw     = times("0.3 A", 3)
    critical = "none"
    switched = true
  }

  load "entry_light" {
    kind     = "light"
    draw     = "0.3 A"
    critical = "none"
  }
}

branch "water" {
  label = "Water pump"
  from  = bus.dc_half

  fuse {
    label             = "2 Water pump, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.pack_main
  }

  conductor {
    size       = "12 AWG"
    length     = "2.5 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "pump" {
    kind     = "motor"
    draw     = "6 A"
    critical = "none"
    max_fuse = "10 A"
  }
}

branch "fridge" {
  label = "Fridge"
  from  = bus.dc_half

  fuse {
    label             = "3 Fridge, 10 A"
    kind              = "blade"
    rating            = "10 A"
    voltage_rating    = "32 V dc"
    interrupting      = "1 kA"
    series_rated_with = fuse.pack_main
  }

  conductor {
    size       = "10 AWG"
    length     = "2.8 m"
    insulation = let.jacket
    bundle     = 4
  }

  load "compressor" {
    kind        = "motor"
    draw        = "4.2 A"
    voltage_min = "10.4 V"
    critical    = "none"
  }
}

# --- shore --------------------------------------------------------------------------------------

source "shore" {
  label         = "Camp-site post"
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  short_circuit = "5 kA"
  neutral_bond  = "bonded"
}

fuse "post" {
  label          = "Breaker in the post, 30 A"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  on             = source.shore
}

conductor "cord" {
  from           = fuse.post.load
  to             = fuse.ac_main.line
  size           = "10 AWG"
  length         = "7.6 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  sheathed       = true
  grounding      = "10 AWG"
}

fuse "ac_main" {
  label          = "AC main, 30 A, where the cord is made fast"
  kind           = "breaker"
  rating         = "30 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
}

conductor "ac_main_lead" {
  from           = fuse.ac_main.load
  to             = bus.ac_half
  size           = "10 AWG"
  length         = "0.2 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  grounding      = "10 AWG"
}

bus "ac_half" {
  label       = "Load centre, AC half"
  rating      = "50 A"
  compartment = compartment.cabin
}

fuse "ac_load_center" {
  label          = "AC 1 Load centre charger, 15 A"
  kind           = "breaker"
  rating         = "15 A"
  voltage_rating = "240 V ac"
  interrupting   = "10 kA"
  reset          = "manual"
  on             = bus.ac_half
}

conductor "ac_load_center_lead" {
  from           = fuse.ac_load_center.load
  to             = converter.load_center.in
  size           = "14 AWG"
  length         = "0.3 m"
  insulation     = "90 C"
  voltage_rating = "600 V ac"
  bundle         = 2
  grounding      = "14 AWG"
}

converter "load_center" {
  label          = "Load centre, charger"
  kind           = "load-center"
  rated          = "220 W"
  efficiency     = 0.87
  isolated       = true
  blocks_reverse = true
  limits_current = true
  charges        = [source.fixed]
  compartment    = compartment.cabin

  input {
    voltage_min = "105 V ac"
    voltage_max = "130 V ac"
    current_max = "4 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "15 A"
    profile     = "agm"
    float       = "13.5 V"
  }
}

branch "ac_outlet" {
  label = "Galley outlet"
  from  = bus.ac_half

  fuse {
    label          = "AC 2 Galley outlet, 15 A"
    kind           = "breaker"
    rating         = "15 A"
    voltage_rating = "240 V ac"
    interrupting   = "10 kA"
    reset          = "manual"
    trip           = "gfci 5 mA"
  }

  conductor {
    size           = "14 AWG"
    length         = "2 m"
    insulation     = "90 C"
    voltage_rating = "600 V ac"
    bundle         = 2
    sheathed       = true
    grounding      = "14 AWG"
  }

  load "outlet" {
    kind       = "other"
    draw       = "12 A"
    critical   = "none"
    receptacle = true

    hours_per_day = "1 h"
    notes         = "Kettle or toaster."
  }
}

# --- brakes -------------------------------------------------------------------------------------

source "breakaway" {
  label        = "Breakaway battery"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "12 Ah"
  resistance   = "16 mohm"
  charge_limit = "3 A"
  compartment  = compartment.front_box
  notes        = "Bolted down. Charged on the bench before the first trip and after every test of the pin."
}

fuse "breakaway" {
  label          = "Breakaway, 20 A, manual reset"
  kind           = "breaker"
  rating         = "20 A"
  voltage_rating = "32 V dc"
  interrupting   = "3 kA"
  reset          = "manual"
  on             = source.breakaway
}

conductor "breakaway_lead" {
  from       = fuse.breakaway.load
  to         = switch.breakaway.battery
  size       = "10 AWG"
  length     = "0.5 m"
  insulation = let.jacket
  bundle     = 2
}

switch "breakaway" {
  label          = "Breakaway switch"
  kind           = "breakaway"
  terminals      = ["battery", "brakes"]
  rating         = "20 A"
  voltage_rating = "16 V dc"
  poles          = 1

  position "pin in" {}
  position "pin out" { joins = [["battery", "brakes"]] }
}

conductor "breakaway_run" {
  from       = switch.breakaway.brakes
  to         = load.brakes
  size       = "10 AWG"
  length     = "2.8 m"
  insulation = let.jacket
  bundle     = 4
  sheathed   = true
}

conductor "brake_line" {
  from       = connector.tow_plug.free.brakes
  to         = load.brakes.pos
  polarity   = "positive"
  size       = "10 AWG"
  length     = "3.2 m"
  insulation = let.jacket
  bundle     = 4
  sheathed   = true
}

conductor "brake_return" {
  from       = load.brakes.neg
  to         = connector.tow_plug.free.neg
  polarity   = "negative"
  size       = "10 AWG"
  length     = "3.2 m"
  insulation = let.jacket
  bundle     = 4
  sheathed   = true
}

load "brakes" {
  label         = "Brake magnets"
  kind          = "brake"
  draw          = "5.8 A"
  behavior      = "resistive"
  rated_voltage = "12 V"
  voltage_min   = "8 V"
  voltage_max   = "16 V"
  critical      = "life-safety"
  own_battery   = false
  needed_in     = [mode.towing]
}

# --- how it is used -----------------------------------------------------------------------------

mode "towing" {
  state = {
    connector.tow_plug   = "mated"
    source.shore         = "absent"
    source.pack          = "present"
    switch.charge_select = "road"
    switch.house_select  = "pack"
  }
  occupied = false
  notes    = "The fridge runs on the way."
}

mode "camping" {
  state = {
    connector.tow_plug   = "unmated"
    switch.charge_select = "roof"
  }
  occupied = true
  notes    = "The pack may be away: it is carried to the house to run other things."
}

mode "stored" {
  state = {
    connector.tow_plug  = "unmated"
    source.pack         = "absent"
    switch.house_select = "off"
  }
  occupied = false
  by       = "habit"
}

interlock "dock_latch" {
  never = [{ switch.house_select = "pack", source.pack = "absent" }]
  by    = "hardware"
  notes = "A bar on the knob of \"House from\" holds the dock's latch while the knob points to the pack."
}
