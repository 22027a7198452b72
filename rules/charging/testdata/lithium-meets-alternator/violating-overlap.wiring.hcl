# Only in the throw from truck to pack do the two meet.

system "t" {
  practice = ["general"]
}

source "pack" { # want warning "meets the starting battery \"Truck\""
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "truck" {
  label     = "Truck"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
  role      = "starting"
}

switch "pick" {
  label     = "Pick"
  terminals = ["pack", "truck", "house"]
  transition = "make-before-break"

  position "truck" {
    joins = [["truck", "house"]]
  }

  position "pack" {
    joins = [["pack", "house"]]
  }
}

conductor "a" {
  from   = source.pack
  to     = switch.pick.pack
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.truck
  to     = switch.pick.truck
  size   = "8 AWG"
  length = "1 m"
}
