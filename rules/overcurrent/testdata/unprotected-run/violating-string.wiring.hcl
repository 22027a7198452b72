# Two 12 V blocks drawn as a string of 24 V. The main at the top guards the string, but a short on the
# long link between the blocks is fed by the lower block alone, past every device.

system "string" {
  practice = ["us-boat"]
}

source "lower" {
  label     = "Lower block"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "upper" {
  label     = "Upper block"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "link" { # want danger "meets source \"Lower block\" with no overcurrent device in the first 177.8 mm, and there is none on the way"
  from     = source.lower.pos
  to       = source.upper.neg
  polarity = "positive"
  size     = "2 AWG"
  length   = "60 cm"
  sheathed = false
}

conductor "ground" {
  from     = source.lower.neg
  to       = load.winch.neg
  polarity = "negative"
  size     = "2 AWG"
  length   = "2 m"
}

fuse "main" {
  kind   = "class-t"
  rating = "150 A"
  on     = source.upper.pos
}

conductor "winch" {
  from     = fuse.main.load.pos
  to       = load.winch.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "2 m"
}

load "winch" {
  draw = "60 A"
}
