# A hard one: no wire names the spaces it passes. The first ends at a part in the engine space, so it runs there,
# and it is drawn from the load back to its fuse; of the second only one end is known.

system "teal" {
}

compartment "engine" {
  label  = "Engine space"
  engine = true
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

fuse "lift" {
  kind   = "blade"
  rating = "10 A"
  on     = source.house
}

conductor "lift" { # want caution "\"lift\" runs in \"Engine space\""
  from       = load.lift
  to         = fuse.lift.load
  size       = "14 AWG"
  length     = "2 m"
  insulation = "60 C"
}

load "lift" {
  draw        = "3 A"
  compartment = compartment.engine
}

conductor "lamp" { # want not-proven notice "Whether \"lamp\" passes an engine space is not written"
  from   = source.house
  to     = load.lamp
  size   = "14 AWG"
  length = "2 m"
}

load "lamp" {
  draw = "1 A"
}
