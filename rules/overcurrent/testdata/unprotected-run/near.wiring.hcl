# Just on the safe side: 7 in bare, 40 in sheathed through a bus, 72 in sheathed straight from the
# battery, a cranking cable with a tap at its end, and a thin tap off a bus to a device that guards it.

system "near" {
  practice = ["us-boat"]
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

conductor "seven_inches" {
  from   = source.house
  to     = fuse.one.line
  size   = "8 AWG"
  length = "7 in"
}

fuse "one" {
  kind   = "anl"
  rating = "50 A"
}

conductor "one_load" {
  from   = fuse.one.load
  to     = load.one
  size   = "8 AWG"
  length = "1 m"
}

load "one" {
  draw = "5 A"
}

conductor "post" {
  from     = source.house
  to       = bus.box
  size     = "2 AWG"
  length   = "20 in"
  sheathed = true
}

bus "box" {
}

conductor "on_from_box" {
  from     = bus.box
  to       = fuse.two.line
  size     = "4 AWG"
  length   = "20 in"
  sheathed = true
}

fuse "two" {
  kind   = "anl"
  rating = "100 A"
}

conductor "two_load" {
  from   = fuse.two.load
  to     = load.one
  size   = "4 AWG"
  length = "1 m"
}

conductor "straight" {
  from     = fuse.three.line
  to       = source.house
  size     = "6 AWG"
  length   = "72 in"
  sheathed = true
}

fuse "three" {
  kind   = "anl"
  rating = "60 A"
}

conductor "three_load" {
  from   = fuse.three.load
  to     = load.one
  size   = "6 AWG"
  length = "1 m"
}

conductor "crank" {
  from     = source.house
  to       = load.starter
  size     = "2/0 AWG"
  length   = "2.5 m"
  cranking = true
}

load "starter" {
  draw = "180 A"
}

conductor "off_the_starter" {
  from   = load.starter
  to     = fuse.four.line
  size   = "10 AWG"
  length = "15 cm"
}

fuse "four" {
  kind   = "blade"
  rating = "30 A"
}

conductor "four_load" {
  from   = fuse.four.load
  to     = load.one
  size   = "10 AWG"
  length = "1 m"
}

conductor "thin_tap" {
  from   = bus.near_post
  to     = fuse.five.line
  size   = "16 AWG"
  length = "15 cm"
}

bus "near_post" {
}

conductor "to_near_post" {
  from   = source.house
  to     = bus.near_post
  size   = "6 AWG"
  length = "15 cm"
}

fuse "five" {
  kind   = "blade"
  rating = "5 A"
}

conductor "five_load" {
  from   = fuse.five.load
  to     = load.one
  size   = "16 AWG"
  length = "1 m"
}
