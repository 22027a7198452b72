# The second battery was put in the wrong way round: each positive meets the other's negative.

system "plover" {
  practice = ["vehicle"]
}

source "left" { # want danger "joined head to tail in a ring"
  label     = "Left battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "right" { # want danger "joined head to tail in a ring"
  label     = "Right battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "link" {
  kind   = "class-t"
  rating = "50 A"
}

conductor "to_fuse" {
  from     = source.left.pos
  to       = fuse.link.line.pos
  size     = "4 AWG"
  length   = "0.1 m"
  polarity = "positive"
}

conductor "across" {
  from     = fuse.link.load.pos
  to       = source.right.neg
  size     = "4 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "back" {
  from     = source.left.neg
  to       = source.right.pos
  size     = "4 AWG"
  length   = "1 m"
  polarity = "negative"
}
