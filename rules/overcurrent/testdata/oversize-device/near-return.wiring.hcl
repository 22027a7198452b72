# A return for its fuse; a thin one beside a second one that carries the rest if it must, which
# conductor/return-weaker-than-feed asks about; a thin one that a small fuse guards.

system "return" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "anl"
  rating = "40 A"
  on     = source.pack.pos
}

conductor "plus" {
  from     = fuse.main.load.pos
  to       = load.fan.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "2 m"
}

conductor "minus" {
  from     = load.fan.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "8 AWG"
  length   = "2 m"
}

conductor "beside" {
  from     = load.fan.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}

load "fan" { draw = "5 A" }

fuse "lamp" {
  kind   = "blade"
  rating = "10 A"
  on     = source.pack.pos
}

conductor "lamp_plus" {
  from     = fuse.lamp.load.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "14 AWG"
  length   = "2 m"
}

conductor "lamp_minus" {
  from     = load.lamp.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}

load "lamp" { draw = "2 A" }
