# Two devices of 15 A side by side add up to just what the wire behind them allows, and what each feed gets from the other
# is less.

system "parallel" {
  practice = "us-rv"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

fuse "a" {
  kind   = "blade"
  rating = "15 A"
  on     = source.pack
}

conductor "a" {
  from   = fuse.a.load
  to     = bus.meet
  size   = "10 AWG"
  length = "1 m"
}

fuse "b" {
  kind   = "blade"
  rating = "15 A"
  on     = source.pack
}

conductor "b" {
  from   = fuse.b.load
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
