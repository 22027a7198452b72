# The battery is wired straight to the alternator, but its negative runs through a switch.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "first" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
}

switch "neg" { # want warning "Throwing \"neg\" leaves \"engine\" running with no battery"
  terminals = ["a", "b"]
  position "off" {}
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "w1" {
  from     = source.engine.pos
  to       = source.first.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "positive"
}

conductor "w2" {
  from     = source.engine.neg
  to       = switch.neg.a.pos
  size     = "2 AWG"
  length   = "1 m"
  polarity = "negative"
}

conductor "w3" {
  from     = switch.neg.b.pos
  to       = source.first.neg
  size     = "2 AWG"
  length   = "1 m"
  polarity = "negative"
}
