# Two 24 V batteries in series, drawn one on the other, and the device drawn backwards: the switch that joins the middle hides the top.

system "string" {
}

source "lower" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

source "upper" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "100 Ah"
}

conductor "return" {
  polarity = "negative"
  from     = source.lower.neg
  to       = bus.chassis
  size     = "6 AWG"
  length   = "20 cm"
}

bus "chassis" {
  polarity = "chassis"
}

conductor "link_a" {
  polarity = "positive"
  from     = source.lower.pos
  to       = switch.link.a
  size     = "6 AWG"
  length   = "10 cm"
}

switch "link" {
  terminals = ["a", "b"]
}

conductor "link_b" {
  polarity = "positive"
  from     = switch.link.b
  to       = source.upper.neg
  size     = "6 AWG"
  length   = "10 cm"
}

conductor "top" {
  polarity = "positive"
  from     = source.upper.pos
  to       = fuse.top.load
  size     = "6 AWG"
  length   = "10 cm"
}

fuse "top" { # want danger "\"top\" is rated for 32 V and sees up to"
  kind           = "terminal"
  rating         = "60 A"
  voltage_rating = "32 V dc"
}

conductor "run" {
  polarity = "positive"
  from     = fuse.top.line
  to       = load.motor.pos
  size     = "6 AWG"
  length   = "2 m"
}

load "motor" {
  draw = "20 A"
}

conductor "home" {
  polarity = "negative"
  from     = load.motor.neg
  to       = bus.chassis
  size     = "6 AWG"
  length   = "2 m"
}
