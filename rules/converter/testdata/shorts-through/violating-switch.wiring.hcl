# Behind a switch, one wire for each pole.

system "t" {
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  capacity  = "100 Ah"
}

conductor "a" {
  from   = source.pack.pos
  to     = switch.main.pack
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

switch "main" {
  label     = "Main"
  terminals = ["pack", "out12"]

  position "off" {}
  position "on" { joins = [["pack", "out12"]] }
}

conductor "n" {
  from   = source.pack.neg
  to     = converter.step.in.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}

conductor "in" {
  from   = switch.main.out12.pos
  to     = converter.step.in.pos
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

converter "step" { # want "has failed short, with \"Main\" at on, what feeds it"
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
