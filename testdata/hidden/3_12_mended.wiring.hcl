# A family of its own for each voltage, every contact too deep for a finger; what was grey is keyed.
system "two_masters_mended" {
  title    = "A lift-out pack and plugs that tell their circuits apart"
  practice = ["us-rv"]
  coldest  = "0 C"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
  removable = true
}

fuse "pack" {
  part_of = source.pack
  kind    = "terminal"
  rating  = "60 A"
  on      = source.pack
}

conductor "pack_lead" {
  part_of = source.pack
  from    = fuse.pack.load
  to      = connector.power.free
  size    = "6 AWG"
  length  = "50 cm"
}

connector "power" {
  label   = "Pack output"
  style   = "deep two-pole"
  key     = "red"
  follows = source.pack
  exposed = "none"
}

conductor "power" {
  from   = connector.power.fixed
  to     = bus.house
  size   = "6 AWG"
  length = "1 m"
}

bus "house" {
  label = "House panel"
}

branch "lights" {
  from = bus.house

  fuse {
    kind   = "blade"
    rating = "5 A"
  }

  conductor {
    size   = "16 AWG"
    length = "3 m"
  }

  load "lights" {
    kind = "light"
    draw = "3 A"
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

  input {
    voltage_max = "60 V"
    current_max = "15 A"
    accepts     = ["solar", "dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "tracker" {
  part_of = source.pack
  from    = converter.tracker.out
  to      = source.pack
  size    = "10 AWG"
  length  = "20 cm"
}

conductor "port" {
  part_of = source.pack
  from    = connector.port.free
  to      = converter.tracker.in
  size    = "10 AWG"
  length  = "20 cm"
}

connector "port" {
  label   = "Pack charge port"
  style   = "deep two-pole, small"
  key     = "blue"
  follows = source.pack
  exposed = "none"
}

# --- the boost, with the engine running ---------------------------------------------------------

source "engine" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  regulated_voltage = "14.4 V"
  rated             = "120 A"
}

source "start" {
  label     = "Vehicle battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

conductor "alternator" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

fuse "vehicle" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.start
}

conductor "vehicle" {
  from   = fuse.vehicle.load
  to     = switch.relay.vehicle
  size   = "8 AWG"
  length = "4 m"
}

switch "relay" {
  label     = "Charge relay"
  kind      = "relay"
  terminals = ["vehicle", "boost"]
  follows   = source.engine
  position "released" {}
  position "pulled" { joins = [["vehicle", "boost"]] }
}

conductor "boost_in" {
  from   = switch.relay.boost
  to     = converter.boost.in
  size   = "8 AWG"
  length = "1 m"
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]

  input {
    current_max = "35 A"
  }

  output {
    voltage     = "48 V"
    current_max = "7 A"
  }
}

conductor "boost_out" {
  from   = converter.boost.out
  to     = connector.port.fixed
  size   = "12 AWG"
  length = "5 m"
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
  from   = source.panel
  to     = connector.panel.free
  size   = "10 AWG"
  length = "5 m"
}

connector "panel" {
  label   = "Solar lead"
  style   = "array pair, deep"
  key     = "plus and minus unlike"
  exposed = "none"
}

conductor "controller_in" {
  from   = connector.panel.fixed
  to     = converter.controller.in
  size   = "10 AWG"
  length = "1 m"
}

converter "controller" {
  label          = "Solar controller"
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]

  input {
    voltage_max = "100 V"
    accepts     = ["solar"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "controller_out" {
  from   = converter.controller.out
  to     = fuse.controller.load
  size   = "10 AWG"
  length = "50 cm"
}

fuse "controller" {
  kind   = "blade"
  rating = "25 A"
  on     = bus.house
}
