system "gull" {
  title    = "Bicycle-repair trailer with a lift-out pack"
  practice = ["us-rv"]
  ambient  = "40 C"
}

let {
  feed_length = "2.5 m"
  lamps       = 3
}

compartment "bow_box" {
  ventilated = true
  unheated   = true
}

source "pack" {
  kind           = "battery"
  label          = "Pack"
  chemistry      = "lifepo4"
  voltage        = "12.8 V"
  capacity       = "100 Ah"
  charge_limit   = "50 A"
  removable      = true
  compartment    = compartment.bow_box

  bms {
    opens_charge_below  = "0 C"
    warns_before_cutoff = false
  }
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

fuse "pack_main" {
  kind           = "terminal"
  label          = "Pack main"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

switch "house_select" {
  terminals  = ["pack", "tow", "house"]
  rating     = "100 A"
  transition = "break-before-make"

  position "off" {}
  position "pack" { joins = [["pack", "house"]] }
  position "tow" { joins = [["tow", "house"]] }
}

conductor "pack_feed" {
  from       = fuse.pack_main.load
  to         = switch.house_select.pack
  size       = awg(6)
  length     = let.feed_length
  insulation = "105 C"
  through    = [compartment.bow_box]
}

fuse "tow_main" {
  kind   = "breaker"
  rating = "30 A"
  reset  = "manual"
  on     = source.engine
}

connector "tow_plug" {
  style    = "seven-way round"
  rating   = "30 A"
  contacts = ["brakes"]
  tow      = true
  exposed  = "free"
}

conductor "tow_lead" {
  from   = fuse.tow_main.load
  to     = connector.tow_plug.fixed
  size   = "10 AWG"
  length = "6 m"
}

conductor "tow_feed" {
  from   = connector.tow_plug.free
  to     = switch.house_select.tow
  size   = "10 AWG"
  length = "12 ft"
}

bus "panel" {
  rating = "100 A"
}

conductor "house_feed" {
  from   = switch.house_select.house
  to     = bus.panel
  size   = "6 AWG"
  length = "0.6 m"
}

branch "lights" {
  from = bus.panel

  fuse {
    kind   = "blade"
    rating = "5 A"
  }

  conductor {
    size   = "16 AWG"
    length = "4 m"
  }

  load "bench" {
    kind     = "light"
    draw     = times("0.4 A", let.lamps)
    switched = true
  }

  load "step" {
    kind = "light"
    draw = "300 mA"
  }
}

use "rear" {
  kit    = "./kits/lamp.wiring.hcl"
  feed   = bus.panel
  length = "7 ft"
}

mode "parked" {
  state    = { switch.house_select = "pack", connector.tow_plug = "unmated" }
  occupied = true
}

mode "towing" {
  state    = { switch.house_select = "tow", connector.tow_plug = "mated", source.engine = "present" }
  occupied = false
}

interlock "pack_out" {
  never = [{ switch.house_select = "pack", source.pack = "absent" }]
  by    = "habit"
  notes = "The pack's lead is plugged in before the switch is thrown."
}

house_rule "no_thin_feeds" {
  for      = conductor
  require  = size >= "16 AWG"
  severity = "caution"
  message  = "Nothing thinner than 16 AWG on this trailer."
}

waiver "tow_breaker" {
  rule   = "overcurrent/unprotected-run"
  at     = conductor.tow_lead
  reason = "The vehicle's own fuse is in the lead; its rating is being looked up."
  by     = "the owner"
  until  = "2027-05-01"
}
