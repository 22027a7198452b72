# A two-way converter: its input end comes out with all that the pack on its other side gives. And one
# that does not limit its output: a 60 A device before it at 48 V is all that limits the current behind it, and is
# 222 A where that comes out at 13 V: power in is power out, losses apart.

system "reverse" {
}

source "start" {
  label     = "Start battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "70 Ah"
}

fuse "start" {
  kind   = "anl"
  rating = "40 A"
  on     = source.start
}

conductor "feed" { # want danger "\"Two-way\" can push all that \"Pack\" gives out of its input into \"feed\""
  from   = fuse.start.load
  to     = converter.two_way.in
  size   = "8 AWG"
  length = "5 m"
}

converter "two_way" {
  label          = "Two-way"
  kind           = "dc-dc"
  limits_current = true
  blocks_reverse = false
  output {
    voltage     = "54 V"
    current_max = "10 A"
  }
}

conductor "to_pack" {
  from   = converter.two_way.out
  to     = source.pack
  size   = "6 AWG"
  length = "30 cm"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "48 V"
  capacity  = "50 Ah"
}

fuse "down" {
  kind   = "anl"
  rating = "60 A"
  on     = source.pack
}

conductor "down_feed" {
  from   = fuse.down.load
  to     = converter.down.in
  size   = "6 AWG"
  length = "1 m"
}

converter "down" {
  label          = "Step-down"
  kind           = "dc-dc"
  limits_current = false
  blocks_reverse = true
  output {
    voltage     = "13 V"
    current_max = "20 A"
  }
}

conductor "twelve" { # want warning "\"Step-down\" can push 222 A into \"twelve\", which carries 32.7 A"
  from   = converter.down.out
  to     = bus.twelve
  size   = "10 AWG"
  length = "2 m"
}

bus "twelve" {
}

conductor "spare_lead" { # want warning "\"Step-down\" can push 222 A into \"spare_lead\", which carries 65.3 A"
  from   = fuse.spare.load
  to     = bus.twelve
  size   = "6 AWG"
  length = "1 m"
}

fuse "spare" {
  kind   = "blade"
  rating = "20 A"
  on     = source.spare
}

source "spare" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
}
