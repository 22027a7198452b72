# 60 C insulation beside the engine; a wire whose insulation is not written, with gasoline in the space;
# 80 C where the space itself is at 90 C.

system "teal" {
}

compartment "engine" {
  label  = "Engine bay"
  engine = true
}

compartment "outboard" {
  label      = "Outboard well"
  engine     = true
  fuel_vapor = true
}

compartment "exhaust" {
  label   = "Above the exhaust"
  engine  = true
  ambient = "90 C"
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "blower" { # want caution "\"Blower wire\" runs in \"Engine bay\", and its insulation is rated 60 C; an engine space asks for 75 C at least"
  label      = "Blower wire"
  from       = source.house
  to         = load.blower
  size       = "14 AWG"
  length     = "2 m"
  insulation = "60 C"
  through    = [compartment.engine]
}

load "blower" {
  draw = "4 A"
}

conductor "tilt" { # want warning "\"tilt\" runs in \"Outboard well\", and its insulation is not written and taken for 60 C.* Fuel is kept or burnt there"
  from    = source.house
  to      = load.tilt
  size    = "6 AWG"
  length  = "2 m"
  through = [compartment.engine, compartment.outboard]
}

load "tilt" {
  draw = "30 A"
}

conductor "sender" { # want caution "\"sender\" runs in \"Above the exhaust\", and its insulation is rated 80 C; an engine space asks for 90 C at least"
  from       = source.house
  to         = load.sender
  size       = "16 AWG"
  length     = "2 m"
  insulation = "80 C"
  through    = [compartment.exhaust]
}

load "sender" {
  draw = "0.1 A"
}
