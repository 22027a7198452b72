# Every block type and every attribute of the language, once.
system "gull" {
  label    = "Gull"
  notes    = <<-EOT
    Two lines
    of notes.
  EOT
  title    = "A trailer with \"everything\" in it"
  practice = ["us-rv", "general"]
  ambient  = "104 F"
  coldest  = "-20 C"
  revision = "C, 2026-11-25"
}

let {
  lamps  = 3
  gauges = [10, 8]
  house  = "100 A"
}

let {
  spare = times(let.house, 0.25)
  names = [for g in let.gauges : awg(g)]
}

compartment "bow_box" {
  ambient       = "45 C"
  ventilated    = true
  occupied      = false
  engine        = false
  fuel_vapor    = true
  gas_appliance = false
  wet           = true
  unheated      = true
  coldest       = "-10 C"
  vented_to     = "outside, low"
}

source "pack" {
  label              = "Pack"
  compartment        = compartment.bow_box
  ignition_protected = false
  kind               = "battery"
  voltage            = "12.8 V"
  always             = null
  chemistry          = "lifepo4"
  capacity           = "1.28 kWh"
  resistance         = "6 mohm"
  discharge_limit    = let.house
  surge_limit        = "200 A"
  charge_limit       = "50 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  removable          = true
  usable             = "80 %"
  role               = "house"
  cells              = 4
  series             = 1
  parallel           = 2
  short_circuit      = "2 kA"
  max_series         = 4

  bms {
    opens_charge_below  = "0 C"
    opens_above         = "15 V"
    warns_before_cutoff = true
  }
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V dc"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "roof" {
  kind            = "solar"
  voc             = "22.5 V"
  isc             = "6 A"
  vmp             = "18.2 V"
  imp             = "5.5 A"
  voc_coefficient = "-0.29 %/C"
  coldest         = "-15 C"
  peak_sun        = "4.5 h"
  max_series_fuse = "15 A"
  series          = 2
}

source "inlet" {
  kind          = "shore"
  voltage       = "120 V ac"
  rated         = "30 A"
  neutral_bond  = "bonded"
  short_circuit = "5 kA"
  always        = false
}

source "generator" {
  kind             = "generator"
  voltage          = "120 V ac"
  parallel_capable = true
}

fuse "main" {
  part_of            = source.pack
  compartment        = compartment.bow_box
  ignition_protected = true
  kind               = "terminal"
  rating             = "60 A"
  voltage_rating     = ["58 V dc", "125 V ac"]
  interrupting       = "10 kA"
  curve              = [["81 A", "3600 s"], ["120 A", "60 s"], ["360 A", "5 s"]]
  polarized          = false
  on                 = source.pack
}

fuse "shore_main" {
  kind              = "breaker"
  rating            = "30 A"
  voltage_rating    = "240 V ac"
  reset             = "automatic"
  trip              = "gfci 5 mA"
  series_rated_with = fuse.main
}

switch "select" {
  kind            = "manual"
  terminals       = ["pack", "both on", "1"]
  any_order       = true
  rating          = "100 A"
  voltage_rating  = "32 V dc"
  transition      = "make-before-break"
  poles           = 2
  reachable_while = [mode.parked, mode.towing]
  momentary       = false
  on              = bus.panel

  position "off" {}
  position "pack" { joins = [["pack", "1"]] }
  position "both on" { joins = [["pack", "both on", "1"]] }
}

switch "charge_relay" {
  kind      = "isolator"
  terminals = ["start", "house"]
  follows   = [source.engine, connector.tow_plug]
  senses    = ["start"]
  cut_in    = "13.3 V"
  cut_out   = "12.8 V"

  position "open" {}
  position "closed" { joins = [["start", "house"]] }
}

