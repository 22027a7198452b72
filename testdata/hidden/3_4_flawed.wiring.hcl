# The ring of two chargers: the converter that charges the house wakes at 13.2 V on the tow plug, and a maintainer,
# added a year later, lifts the starting battery to 13.4 V whenever the sun has lifted the house.

system "hidden" {
  title    = "Trailer with a charging converter and a maintainer"
  practice = ["us-rv"]
  ambient  = "35 C"
  coldest  = "-10 C"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "start" {
  label         = "Starting battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2.4 kA"
  resistance    = "6 mohm"
  charge_limit  = "25 A"
}

fuse "engine" {
  label          = "Alternator, at the battery, 125 A"
  kind           = "terminal"
  rating         = "125 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "engine" {
  from       = source.alternator
  to         = fuse.engine.load
  size       = "2 AWG"
  length     = "2 m"
  insulation = "105 C"
}

fuse "tow" {
  label          = "Tow plug, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "tow" {
  from       = fuse.tow.load
  to         = connector.tow.fixed
  size       = "8 AWG"
  length     = "5 m"
  insulation = "105 C"
}

connector "tow" {
  label              = "Tow plug"
  style              = "seven-way"
  key                = "slot"
  tow                = true
  contacts           = ["keep"]
  rating             = "35 A"
  voltage_rating     = "32 V dc"
  load_break         = true
  exposed            = "none"
  contact_resistance = "1 mohm"
}

conductor "charge_in" {
  from       = connector.tow.free
  to         = converter.charge.in
  size       = "8 AWG"
  length     = "4 m"
  insulation = "105 C"
}

converter "charge" {
  label          = "Charging converter"
  kind           = "dc-dc"
  efficiency     = 0.9
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  trigger        = "13.2 V"
  charges        = [source.house]

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "22 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "15 A"
  }
}

fuse "charge" {
  label          = "Charging converter, 20 A"
  kind           = "terminal"
  rating         = "20 A"
  on             = source.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "charge_out" {
  from       = converter.charge.out
  to         = fuse.charge.load
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

source "house" {
  label           = "House battery"
  kind            = "battery"
  role            = "house"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  short_circuit   = "1.5 kA"
  resistance      = "8 mohm"
  charge_limit    = "30 A"
  discharge_limit = "100 A"
}

fuse "keep" {
  label          = "Maintainer, 10 A"
  kind           = "terminal"
  rating         = "10 A"
  on             = source.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "keep_in" {
  from       = fuse.keep.load
  to         = converter.keep.in
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

converter "keep" {
  label          = "Maintainer"
  kind           = "dc-dc"
  efficiency     = 0.9
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  trigger        = "13.2 V"
  charges        = [source.start]

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "7 A"
  }

  output {
    voltage     = "13.4 V"
    current_max = "5 A"
  }
}

conductor "keep_out" {
  from       = converter.keep.out.pos
  to         = connector.tow.free.keep
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
  polarity   = "positive"
}

conductor "keep_neg" {
  from       = converter.keep.out.neg
  to         = source.house.neg
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
  polarity   = "negative"
}

conductor "keep_start" {
  from       = connector.tow.fixed.keep
  to         = fuse.keep_start.load.pos
  size       = "10 AWG"
  length     = "5 m"
  insulation = "105 C"
  polarity   = "positive"
}

fuse "keep_start" {
  label          = "Maintainer, at the starting battery, 10 A"
  kind           = "terminal"
  rating         = "10 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

source "roof" {
  label           = "Roof panel"
  kind            = "solar"
  voltage         = "18 V"
  voc             = "22 V"
  voc_coefficient = "-0.30 %/C"
  isc             = "9 A"
  vmp             = "18 V"
  imp             = "8.5 A"
}

conductor "roof" {
  from       = source.roof
  to         = converter.tracker.in
  size       = "10 AWG"
  length     = "4 m"
  insulation = "105 C"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  efficiency     = 0.95
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  charges        = [source.house]

  input {
    voltage_min = "15 V"
    voltage_max = "75 V"
    current_max = "15 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "15 A"
  }
}

fuse "tracker" {
  label          = "Tracker, 20 A"
  kind           = "terminal"
  rating         = "20 A"
  on             = source.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "tracker" {
  from       = converter.tracker.out
  to         = fuse.tracker.load
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}
