# Two lengths of 10 AWG behind 60 A: 2 m against 3 m share 3 to 2. Two wires of 8 AWG, alike, behind 90 A: if one
# lug works loose the other carries it all. A pair of which one length is not written.

system "teal" {
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "galley" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

conductor "short" { # want warning "\"short\" and \"long\" run in parallel and do not share alike: \"short\" takes 60 %"
  from   = fuse.galley.load
  to     = load.galley
  size   = "10 AWG"
  length = "2 m"
}

conductor "long" {
  from   = load.galley
  to     = fuse.galley.load
  size   = "10 AWG"
  length = "3 m"
}

load "galley" {
  draw     = "40 A"
  behavior = "constant-current"
}

fuse "winch" {
  kind   = "terminal"
  rating = "90 A"
  on     = source.house
}

conductor "winch" { # want warning "One current is shared by the 2 wires of \"winch\"; if one comes loose, no device keeps the rest to the 57.3 A"
  from       = fuse.winch.load
  to         = load.winch
  size       = "8 AWG"
  length     = "2 m"
  insulation = "75 C"
  parallel   = 2
}

load "winch" {
  draw     = "70 A"
  behavior = "constant-current"
}

fuse "heater" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.house
}

conductor "heater_a" { # want not-proven caution "How \"heater_a\" and \"heater_b\" share what runs through them is not known: .length. of conductor.heater_b is missing"
  from   = fuse.heater.load
  to     = load.heater
  size   = "10 AWG"
  length = "2 m"
}

conductor "heater_b" {
  from = fuse.heater.load
  to   = load.heater
  size = "10 AWG"
}

load "heater" {
  draw     = "40 A"
  behavior = "constant-current"
}
