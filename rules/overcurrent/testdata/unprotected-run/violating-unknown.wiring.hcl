# What is not written cannot be proven: a length, a sheath that would allow the longer run, a size, and
# how much a battery can give.

system "unknown" {
  practice = ["us-boat"]
}

source "a" {
  label     = "Battery A"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "no_length" { # want warning not-proven "How far \"no_length\" runs from \"Battery A\" before the first overcurrent device is not written"
  from = source.a
  to   = fuse.one.line
  size = "8 AWG"
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

conductor "perhaps_sheathed" { # want warning not-proven "may run 800 mm from \"Battery A\" without an overcurrent device only where it is sheathed"
  from   = source.a
  to     = fuse.two.line
  size   = "8 AWG"
  length = "80 cm"
}

fuse "two" {
  kind   = "anl"
  rating = "50 A"
}

conductor "two_load" {
  from   = fuse.two.load
  to     = load.one
  size   = "8 AWG"
  length = "1 m"
}

conductor "no_size" { # want warning not-proven "the first one on the way is \"three\", 2 m off; whether a short at its far end draws more than it carries cannot be told"
  from   = source.a
  to     = fuse.three.line
  length = "2 m"
}

fuse "three" {
  kind   = "anl"
  rating = "50 A"
}

conductor "three_load" {
  from   = fuse.three.load
  to     = load.one
  size   = "8 AWG"
  length = "1 m"
}

# A pack of 0.8 Ah has at most 57.6 A by the usual figure: below the 105 A of 2/0 times heat, but less
# than twice below, so the maker's figure is wanted.

source "tiny" {
  label     = "Tiny pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "2 Ah"
}

conductor "from_tiny" { # want warning not-proven "only if an assumed battery resistance is right"
  from   = source.tiny
  to     = load.tiny
  size   = "1/0 AWG"
  length = "1 m"
}

load "tiny" {
  draw = "1 A"
}