converter "boost" {
  compartment        = compartment.bow_box
  kind               = "dc-dc"
  rated              = "400 W"
  charges            = [source.pack]
  efficiency         = 0.9
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  idle               = "50 mA"
  inrush             = "40 A"
  trigger            = "13.2 V"
  needs_battery      = true
  cold_charge_cutoff = false
  neutral_bond       = "floating"
  parallel_capable   = false

  input {
    voltage_min = "9 V"
    voltage_max = "32 V"
    current_max = "40 A"
    accepts     = ["solar", "dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
    profile     = "lifepo4"
    float       = "13.5 V"
    equalize    = "14.4 V"
  }
}

converter "second" {
  kind    = "dc-dc"
  trigger = "ignition"
}

bus "panel" {
  rating   = "150 A"
  studs    = 6
  polarity = "pair"
}

bus "chassis" { polarity = "chassis" }

connector "tow_plug" {
  style              = "seven-way round"
  rating             = "30 A"
  voltage_rating     = "24 V"
  key                = "none"
  contacts           = ["brakes", "left turn"]
  follows            = source.engine
  tow                = true
  apart_from         = [connector.pack_plug]
  exposed            = "free"
  load_break         = false
  contact_resistance = "5 mohm"
}

connector "pack_plug" {
  mated = "always"
  on    = source.pack.neg
}

load "pump" {
  compartment   = compartment.bow_box
  kind          = "motor"
  draw          = sum("3 A", "500 mA")
  behavior      = "constant-power"
  voltage_min   = "10 V"
  voltage_max   = "15 V"
  rated_voltage = "12 V"
  hours_per_day = "30 min"
  runs_in       = [mode.parked]
  control       = switch.select
  receptacle    = false
  surge         = "12 A"
  surge_time    = "0.5 s"
  critical      = "none"
  needed_in     = [mode.towing]
  own_battery   = true
  hold_up       = "2 h"
  max_fuse      = "10 A"
  spark         = true
}

load "kettle" { power = "${let.lamps * 100} W" }

load "heater" { resistance = "1.2 ohm" }

conductor "feed" {
  label          = "Feed\u0007"
  from           = fuse.main.load
  to             = switch.select["both on"]
  size           = let.names[1]
  length         = "7 ft"
  polarity       = "pair"
  insulation     = "221 F"
  voltage_rating = "600 V"
  material       = "tinned-copper"
  stranding      = "stranded"
  bundle         = 4
  through        = [compartment.bow_box]
  sheathed       = true
  color          = "red and black"
  grounding      = "12 AWG"
  parallel       = 2
  cranking       = false
}

conductor "ground" {
  from     = bus.panel.neg
  to       = bus.chassis
  size     = "6 mm2"
  polarity = "negative"
}

conductor "brakes" {
  from     = connector.tow_plug.free.brakes
  to       = load.pump.pos
  size     = "2/0 AWG"
  length   = "0.2 m"
  polarity = "positive"
}

conductor "one" {
  from = switch.select["1"]
  to   = converter.boost.in
}

branch "lights" {
  part_of = source.pack
  label   = "Lights"
  from    = bus.panel

  fuse {
    kind   = "blade"
    rating = "5 A"
  }

  conductor {
    size   = "16 AWG"
    length = "4 m"
  }

  load "bench" {
    draw     = "1 A"
    switched = true
  }

  load "step" { draw = "0 A" }
}

mode "parked" {
  state    = { switch.select = "both on", connector.tow_plug = "unmated", source.pack = "present" }
  occupied = true
  by       = "habit"
}

mode "towing" {
  state = {
    switch.select  = "off"
    source.engine  = "present"
  }
}

interlock "one_feed" {
  never = [{ switch.select = "pack", source.engine = "present" }, { source.pack = "absent" }]
  by    = "hardware"
}

waiver "known" {
  rule   = "overcurrent/unprotected-run"
  at     = conductor.feed
  reason = "Sheathed all the way."
  by     = "the owner"
  until  = "2027-05-01"
}

house_rule "no_thin_feeds" {
  for      = conductor
  where    = length > "1 m"
  require  = size >= "16 AWG" && let.lamps < 4
  severity = "caution"
  message  = "Too thin."
  cite     = "club rule 4"
}

use "rear" {
  kit   = "./kits/lamp.wiring.hcl"
  feed  = bus.panel
  power = "${let.lamps} W"
}

conductor "from_kit" {
  from = use.rear.fuse.main.load
  to   = branch.lights.load.step
}
