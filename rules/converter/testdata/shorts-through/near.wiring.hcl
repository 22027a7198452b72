# A converter from 12 V to 12 V: 14.6 V is no more than 1.5 times what it puts out.

system "t" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
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
  isolated   = false

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
