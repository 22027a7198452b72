# Just enough: 75 C; a starter's cable of 60 C; 60 C between two parts that both sit in the saloon; 90 C in 90 C;
# and insulation good for the engine space need not say where it runs.

system "teal" {
}

compartment "engine" {
  engine = true
}

compartment "exhaust" {
  engine  = true
  ambient = "90 C"
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
  insulation = "75 C"
  through    = [compartment.engine]
}

load "blower" {
  draw = "4 A"
}

conductor "crank" {
  from       = source.house
  to         = load.starter
  size       = "2 AWG"
  length     = "1 m"
  insulation = "60 C"
  through    = [compartment.engine]
  cranking   = true
}

load "starter" {
  draw        = "150 A"
  compartment = compartment.engine
}

conductor "lamp" {
  from   = source.house
  to     = load.lamp
  size   = "14 AWG"
  length = "2 m"
}

load "lamp" {
  draw        = "1 A"
  compartment = compartment.saloon
}

conductor "sender" {
  from       = source.house
  to         = load.sender
  size       = "16 AWG"
  length     = "2 m"
  insulation = "90 C"
  through    = [compartment.exhaust]
}

load "sender" {
  draw = "0.1 A"
}

conductor "horn" {
  from       = source.house
  to         = load.horn
  size       = "16 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "horn" {
  draw = "3 A"
}
