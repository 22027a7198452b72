# A charge wire with a battery at each end and no device at either: two devices are missing, so there
# are two findings. The second cable lies in parallel with the first and is drawn from the other end.

system "knot" {
}

source "truck" {
  label     = "Truck battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "charge" { # want danger "meets source \"Truck battery\"" danger "meets source \"House battery\""
  from   = source.truck
  to     = connector.tow.fixed
  size   = "10 AWG"
  length = "5 m"
}

connector "tow" {
  rating = "30 A"
  tow    = true
}

conductor "trailer" { # want danger "meets source \"Truck battery\"" danger "meets source \"House battery\""
  from   = source.house
  to     = connector.tow.free
  size   = "10 AWG"
  length = "3 m"
}

conductor "lamp" { # want danger "with no overcurrent device, neither before it nor after it"
  from   = source.house
  to     = load.lamp
  size   = "18 AWG"
  length = "10 cm"
}

load "lamp" {
  draw = "1 A"
}
