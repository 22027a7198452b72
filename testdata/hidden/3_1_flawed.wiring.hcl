# The pack that left takes the brakes along: the breakaway switch is fed from the house bus, the house bus from a pack that lifts out,
# and the tow plug brings charge only. In the driveway all of it works.
system "hidden" {
  title    = "Trailer with its brakes on the lift-out pack"
  practice = ["us-rv"]
  ambient  = "35 C"
}

mode "towing" {
  state = { connector.tow_plug = "mated" }
}

source "vehicle" {
  label         = "Vehicle's battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "80 Ah"
  short_circuit = "1.9 kA"
  resistance    = "6 mohm"
  charge_limit  = "20 A"
}

fuse "vehicle" {
  label          = "Vehicle's charge line, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.vehicle
}

conductor "vehicle" {
  from       = fuse.vehicle.load
  to         = connector.tow_plug.fixed
  size       = "10 AWG"
  length     = "4 m"
  insulation = "105 C"
}

connector "tow_plug" {
  label          = "Tow plug"
  style          = "seven pins"
  rating         = "30 A"
  tow            = true
  exposed        = "free"
  key            = "notch"
  voltage_rating = "32 V dc"
  load_break     = true
}

conductor "charge_in" {
  from       = connector.tow_plug.free
  to         = converter.charge.in
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "charge" {
  label          = "Charge converter"
  kind           = "dc-dc"
  rated          = "150 W"
  isolated       = false
  blocks_reverse = true
  limits_current = true
  charges        = [source.pack]
  needs_battery  = false
  trigger        = "ignition"
  efficiency     = 0.9

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "14 A"
  }

  output {
    voltage     = "14.4 V"
    current_max = "10 A"
    profile     = "lifepo4"
  }
}

conductor "charge_out" {
  from       = converter.charge.out
  to         = fuse.charge.load
  size       = "10 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

fuse "charge" {
  label          = "Charge converter, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.dock
}

source "pack" {
  label              = "Lift-out pack"
  kind               = "battery"
  role               = "house"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  short_circuit      = "2 kA"
  discharge_limit    = "100 A"
  charge_limit       = "50 A"
  cold_charge_cutoff = true
  removable          = true
  resistance         = "6 mohm"

  bms {
    opens_charge_below  = "2 C"
    warns_before_cutoff = false
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
  to         = connector.dock.free
  size       = "6 AWG"
  length     = "0.2 m"
  insulation = "105 C"
}

connector "dock" {
  label          = "Dock"
  style          = "blind-mate dock"
  follows        = source.pack
  rating         = "100 A"
  exposed        = "none"
  key            = "two pins of unlike width"
  voltage_rating = "60 V dc"
  load_break     = true
}

conductor "dock_lead" {
  from       = connector.dock.fixed
  to         = bus.dock
  size       = "6 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

bus "dock" {
  label  = "Dock studs"
  rating = "100 A"
}

conductor "select" {
  from       = bus.dock
  to         = switch.house_select.pack
  size       = "6 AWG"
  length     = "0.2 m"
  insulation = "105 C"
}

switch "house_select" {
  label          = "House from"
  terminals      = ["pack", "house"]
  rating         = "100 A"
  poles          = 1
  voltage_rating = "32 V dc"

  position "pack" { joins = [["pack", "house"]] }
  position "off" {}
}

conductor "house" {
  from       = switch.house_select.house
  to         = bus.house
  size       = "6 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

bus "house" {
  label  = "House bus"
  rating = "100 A"
}

fuse "lights" {
  label          = "Lights, 5 A"
  kind           = "blade"
  rating         = "5 A"
  voltage_rating = "32 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "lights" {
  from       = fuse.lights.load
  to         = load.lights
  size       = "16 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "lights" {
  label       = "Lights"
  kind        = "light"
  draw        = "2 A"
  critical    = "none"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "breakaway" {
  label          = "Breakaway, 20 A"
  kind           = "terminal"
  rating         = "20 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "breakaway_feed" {
  from       = fuse.breakaway.load
  to         = switch.breakaway.battery
  size       = "10 AWG"
  length     = "0.6 m"
  insulation = "105 C"
}

switch "breakaway" {
  label          = "Breakaway switch"
  kind           = "breakaway"
  terminals      = ["battery", "brakes"]
  rating         = "20 A"
  poles          = 1
  voltage_rating = "32 V dc"

  position "pin in" {}
  position "pin out" { joins = [["battery", "brakes"]] }
}

conductor "brakes" {
  from       = switch.breakaway.brakes
  to         = load.brakes
  size       = "10 AWG"
  length     = "2.5 m"
  insulation = "105 C"
}

load "brakes" {
  label         = "Brake magnets"
  kind          = "brake"
  draw          = "6 A"
  behavior      = "resistive"
  rated_voltage = "12 V"
  voltage_min   = "8 V"
  critical      = "life-safety"
  own_battery   = false
  needed_in     = [mode.towing]
  voltage_max   = "16 V"
}
