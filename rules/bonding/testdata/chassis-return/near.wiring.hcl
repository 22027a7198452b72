# 4 A of house lights come home through the body. The vehicle's own lamps, 20 A, starter and alternator do so too: their
# maker meant it. So does what the engine's alternator gives a converter whose own return is copper to the starting battery.

system "wren" {
  practice = ["vehicle"]
}

bus "body" {
  polarity = "chassis"
}

source "alternator" {
  kind  = "alternator"
  rated = "120 A"
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
  size     = "2 AWG"
  length   = "1 m"
}

conductor "engine_strap" {
  from     = source.alternator.neg
  to       = bus.body
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.4 m"
}

conductor "battery_strap" {
  from     = source.start.neg
  to       = bus.body
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.4 m"
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
  to       = bus.body
  polarity = "negative"
  size     = "2/0 AWG"
  length   = "0.1 m"
  cranking = true
}

load "starter" {
  draw = "200 A"
}

conductor "lamps" {
  from     = source.start.pos
  to       = load.lamps.pos
  polarity = "positive"
  size     = "12 AWG"
  length   = "3 m"
}

conductor "lamps_ground" {
  from     = load.lamps.neg
  to       = bus.body
  polarity = "negative"
  size     = "12 AWG"
  length   = "0.3 m"
}

load "lamps" {
  kind     = "light"
  draw     = "20 A"
  critical = "life-safety"
}

conductor "converter" {
  from   = source.start
  to     = converter.charge.in
  size   = "8 AWG"
  length = "4 m"
}

converter "charge" {
  kind           = "dc-dc"
  isolated       = true
  blocks_reverse = true
  input {
    current_max = "30 A"
  }
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "converter_out" {
  from   = converter.charge.out
  to     = source.house
  size   = "10 AWG"
  length = "1 m"
}

source "house" {
  kind         = "battery"
  role         = "house"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

conductor "house_bond" {
  from     = source.house.neg
  to       = bus.body
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "lights" {
  from     = source.house.pos
  to       = load.lights.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "3 m"
}

conductor "lights_ground" {
  from     = load.lights.neg
  to       = bus.body
  polarity = "negative"
  size     = "14 AWG"
  length   = "0.3 m"
}

load "lights" {
  kind     = "light"
  draw     = "4 A"
  behavior = "constant-current"
}
