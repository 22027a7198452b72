# 24 V of two batteries in a row: what comes home to the lower one's minus comes home to both.

system "series" {}

source "lower" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "upper" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "row" {
  from     = source.lower.pos
  to       = source.upper.neg
  polarity = "positive"
  size     = "2/0 AWG"
  length   = "0.2 m"
}

fuse "main" { # want warning "\"main\" \\(40 A\\) guards the load \"fan\", which comes home by \"minus\" \\(14 AWG\\); that allows"
  kind   = "class-t"
  rating = "40 A"
  on     = source.upper.pos
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
  to       = source.lower.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}

load "fan" { draw = "5 A" }
