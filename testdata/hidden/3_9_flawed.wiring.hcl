# The return that was a tail-light wire: a new plus for a converter of 25 A, and 18 AWG of the maker's pigtail from the
# frame home to the plug, through which brakes and lamps come home as well.
system "pigtail" {
  title    = "A trailer whose battery charges on the road"
  practice = ["general"]
  ambient  = "25 C"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

conductor "alternator" {
  label      = "Alternator lead"
  from       = source.alternator
  to         = source.start
  size       = "2 AWG"
  length     = "40 cm"
  insulation = "105 C"
}

source "start" {
  label         = "Vehicle battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "90 Ah"
  charge_limit  = "25 A"
  resistance    = "6 mohm"
  short_circuit = "2 kA"
}

fuse "feed" {
  label          = "Charge feed, 35 A"
  kind           = "terminal"
  rating         = "35 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "feed" {
  label      = "New feed"
  from       = fuse.feed.load.pos
  to         = connector.tow.fixed.pos
  polarity   = "positive"
  size       = "10 AWG"
  length     = "5 m"
  insulation = "105 C"
}

conductor "ground" {
  label      = "Ground of the plug"
  from       = connector.tow.fixed.neg
  to         = source.start.neg
  polarity   = "negative"
  size       = "2 AWG"
  length     = "3 m"
  insulation = "105 C"
}

fuse "brakes" {
  label          = "Brakes, 20 A"
  kind           = "terminal"
  rating         = "20 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "brake_fuse" {
  label      = "To the brake relay"
  from       = fuse.brakes.load.pos
  to         = switch.brake_relay.supply.pos
  polarity   = "positive"
  size       = "6 AWG"
  length     = "30 cm"
  insulation = "105 C"
}

switch "brake_relay" {
  label          = "Brake relay"
  kind           = "relay"
  follows        = source.alternator
  terminals      = ["supply", "lead"]
  rating         = "30 A"
  voltage_rating = "32 V dc"

  position "released" {}
  position "pulled" { joins = [["supply", "lead"]] }
}

conductor "brake_feed" {
  label      = "To the brake switch"
  from       = switch.brake_relay.lead.pos
  to         = switch.brakes.supply.pos
  polarity   = "positive"
  size       = "6 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

switch "brakes" {
  label          = "Brake switch"
  terminals      = ["supply", "lead"]
  rating         = "30 A"
  voltage_rating = "32 V dc"

  position "off" {}
  position "on" { joins = [["supply", "lead"]] }
}

conductor "brake_plus" {
  label      = "Brake wire of the vehicle"
  from       = switch.brakes.lead.pos
  to         = connector.tow.fixed.brakes
  polarity   = "positive"
  size       = "4 AWG"
  length     = "2.5 m"
  insulation = "105 C"
}

fuse "lamps" {
  label          = "Lamps, 10 A"
  kind           = "terminal"
  rating         = "10 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "lamp_fuse" {
  label      = "To the lamp relay"
  from       = fuse.lamps.load.pos
  to         = switch.lamps.supply.pos
  polarity   = "positive"
  size       = "14 AWG"
  length     = "1 m"
  insulation = "105 C"
}

switch "lamps" {
  label          = "Lamp relay"
  kind           = "relay"
  follows        = source.alternator
  terminals      = ["supply", "lead"]
  rating         = "30 A"
  voltage_rating = "32 V dc"

  position "released" {}
  position "pulled" { joins = [["supply", "lead"]] }
}

conductor "lamp_plus" {
  label      = "Lamp wire of the vehicle"
  from       = switch.lamps.lead.pos
  to         = connector.tow.fixed.lamps
  polarity   = "positive"
  size       = "14 AWG"
  length     = "4 m"
  insulation = "105 C"
}

connector "tow" {
  label              = "Tow plug"
  style              = "round"
  key                = "slot"
  contacts           = ["brakes", "lamps"]
  tow                = true
  rating             = "60 A"
  voltage_rating     = "60 V dc"
  load_break         = true
  exposed            = "none"
  contact_resistance = "1 mohm"
}

conductor "pigtail" {
  label    = "Ground pigtail"
  from     = bus.ground
  to       = connector.tow.free.neg
  polarity = "negative"
  size     = "18 AWG"
  length   = "50 cm"
}

conductor "charge_minus" {
  label      = "Minus of the converter"
  from       = converter.charge.in.neg
  to         = bus.ground
  polarity   = "negative"
  size       = "10 AWG"
  length     = "1 m"
  insulation = "105 C"
}

bus "ground" {
  label    = "Trailer frame"
  polarity = "chassis"
  rating   = "100 A"
}

conductor "charge_plus" {
  label      = "New feed in the trailer"
  from       = connector.tow.free.pos
  to         = converter.charge.in.pos
  polarity   = "positive"
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

converter "charge" {
  label              = "Charge converter"
  kind               = "dc-dc"
  efficiency         = 0.9
  isolated           = true
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  trigger            = "ignition"
  charges            = [source.house]

  input {
    voltage_min = "9 V"
    voltage_max = "16 V"
    current_max = "25 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "18 A"
    profile     = "agm"
    float       = "13.6 V"
  }
}

conductor "brake_line" {
  label      = "Brake wire"
  from       = connector.tow.free.brakes
  to         = load.brakes.pos
  polarity   = "positive"
  size       = "4 AWG"
  length     = "2 m"
  insulation = "105 C"
}

conductor "brake_minus" {
  label      = "Minus of the brakes"
  from       = load.brakes.neg
  to         = bus.ground
  polarity   = "negative"
  size       = "6 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "brakes" {
  label       = "Brakes"
  kind        = "brake"
  draw        = "12 A"
  behavior    = "constant-current"
  voltage_min = "8 V"
  voltage_max = "16 V"
  critical    = "life-safety"
  own_battery = false
  needed_in   = [mode.towing]
}

mode "towing" {
  state = { connector.tow = "mated" }
}

source "breakaway" {
  label         = "Breakaway battery"
  kind          = "battery"
  role          = "house"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "20 Ah"
  charge_limit  = "1 A"
  resistance    = "10 mohm"
  short_circuit = "1 kA"
}

fuse "breakaway" {
  label          = "Breakaway, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.breakaway
}

conductor "breakaway_feed" {
  label      = "To the breakaway switch"
  from       = fuse.breakaway.load.pos
  to         = switch.breakaway.battery.pos
  polarity   = "positive"
  size       = "10 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

conductor "breakaway_minus" {
  label      = "Minus of the breakaway battery"
  from       = source.breakaway.neg
  to         = bus.ground
  polarity   = "negative"
  size       = "10 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

conductor "breakaway_out" {
  label      = "From the breakaway switch"
  from       = switch.breakaway.brakes.pos
  to         = load.brakes.pos
  polarity   = "positive"
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

switch "breakaway" {
  label          = "Breakaway switch"
  kind           = "breakaway"
  terminals      = ["battery", "brakes"]
  rating         = "30 A"
  voltage_rating = "32 V dc"

  position "pin in" {}
  position "pin out" { joins = [["battery", "brakes"]] }
}

interlock "lanyard" {
  by    = "hardware"
  notes = "the lanyard is longer than the lead of the plug, which parts first"
  never = [{ switch.breakaway = "pin out", connector.tow = "mated" }]
}

conductor "lamp_line" {
  label      = "Lamp wire"
  from       = connector.tow.free.lamps
  to         = load.lamps.pos
  polarity   = "positive"
  size       = "14 AWG"
  length     = "4 m"
  insulation = "105 C"
}

conductor "lamp_minus" {
  label      = "Minus of the lamps"
  from       = load.lamps.neg
  to         = bus.ground
  polarity   = "negative"
  size       = "14 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "lamps" {
  label       = "Road lamps"
  kind        = "light"
  draw        = "4 A"
  behavior    = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

conductor "charge_out" {
  label      = "Charge lead"
  from       = converter.charge.out
  to         = fuse.house.load
  size       = "10 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

fuse "house" {
  label          = "Charge fuse, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.house
}

source "house" {
  label         = "Trailer battery"
  kind          = "battery"
  role          = "house"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  charge_limit  = "30 A"
  resistance    = "5 mohm"
  short_circuit = "2.5 kA"
}
