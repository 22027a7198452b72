# The tow feed comes in through a one-way converter; the load center's own run is fused at its end.

system "nuthatch" {
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

converter "center" {
  kind    = "load-center"
  charges = [source.house]
  output {
    voltage     = "13.6 V"
    current_max = "45 A"
  }
}

conductor "shore" {
  from   = source.shore
  to     = converter.center.in
  size   = "10 AWG"
  length = "3 m"
}

conductor "stub" {
  from   = converter.center.out
  to     = fuse.center.line
  size   = "8 AWG"
  length = "0.2 m"
}

fuse "center" {
  kind   = "terminal"
  rating = "30 A"
}

conductor "charge" {
  from   = fuse.center.load
  to     = source.house
  size   = "8 AWG"
  length = "3 m"
}

source "house" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

converter "tow" {
  kind           = "dc-dc"
  blocks_reverse = true
}

conductor "tow_out" {
  from   = converter.tow.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}

conductor "tow_in" {
  from   = source.truck
  to     = converter.tow.in
  size   = "8 AWG"
  length = "6 m"
}

source "truck" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}
