# One converter from the starting battery to the house and none back.

system "line" {
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "in" {
  from   = source.start
  to     = converter.charge.in
  size   = "10 AWG"
  length = "2 m"
}

converter "charge" {
  label      = "Charging converter"
  kind       = "dc-dc"
  efficiency = 0.9
  trigger    = "13.2 V"

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "out" {
  from   = converter.charge.out
  to     = source.house
  size   = "10 AWG"
  length = "2 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}
