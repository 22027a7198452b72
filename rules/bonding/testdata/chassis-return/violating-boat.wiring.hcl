# A hard one. A boat: the bilge blower has a copper return, but its case is bonded to the engine, and so is the house
# battery: of 10 A that come home a part goes through the block. The starter and the alternator are the engine's own.

system "curlew" {
  practice = ["us-boat"]
}

bus "engine" { # want warning "\"blower\" has its return through \"Engine\", up to .* A; hull, mast and engine are no conductor"
  label    = "Engine"
  polarity = "chassis"
}

source "alternator" {
  kind  = "alternator"
  rated = "60 A"
}

source "start" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "charge" {
  from     = source.alternator.pos
  to       = source.start.pos
  polarity = "positive"
  size     = "6 AWG"
  length   = "1 m"
}

conductor "alternator_case" {
  from     = source.alternator.neg
  to       = bus.engine
  polarity = "negative"
  size     = "6 AWG"
  length   = "0.1 m"
}

conductor "start_ground" {
  from     = source.start.neg
  to       = bus.engine
  polarity = "negative"
  size     = "2/0 AWG"
  length   = "1 m"
  cranking = true
}

conductor "crank" {
  from     = source.start.pos
  to       = load.starter.pos
  polarity = "positive"
  size     = "2/0 AWG"
  length   = "1 m"
  cranking = true
}

conductor "starter_case" {
  from     = load.starter.neg
  to       = bus.engine
  polarity = "negative"
  size     = "2/0 AWG"
  length   = "0.1 m"
  cranking = true
}

load "starter" {
  draw = "200 A"
}

source "house" {
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "house_bond" {
  from     = source.house.neg
  to       = bus.engine
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "blower" {
  from   = source.house
  to     = load.blower
  size   = "14 AWG"
  length = "3 m"
}

conductor "blower_case" {
  from     = load.blower.neg
  to       = bus.engine
  polarity = "negative"
  size     = "14 AWG"
  length   = "1 m"
}

load "blower" {
  draw     = "10 A"
  behavior = "constant-current"
}
