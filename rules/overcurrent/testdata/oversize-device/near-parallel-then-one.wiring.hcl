# Two batteries, each behind 50 A, meet only while the link is closed; but one device of 80 A between their bus and the
# wire lets no more through.

system "two" {
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "house" {
  kind   = "terminal"
  rating = "50 A"
  on     = source.house
}

conductor "house" {
  through    = [compartment.cool]
  from       = fuse.house.load
  to         = bus.meet
  size       = "6 AWG"
  insulation = "105 C"
  length     = "1 m"
}

source "spare" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "spare" {
  kind   = "terminal"
  rating = "50 A"
  on     = source.spare
}

conductor "spare" {
  through    = [compartment.cool]
  from       = fuse.spare.load
  to         = switch.link.a
  size       = "6 AWG"
  insulation = "105 C"
  length     = "1 m"
}

switch "link" {
  terminals = ["a", "b"]
}

conductor "link" {
  through    = [compartment.cool]
  from       = switch.link.b
  to         = bus.meet
  size       = "6 AWG"
  insulation = "105 C"
  length     = "30 cm"
}

bus "meet" {
}

conductor "feed" {
  through    = [compartment.cool]
  from       = bus.meet
  to         = fuse.main.load
  size       = "4 AWG"
  insulation = "105 C"
  length     = "30 cm"
}

fuse "main" {
  kind   = "terminal"
  rating = "80 A"
}

conductor "tail" {
  through    = [compartment.cool]
  from       = load.winch
  to         = fuse.main.line
  size       = "8 AWG"
  insulation = "105 C"
  length     = "2 m"
}

load "winch" {
  draw = "20 A"
}

compartment "cool" {
  ambient = "30 C"
}
