# The tap of the plan beside this one, with a device at its end that does not guard it, and one a hand
# too far off. And the 40 in of a sheath that a second practice does not know.

system "taps" {
  practice = ["us-boat", "us-rv"]
}

source "house" {
  label     = "House"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

conductor "to_near_post" {
  from   = source.house
  to     = bus.near_post
  size   = "6 AWG"
  length = "15 cm"
}

bus "near_post" {
}

conductor "unguarded_tap" { # want danger "the first one on the way is \"five\", 300 mm off"
  from     = bus.near_post
  to       = fuse.five.line
  size     = "16 AWG"
  length   = "15 cm"
  sheathed = false
}

fuse "five" {
  kind   = "blade"
  rating = "30 A"
}

conductor "five_load" {
  from   = fuse.five.load
  to     = load.one
  size   = "10 AWG"
  length = "1 m"
}

conductor "long_tap" { # want danger "the first one on the way is \"six\", 350 mm off"
  from     = bus.near_post
  to       = fuse.six.line
  size     = "16 AWG"
  length   = "20 cm"
  sheathed = false
}

fuse "six" {
  kind   = "blade"
  rating = "5 A"
}

conductor "six_load" {
  from   = fuse.six.load
  to     = load.one
  size   = "16 AWG"
  length = "1 m"
}

load "one" {
  draw = "3 A"
}

conductor "sheathed" { # want danger "in the first 457.2 mm; the first one on the way is \"seven\", 900 mm off"
  from     = source.house
  to       = fuse.seven.line
  size     = "6 AWG"
  length   = "90 cm"
  sheathed = true
}

fuse "seven" {
  kind   = "anl"
  rating = "60 A"
}

conductor "seven_load" {
  from   = fuse.seven.load
  to     = load.one
  size   = "6 AWG"
  length = "1 m"
}
