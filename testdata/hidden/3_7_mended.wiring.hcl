# The alternator keeps a lead-acid battery that nothing takes away, and a converter made to run without a battery on
# its output charges the bank. The alarm has a battery of its own.
system "hidden" {
  title    = "Van with a starting battery on the alternator"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  regulated_voltage = "14.4 V"
  rated             = "100 A"
}

source "start" {
  label         = "Starting battery"
  kind          = "battery"
  role          = "starting"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "90 Ah"
  short_circuit = "2.4 kA"
  resistance    = "6 mohm"
  charge_limit  = "25 A"
}

fuse "alternator" {
  label          = "Alternator, at the battery, 125 A"
  kind           = "terminal"
  rating         = "125 A"
  on             = source.start
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
}

conductor "alternator" {
  from       = source.alternator
  to         = fuse.alternator.load
  size       = "1/0 AWG"
  length     = "1 m"
  insulation = "90 C"
}

fuse "charge" {
  label          = "Charge, 60 A"
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.start
}

conductor "charge" {
  from       = fuse.charge.load
  to         = converter.charge.in
  size       = "6 AWG"
  length     = "4 m"
  insulation = "90 C"
}

converter "charge" {
  label              = "Charge converter"
  kind               = "dc-dc"
  efficiency         = 0.9
  isolated           = false
  blocks_reverse     = true
  limits_current     = true
  needs_battery      = false
  cold_charge_cutoff = true
  trigger            = "ignition"
  charges            = [source.pack]

  input {
    voltage_min = "11 V"
    voltage_max = "16 V"
    current_max = "45 A"
    accepts     = ["dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "30 A"
    profile     = "lifepo4"
    float       = "13.5 V"
  }
}

fuse "converter" {
  label          = "Charge converter out, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "converter" {
  from       = fuse.converter.load
  to         = converter.charge.out
  size       = "8 AWG"
  length     = "1 m"
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
  discharge_limit    = "160 A"
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
  label          = "Bank, 160 A"
  kind           = "class-t"
  rating         = "160 A"
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
  own_battery = true
  hold_up     = "8 h"
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
