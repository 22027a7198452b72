# Two thin returns side by side take half each of what the device lets through; two batteries with thick leads between the
# pluses and one thin one between the minuses.

system "returns" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" { # want warning "\"main\" \\(100 A\\) guards the load \"fan\", of which 50 A comes home by \"one\" \\(14 AWG\\); that allows"
  kind   = "anl"
  rating = "100 A"
  on     = source.pack.pos
}

conductor "plus" {
  from     = fuse.main.load.pos
  to       = load.fan.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "2 m"
}

conductor "one" {
  from     = load.fan.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}

conductor "two" {
  from     = load.fan.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}

load "fan" { draw = "5 A" }

source "east" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "west" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "east" { # want warning "\"east\" \\(90 A\\) guards the battery \"west\", which comes home by \"minus\" \\(14 AWG\\); that allows"
  kind   = "anl"
  rating = "90 A"
  on     = source.east.pos
}

fuse "west" { # want warning "\"west\" \\(90 A\\) guards the battery \"east\", which comes home by \"minus\" \\(14 AWG\\); that allows"
  kind   = "anl"
  rating = "90 A"
  on     = source.west.pos
}

conductor "tie" {
  from     = fuse.east.load.pos
  to       = fuse.west.load.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "2 m"
}

conductor "minus" {
  from     = source.west.neg
  to       = source.east.neg
  polarity = "negative"
  size     = "14 AWG"
  length   = "2 m"
}
