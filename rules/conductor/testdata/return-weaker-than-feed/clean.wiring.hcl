# Pairs; a plus and a minus of one size; a shared minus larger than each plus.

system "teal" {
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "heater" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

conductor "heater" {
  from   = fuse.heater.load
  to     = load.heater
  size   = "8 AWG"
  length = "2 m"
}

load "heater" {
  draw     = "20 A"
  behavior = "constant-current"
}

fuse "port" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

fuse "starboard" {
  kind   = "blade"
  rating = "15 A"
  on     = source.house
}

conductor "port_plus" {
  from     = fuse.port.load.pos
  to       = load.port.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "3 m"
}

conductor "starboard_plus" {
  from     = fuse.starboard.load.pos
  to       = load.starboard.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "3 m"
}

conductor "port_minus" {
  from     = load.port.neg
  to       = bus.minus
  polarity = "negative"
  size     = "14 AWG"
  length   = "0.5 m"
}

conductor "starboard_minus" {
  from     = load.starboard.neg
  to       = bus.minus
  polarity = "negative"
  size     = "14 AWG"
  length   = "0.5 m"
}

bus "minus" {
  polarity = "negative"
}

conductor "minus" {
  from     = bus.minus
  to       = source.house.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "2.5 m"
}

load "port" {
  draw     = "10 A"
  behavior = "constant-current"
}

load "starboard" {
  draw     = "10 A"
  behavior = "constant-current"
}
