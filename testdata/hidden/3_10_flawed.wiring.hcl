# The step-down that steps aside: it is not isolated, and one shorted transistor puts 58.4 V on all that bears 16 V,
# through fuses made for 32 V. No switch position warns of it.

system "hidden" {
  title    = "Trailer with a 48 V pack and a 12 V bus"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "pack" {
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "48 V"
  capacity        = "100 Ah"
  short_circuit   = "1.9 kA"
  resistance      = "25 mohm"
  discharge_limit = "50 A"
  role            = "house"
}

fuse "in" {
  label          = "Step-down, 10 A"
  kind           = "class-t"
  rating         = "10 A"
  on             = source.pack
  voltage_rating = "125 V dc"
  interrupting   = "20 kA"
}

conductor "in" {
  from       = fuse.in.load
  to         = converter.step.in
  size       = "10 AWG"
  length     = "2 m"
  insulation = "90 C"
}

converter "step" {
  label          = "Step-down"
  kind           = "dc-dc"
  efficiency     = 0.92
  isolated       = false
  blocks_reverse = true
  limits_current = true
  needs_battery  = false

  output {
    voltage     = "13.2 V"
    current_max = "20 A"
  }

  input {
    voltage_min = "40 V"
    voltage_max = "60 V"
    current_max = "8 A"
  }
}

conductor "out" {
  from       = converter.step.out
  to         = bus.low
  size       = "10 AWG"
  length     = "2 m"
  insulation = "90 C"
}

bus "low" {
  label  = "12 V bus"
  rating = "50 A"
}

fuse "lights" {
  label          = "Lights, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
  interrupting   = "1 kA"
}

conductor "lights" {
  from       = fuse.lights.load
  to         = load.lights
  size       = "10 AWG"
  length     = "2 m"
  insulation = "90 C"
}

load "lights" {
  label       = "Lights"
  kind        = "light"
  draw        = "4 A"
  voltage_max = "16 V"
  voltage_min = "9 V"
}

fuse "alarm" {
  label          = "Gas alarm, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
  interrupting   = "1 kA"
}

conductor "alarm" {
  from       = fuse.alarm.load
  to         = load.alarm
  size       = "10 AWG"
  length     = "2 m"
  insulation = "90 C"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
  voltage_min = "9 V"
  own_battery = true
  hold_up     = "8 h"
}
