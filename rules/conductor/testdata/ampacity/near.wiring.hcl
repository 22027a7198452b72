# Just enough: 16 A in 14 AWG that carries 16.3 A at 40 C. A starter draws more than its wire's
# ampacity for seconds. Two ways in a ring, each behind its own 15 A. A motor whose start the wire withstands.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "heater" {
  kind   = "blade"
  rating = "30 A"
  on     = source.house
}

conductor "heater" {
  from   = fuse.heater.load
  to     = load.heater
  size   = "14 AWG"
  length = "2 m"
}

load "heater" {
  kind     = "heater"
  draw     = "16 A"
  behavior = "constant-current"
}

conductor "crank" {
  from     = source.house
  to       = load.starter
  size     = "2 AWG"
  length   = "1 m"
  cranking = true
}

load "starter" {
  kind     = "motor"
  draw     = "300 A"
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

conductor "port" {
  from   = load.galley
  to     = fuse.port.load
  size   = "14 AWG"
  length = "2 m"
}

conductor "starboard" {
  from   = fuse.starboard.load
  to     = load.galley
  size   = "14 AWG"
  length = "2 m"
}

load "galley" {
  kind     = "other"
  draw     = "25 A"
  behavior = "constant-current"
}

fuse "winch" {
  kind   = "breaker"
  rating = "20 A"
  on     = source.house
}

conductor "winch" {
  from       = fuse.winch.load
  to         = load.winch
  size       = "12 AWG"
  length     = "2 m"
  insulation = "90 C"
}

load "winch" {
  kind       = "motor"
  draw       = "10 A"
  behavior   = "constant-current"
  surge      = "60 A"
  surge_time = "1 s"
}
