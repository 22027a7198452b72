# 105 C insulation beside the engine, 60 C in the saloon alone.

system "teal" {
}

compartment "engine" {
  engine     = true
  fuel_vapor = true
}

compartment "saloon" {
}

source "house" {
  kind        = "battery"
  chemistry   = "agm"
  voltage     = "12 V"
  capacity    = "100 Ah"
  compartment = compartment.saloon
}

conductor "blower" {
  from       = source.house
  to         = load.blower
  size       = "14 AWG"
  length     = "2 m"
  insulation = "105 C"
  through    = [compartment.saloon, compartment.engine]
}

load "blower" {
  draw        = "4 A"
  compartment = compartment.engine
}

conductor "lamp" {
  from       = source.house
  to         = load.lamp
  size       = "14 AWG"
  length     = "2 m"
  insulation = "60 C"
  through    = [compartment.saloon]
}

load "lamp" {
  draw = "1 A"
}
