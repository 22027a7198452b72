# One grey family of genderless plugs throughout: the pack's power lead and its charge port, the boost
# that charges it on the road, and a folding panel.
system "two_masters_flawed" {
  title    = "A lift-out pack and one kind of plug for everything"
  practice = ["us-rv"]
  ambient  = "30 C"
  coldest  = "0 C"
}

source "pack" {
  label              = "Pack"
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  removable          = true
  short_circuit      = "3 kA"
  resistance         = "5 mohm"
  discharge_limit    = "100 A"
  charge_limit       = "50 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  role               = "house"
}

fuse "pack" {
  part_of        = source.pack
  kind           = "terminal"
  rating         = "60 A"
  on             = source.pack
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "pack_lead" {
  part_of    = source.pack
  from       = fuse.pack.load
  to         = connector.power.free
  size       = "6 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

connector "power" {
  label          = "Pack output"
  style          = "genderless"
  key            = "grey"
  follows        = source.pack
  rating         = "40 A"
  voltage_rating = "48 V dc"
  load_break     = true
}

conductor "power" {
  from       = connector.power.fixed
  to         = bus.house
  size       = "6 AWG"
  length     = "1 m"
  insulation = "105 C"
}

bus "house" {
  label  = "House panel"
  rating = "100 A"
}

branch "lights" {
  from = bus.house

  fuse {
    kind           = "terminal"
    rating         = "5 A"
    voltage_rating = "58 V dc"
    interrupting   = "10 kA"
  }

  conductor {
    size       = "16 AWG"
    length     = "3 m"
    insulation = "105 C"
  }

  load "lights" {
    kind        = "light"
    draw        = "3 A"
    voltage_min = "9 V"
    voltage_max = "16 V"
    critical    = "none"
  }
}

# --- the charge port ----------------------------------------------------------------------------

converter "tracker" {
  part_of        = source.pack
  label          = "Tracker in the pack"
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]
  needs_battery  = false
  isolated       = false
  efficiency     = 0.93

  input {
    voltage_max = "60 V"
    current_max = "15 A"
    accepts     = ["solar", "dc"]
    voltage_min = "18 V"
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "tracker" {
  part_of        = source.pack
  kind           = "terminal"
  rating         = "25 A"
  on             = source.pack
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "tracker" {
  part_of    = source.pack
  from       = converter.tracker.out
  to         = fuse.tracker.load
  size       = "10 AWG"
  length     = "20 cm"
  insulation = "105 C"
}

conductor "port" {
  part_of    = source.pack
  from       = connector.port.free
  to         = converter.tracker.in
  size       = "10 AWG"
  length     = "20 cm"
  insulation = "105 C"
}

connector "port" {
  label          = "Pack charge port"
  style          = "genderless"
  key            = "grey"
  follows        = source.pack
  rating         = "20 A"
  voltage_rating = "60 V dc"
  load_break     = true
}

# --- the boost, with the engine running ---------------------------------------------------------

source "engine" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  regulated_voltage = "14.4 V"
  rated             = "80 A"
}

source "start" {
  label         = "Vehicle battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "70 Ah"
  short_circuit = "1.5 kA"
  resistance    = "8 mohm"
  charge_limit  = "20 A"
}

fuse "engine" {
  kind           = "terminal"
  rating         = "125 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "alternator" {
  from       = source.engine
  to         = fuse.engine.load
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

fuse "vehicle" {
  kind           = "terminal"
  rating         = "40 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "vehicle" {
  from       = fuse.vehicle.load
  to         = switch.relay.vehicle
  size       = "8 AWG"
  length     = "4 m"
  insulation = "105 C"
}

switch "relay" {
  label          = "Charge relay"
  kind           = "relay"
  terminals      = ["vehicle", "boost"]
  follows        = source.engine
  rating         = "60 A"
  voltage_rating = "32 V dc"
  position "released" {}
  position "pulled" { joins = [["vehicle", "boost"]] }
}

conductor "boost_in" {
  from       = switch.relay.boost
  to         = converter.boost.in
  size       = "8 AWG"
  length     = "1 m"
  insulation = "105 C"
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]
  needs_battery  = false
  isolated       = false
  efficiency     = 0.93

  input {
    voltage_min = "10.5 V"
    voltage_max = "16 V"
    current_max = "28 A"
  }

  output {
    voltage     = "48 V"
    current_max = "5 A"
  }
}

conductor "boost_out" {
  from       = converter.boost.out
  to         = connector.port.fixed
  size       = "12 AWG"
  length     = "5 m"
  insulation = "105 C"
}

# --- the panel that is laid out in camp ---------------------------------------------------------

source "panel" {
  label = "Folding panel"
  kind  = "solar"
  voc   = "45 V"
  vmp   = "37 V"
  isc   = "6 A"
  imp   = "5.5 A"
}

conductor "panel" {
  from       = source.panel
  to         = connector.panel.free
  size       = "10 AWG"
  length     = "5 m"
  insulation = "105 C"
}

connector "panel" {
  label          = "Solar lead"
  style          = "genderless"
  key            = "grey"
  rating         = "20 A"
  voltage_rating = "600 V dc"
  load_break     = true
}

conductor "controller_in" {
  from       = connector.panel.fixed
  to         = converter.controller.in
  size       = "10 AWG"
  length     = "1 m"
  insulation = "105 C"
}

converter "controller" {
  label          = "Solar controller"
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]
  needs_battery  = false
  isolated       = false
  efficiency     = 0.93

  input {
    voltage_max = "100 V"
    accepts     = ["solar"]
    voltage_min = "18 V"
    current_max = "15 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "controller_out" {
  from       = converter.controller.out
  to         = fuse.controller.load
  size       = "10 AWG"
  length     = "50 cm"
  insulation = "105 C"
}

fuse "controller" {
  kind           = "terminal"
  rating         = "25 A"
  on             = bus.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}
