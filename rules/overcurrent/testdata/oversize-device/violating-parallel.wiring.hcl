# Four devices of 30 A, each fit for its own feed, meet at a bus: 120 A stand before one wire good for 30 A, and 90 A
# before each feed from its far end.

system "parallel" {
  practice = "us-rv"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

fuse "a" { # want warning "\"a\" \\(30 A\\) is one of 4 devices side by side that feed \"tail\" \\(10 AWG\\): together they let 120 A through, and it allows 30 A"
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

conductor "a" {
  from   = fuse.a.load
  to     = bus.meet
  size   = "10 AWG"
  length = "1 m"
}

fuse "b" { # want warning "\"b\" \\(30 A\\) is one of 3 devices side by side that feed \"a\" \\(10 AWG\\): together they let 90 A through"
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

conductor "b" {
  from   = fuse.b.load
  to     = bus.meet
  size   = "10 AWG"
  length = "1 m"
}

fuse "c" {
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

conductor "c" {
  from   = fuse.c.load
  to     = bus.meet
  size   = "10 AWG"
  length = "1 m"
}

fuse "d" {
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

conductor "d" {
  from   = fuse.d.load
  to     = bus.meet
  size   = "10 AWG"
  length = "1 m"
}

bus "meet" {
}

conductor "tail" {
  from       = bus.meet
  to         = load.winch
  size       = "10 AWG"
  insulation = "105 C"
  length     = "2 m"
}

load "winch" {
  draw = "20 A"
}
