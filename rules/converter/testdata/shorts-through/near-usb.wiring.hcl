# What hangs there takes 60 V itself; a lamp of half an ampere is a trifle.

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

fuse "usb" {
  label          = "Outlets, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
}

conductor "usb" {
  from   = fuse.usb.load
  to     = load.usb
  size   = "10 AWG"
  length = "2 m"
}

load "usb" {
  label       = "Outlets"
  kind        = "electronics"
  draw        = "4 A"
  voltage_max = "60 V"
}

fuse "lamp" {
  label          = "Lamp, 10 A"
  kind           = "blade"
  rating         = "10 A"
  voltage_rating = "32 V dc"
  on             = bus.low
}

conductor "lamp" {
  from   = fuse.lamp.load
  to     = load.lamp
  size   = "10 AWG"
  length = "2 m"
}

load "lamp" {
  label       = "Lamp"
  kind        = "light"
  draw        = "0.5 A"
  voltage_max = "16 V"
}
