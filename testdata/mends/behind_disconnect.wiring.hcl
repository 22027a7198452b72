# A lithium battery that meets the alternator behind its disconnect: a converter before the disconnect keeps its other
# side live, one behind it leaves the battery nothing to feed. Its output goes to the battery, with a device there.
# mend charging/lithium-meets-alternator source.house: Put a one-way converter that limits its output to 30 A into "link", 300 mm from where the wire now ends. Lead its output straight to "house", to a device of 40 A right on it.
system "dunlin" { title = "Boat" }

source "alternator" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "90 A"
  regulated_voltage = "14.4 V"
}

source "start" {
  kind       = "battery"
  chemistry  = "agm"
  role       = "starting"
  voltage    = "12 V"
  capacity   = "80 Ah"
  resistance = "6 mohm"
}

conductor "charge" {
  from       = source.alternator
  to         = source.start
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
  cranking   = true
}

fuse "link" {
  kind           = "class-t"
  rating         = "110 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.start
}

conductor "link" {
  from       = fuse.link.load
  to         = switch.main.panel
  size       = "2 AWG"
  length     = "4 m"
  insulation = "105 C"
}

switch "main" {
  kind           = "disconnect"
  terminals      = ["battery", "panel"]
  rating         = "300 A"
  voltage_rating = "48 V dc"
  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

source "house" {
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "200 Ah"
  resistance      = "5 mohm"
  charge_limit    = "100 A"
  discharge_limit = "200 A"
}

fuse "house" {
  kind           = "class-t"
  rating         = "110 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.house
}

conductor "house" {
  from       = fuse.house.load
  to         = switch.main.battery
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

fuse "heater" {
  rating       = "30 A"
  kind         = "blade"
  interrupting = "2000 A"
}

conductor "to_heater" {
  from       = switch.main.panel
  to         = fuse.heater.line
  size       = "10 AWG"
  length     = "0.3 m"
  insulation = "105 C"
}

conductor "to_heater2" {
  from       = fuse.heater.load
  to         = load.heater
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

load "heater" {
  draw        = "18 A"
  kind        = "heater"
  voltage_min = "9 V"
  voltage_max = "16 V"
  behavior    = "resistive"
}
