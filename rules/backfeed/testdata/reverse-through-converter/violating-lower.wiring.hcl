# Both sides are batteries that are always there: the lithium house at 13.6 V runs down into the
# starting battery at 12.8 V. Its fuse is far too large for the wire on the other side.

system "whinchat" {
}

source "starting" {
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "60 Ah"
}

conductor "input" {
  from   = source.starting
  to     = converter.charge.in
  size   = "14 AWG"
  length = "4 m"
}

converter "charge" { # want warning "\"house\", at 13.6 V, runs down into an input at 12.8 V. \"input\" is then fed with no device that guards it"
  kind           = "dc-dc"
  blocks_reverse = false
}

fuse "house" {
  kind   = "class-t"
  rating = "200 A"
  on     = source.house
}

conductor "output" {
  from   = converter.charge.out
  to     = fuse.house.load
  size   = "14 AWG"
  length = "0.1 m"
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}
