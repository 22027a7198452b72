# The plus was laid for its fuse, the minus was not: what stalls draws 40 A through both.

system "return" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" { # want warning "\"main\" \\(40 A\\) guards the load \"fan\", which comes home by \"minus\" \\(14 AWG\\); that allows"
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
  size     = "14 AWG"
  length   = "2 m"
}

load "fan" { draw = "5 A" }
