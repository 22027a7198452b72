# The BMS is a switch that nobody drew: the alternator charges a lithium bank with nothing between, and the alarm,
# the radio and the running lights are on the same bus.
system "hidden" {
  title    = "Van with the alternator on the bank"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  regulated_voltage = "14.4 V"
  rated             = "100 A"
}

conductor "alternator" {
  from       = source.alternator
  to         = bus.house
  size       = "2/0 AWG"
  length     = "2 m"
  insulation = "90 C"
}

compartment "locker" {
  label    = "Bow locker"
  unheated = true
  coldest  = "-10 C"
}

source "pack" {
  label              = "Lithium bank"
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "200 Ah"
  charge_limit       = "100 A"
  discharge_limit    = "150 A"
  cold_charge_cutoff = true
  compartment        = compartment.locker
  short_circuit      = "4.2 kA"
  resistance         = "4 mohm"
  role               = "house"

  bms {
    opens_charge_below  = "2 C"
    opens_above         = "14.6 V"
    warns_before_cutoff = false
  }
}

fuse "pack" {
  label          = "Bank, 150 A"
  kind           = "class-t"
  rating         = "150 A"
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
  on             = source.pack
}

conductor "pack" {
  from       = fuse.pack.load
  to         = bus.house
  size       = "1/0 AWG"
  length     = "1 m"
  insulation = "90 C"
}

bus "house" {
  label  = "House bus"
  rating = "200 A"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  own_battery = false
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "alarm" {
  label          = "Gas alarm, 5 A"
  kind           = "terminal"
  rating         = "5 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "alarm" {
  from       = fuse.alarm.load
  to         = load.alarm
  size       = "16 AWG"
  length     = "3 m"
  insulation = "90 C"
}

fuse "loads" {
  label          = "Loads, 30 A"
  kind           = "terminal"
  rating         = "30 A"
  on             = bus.house
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "loads" {
  from       = fuse.loads.load
  to         = switch.loads.supply
  size       = "8 AWG"
  length     = "0.5 m"
  insulation = "90 C"
}

switch "loads" {
  label          = "Loads, disconnect"
  kind           = "disconnect"
  terminals      = ["supply", "loads"]
  rating         = "100 A"
  voltage_rating = "48 V dc"

  position "off" {}
  position "on" { joins = [["supply", "loads"]] }
}

conductor "switched" {
  from       = switch.loads.loads
  to         = bus.loads
  size       = "8 AWG"
  length     = "0.5 m"
  insulation = "90 C"
}

bus "loads" {
  label  = "Switched bus"
  rating = "100 A"
}

load "radio" {
  label       = "Radio"
  kind        = "electronics"
  draw        = "3 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "radio" {
  label          = "Radio, 5 A"
  kind           = "terminal"
  rating         = "5 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.loads
}

conductor "radio" {
  from       = fuse.radio.load
  to         = load.radio
  size       = "16 AWG"
  length     = "3 m"
  insulation = "90 C"
}

load "running" {
  label       = "Running lights"
  kind        = "light"
  draw        = "2 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "running" {
  label          = "Running lights, 5 A"
  kind           = "terminal"
  rating         = "5 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.loads
}

conductor "running" {
  from       = fuse.running.load
  to         = load.running
  size       = "16 AWG"
  length     = "3 m"
  insulation = "90 C"
}
