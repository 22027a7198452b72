# The combiner is thrown by hand, and both batteries have a device of their own: a relay that follows the engine in its
# wire is all that is missing.

system "dunlin" {
  practice = ["us-rv"]
  ambient  = "30 C"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "60 A"
  regulated_voltage = "14.2 V"
}

source "start" { # want "goes on drinking"
  label              = "Starting battery"
  kind               = "battery"
  chemistry          = "agm"
  voltage            = "12 V"
  capacity           = "80 Ah"
  role               = "starting"
  charge_limit       = "80 A"
  charge_voltage_max = "14.8 V"
  discharge_limit    = "500 A"
}

source "house" {
  label              = "House battery"
  kind               = "battery"
  chemistry          = "agm"
  voltage            = "12 V"
  capacity           = "80 Ah"
  role               = "house"
  charge_limit       = "80 A"
  charge_voltage_max = "14.8 V"
  discharge_limit    = "300 A"
}

conductor "crank" {
  from       = source.alternator
  to         = source.start
  size       = "2 AWG"
  length     = "0.4 m"
  insulation = "105 C"
}

fuse "start_out" {
  kind           = "class-t"
  rating         = "80 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.start
}

conductor "link" {
  from       = fuse.start_out.load
  to         = switch.combiner.start
  size       = "2 AWG"
  length     = "2 m"
  insulation = "105 C"
}

switch "combiner" {
  label          = "Combiner"
  terminals      = ["start", "house"]
  rating         = "300 A"
  voltage_rating = "48 V dc"
  position "open" {}
  position "closed" { joins = [["start", "house"]] }
}

conductor "link_house" {
  from       = switch.combiner.house
  to         = fuse.house_in.load
  size       = "2 AWG"
  length     = "2 m"
  insulation = "105 C"
}

fuse "house_in" {
  kind           = "class-t"
  rating         = "80 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}

conductor "off" {
  from       = fuse.panel.load
  to         = switch.off.house
  size       = "6 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

fuse "panel" {
  kind           = "class-t"
  rating         = "50 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}

switch "off" {
  label          = "Disconnect"
  terminals      = ["house", "loads"]
  rating         = "300 A"
  voltage_rating = "48 V dc"
  position "off" {}
  position "on" { joins = [["house", "loads"]] }
}

bus "panel" {
  label  = "Panel"
  rating = "150 A"
}

conductor "panel" {
  from       = switch.off.loads
  to         = bus.panel
  size       = "6 AWG"
  length     = "1 m"
  insulation = "105 C"
}

fuse "fridge" {
  kind           = "class-t"
  rating         = "10 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = bus.panel
}

conductor "fridge" {
  from       = fuse.fridge.load
  to         = load.fridge
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "fridge" {
  label       = "Fridge"
  kind        = "motor"
  draw        = "5 A"
  behavior    = "constant-current"
  voltage_min = "10 V"
  voltage_max = "16 V"
}
