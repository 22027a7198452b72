# One larger wire; two equal wires with a device each.

system "teal" {
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "galley" {
  kind   = "terminal"
  rating = "40 A"
  on     = source.house
}

conductor "galley" {
  from   = fuse.galley.load
  to     = load.galley
  size   = "6 AWG"
  length = "2 m"
}

load "galley" {
  draw = "30 A"
}

fuse "port" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

fuse "starboard" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.house
}

conductor "port" {
  from   = fuse.port.load
  to     = load.heater
  size   = "10 AWG"
  length = "2 m"
}

conductor "starboard" {
  from   = fuse.starboard.load
  to     = load.heater
  size   = "10 AWG"
  length = "3 m"
}

load "heater" {
  draw = "40 A"
}
