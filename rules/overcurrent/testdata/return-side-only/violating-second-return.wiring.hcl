# No chassis: a second return wire goes around the fuse.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

bus "body" {
  label    = "Body"
  polarity = "chassis"
}

load "lamp" {
  label = "Lamp"
  draw  = "1 A"
}

fuse "main" { # want danger "current comes home by \"n3\""
  label  = "Main"
  kind   = "anl"
  rating = "30 A"
}

conductor "p" {
  from     = source.pack.pos
  to       = load.lamp.pos
  polarity = "positive"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n1" {
  from     = source.pack.neg
  to       = fuse.main.line.pos
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n2" {
  from     = fuse.main.load.pos
  to       = load.lamp.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}

conductor "n3" {
  from     = load.lamp.neg
  to       = source.pack.neg
  polarity = "negative"
  size     = "10 AWG"
  length   = "1 m"
}
