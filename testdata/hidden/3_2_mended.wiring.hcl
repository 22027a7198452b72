# The boost with a limit on what it takes, on a wire that leaves it its volts: it fills the pack more slowly.
system "boost_mended" {
  title    = "A pack that the vehicle charges through its solar port"
  practice = ["general"]
  ambient  = "20 C"
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
  label         = "Starting battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "90 Ah"
  resistance    = "2.5 mohm"
  short_circuit = "4 kA"
}

fuse "boost" {
  label          = "Boost fuse, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "to_plug" {
  label      = "To the tow plug"
  from       = fuse.boost.load
  to         = connector.tow.fixed
  size       = "4 AWG"
  length     = "4 m"
  insulation = "105 C"
}

connector "tow" {
  label              = "Tow plug"
  style              = "two-pole"
  key                = "slot"
  tow                = true
  rating             = "60 A"
  voltage_rating     = "60 V dc"
  load_break         = true
  exposed            = "none"
  contact_resistance = "0.5 mohm"
}

conductor "from_plug" {
  label      = "To the boost"
  from       = connector.tow.free
  to         = bus.box
  size       = "4 AWG"
  length     = "3 m"
  insulation = "105 C"
}

bus "box" {
  label  = "Terminals in the box"
  rating = "100 A"
}

conductor "boost" {
  label      = "Boost lead"
  from       = bus.box
  to         = converter.boost.in
  size       = "8 AWG"
  length     = "10 cm"
  insulation = "105 C"
}

converter "boost" {
  label          = "Boost"
  kind           = "dc-dc"
  rated          = "324 W"
  efficiency     = 0.9
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false
  trigger        = "ignition"

  input {
    voltage_max = "16 V"
    voltage_min = "9.5 V"
    current_max = "15 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "48 V"
    current_max = "6.75 A"
  }
}

conductor "port" {
  label          = "To the solar port"
  from           = converter.boost.out
  to             = connector.port.fixed
  size           = "12 AWG"
  length         = "1 m"
  insulation     = "105 C"
  voltage_rating = "600 V dc"
}

connector "port" {
  label          = "Solar port"
  style          = "round"
  key            = "slot"
  rating         = "20 A"
  voltage_rating = "100 V dc"
  load_break     = true
  exposed        = "none"
  follows        = source.pack

  contact_resistance = "0.5 mohm"
}

conductor "inside" {
  label          = "Inside the pack"
  from           = connector.port.free
  to             = converter.tracker.in
  part_of        = source.pack
  size           = "12 AWG"
  length         = "10 cm"
  insulation     = "105 C"
  voltage_rating = "600 V dc"
}

converter "tracker" {
  label              = "Charger of the solar port"
  part_of            = source.pack
  kind               = "mppt"
  efficiency         = 0.95
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = true
  cold_charge_cutoff = true
  charges            = [source.pack]

  input {
    voltage_min = "18 V"
    voltage_max = "60 V"
    current_max = "8 A"
    accepts     = ["solar", "dc"]
  }

  output {
    voltage     = "14.2 V"
    current_max = "20 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

fuse "charge" {
  label          = "Charge fuse in the pack, 30 A"
  part_of        = source.pack
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.pack
}

conductor "charge" {
  label      = "Charge lead in the pack"
  part_of    = source.pack
  from       = converter.tracker.out
  to         = fuse.charge.load
  size       = "8 AWG"
  length     = "10 cm"
  insulation = "105 C"
}

source "pack" {
  label              = "Pack"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  charge_limit       = "50 A"
  discharge_limit    = "100 A"
  charge_voltage_max = "14.6 V"
  cold_charge_cutoff = true
  resistance         = "3 mohm"
  short_circuit      = "4 kA"
  removable          = true
}
