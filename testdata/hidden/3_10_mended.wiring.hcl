# The same with an isolated step-down.

system "hidden" {
  title    = "Trailer with a 48 V pack and a 12 V bus"
  practice = ["us-rv"]
  ambient  = "35 C"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

conductor "in" {
  from   = source.pack
  to     = converter.step.in
  size   = "10 AWG"
  length = "2 m"
}

converter "step" {
  label      = "Step-down"
  kind       = "dc-dc"
  efficiency = 0.92
  isolated   = true

  output {
    voltage     = "13.2 V"
    current_max = "20 A"
  }
}

conductor "out" {
  from   = converter.step.out
  to     = bus.low
  size   = "10 AWG"
  length = "2 m"
}

bus "low" {
  label = "12 V bus"
}

fuse "lights" {
  label          = "Lights, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
}

conductor "lights" {
  from   = fuse.lights.load
  to     = load.lights
  size   = "10 AWG"
  length = "2 m"
}

load "lights" {
  label       = "Lights"
  kind        = "light"
  draw        = "4 A"
  voltage_max = "16 V"
}

fuse "alarm" {
  label          = "Gas alarm, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
}

conductor "alarm" {
  from   = fuse.alarm.load
  to     = load.alarm
  size   = "10 AWG"
  length = "2 m"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}
