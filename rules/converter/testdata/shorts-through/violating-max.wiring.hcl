# What the lights bear is not written.

system "t" {
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

converter "step" { # want not-proven "`voltage_max` of load.lights is not written"
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
}
