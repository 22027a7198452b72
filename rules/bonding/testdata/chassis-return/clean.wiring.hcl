# Copper for every return, and one bond from the house to the body. Nothing comes home through it.

system "wren" {
  practice = ["vehicle"]
}

bus "body" {
  polarity = "chassis"
}

source "house" {
  kind      = "battery"
  role      = "house"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "bond" {
  from     = source.house.neg
  to       = bus.body
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.4 m"
}

conductor "heater" {
  from   = source.house
  to     = load.heater
  size   = "8 AWG"
  length = "3 m"
}

load "heater" {
  draw = "30 A"
}

conductor "alarm" {
  from   = source.house
  to     = load.alarm
  size   = "16 AWG"
  length = "3 m"
}

load "alarm" {
  kind = "alarm"
  draw = "0.1 A"
}
