# Off is a place with the sun in it: the controller is on the bus side of the battery disconnect, so that "solar
# survives storage". It is not made to run without a battery.
system "hidden" {
  title    = "Trailer with the sun on the bus side"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "house" {
  label           = "House battery"
  kind            = "battery"
  role            = "house"
  chemistry       = "agm"
  voltage         = "12 V"
  capacity        = "100 Ah"
  charge_limit    = "25 A"
  short_circuit   = "1.5 kA"
  resistance      = "8 mohm"
  discharge_limit = "100 A"
}

fuse "house" {
  label          = "House, 40 A"
  kind           = "terminal"
  rating         = "40 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = source.house
}

switch "disconnect" {
  label          = "Battery disconnect"
  kind           = "disconnect"
  terminals      = ["battery", "bus"]
  rating         = "100 A"
  voltage_rating = "48 V dc"

  position "off" {}
  position "on" { joins = [["battery", "bus"]] }
}

conductor "battery" {
  from       = fuse.house.load
  to         = switch.disconnect.battery
  size       = "8 AWG"
  length     = "1 m"
  insulation = "90 C"
}

conductor "feed" {
  from       = switch.disconnect.bus
  to         = bus.house
  size       = "8 AWG"
  length     = "1 m"
  insulation = "90 C"
}

bus "house" {
  label  = "House bus"
  rating = "100 A"
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

load "lights" {
  label       = "Lights"
  kind        = "light"
  draw        = "2 A"
  voltage_min = "9 V"
  voltage_max = "16 V"
}

fuse "lights" {
  label          = "Lights, 5 A"
  kind           = "terminal"
  rating         = "5 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "lights" {
  from       = fuse.lights.load
  to         = load.lights
  size       = "16 AWG"
  length     = "3 m"
  insulation = "90 C"
}

source "roof" {
  label           = "Roof modules"
  kind            = "solar"
  voltage         = "18 V"
  voc             = "22 V"
  isc             = "6 A"
  vmp             = "18 V"
  imp             = "5.6 A"
  voc_coefficient = "-0.29 %/C"
  coldest         = "-20 C"
}

conductor "roof" {
  from       = source.roof
  to         = converter.controller.in
  size       = "10 AWG"
  length     = "4 m"
  insulation = "90 C"
}

converter "controller" {
  label          = "Solar controller"
  kind           = "mppt"
  efficiency     = 0.95
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = true
  charges        = [source.house]

  input {
    voltage_max = "30 V"
    current_max = "10 A"
    accepts     = ["solar"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "10 A"
    profile     = "agm"
    float       = "13.6 V"
  }
}

fuse "controller" {
  label          = "Controller, 15 A"
  kind           = "terminal"
  rating         = "15 A"
  voltage_rating = "58 V dc"
  interrupting   = "10 kA"
  on             = bus.house
}

conductor "controller" {
  from       = fuse.controller.load
  to         = converter.controller.out
  size       = "12 AWG"
  length     = "1 m"
  insulation = "90 C"
}
