# A string of two blocks meets a 24 V pack, with every wire drawn on its own and the switch in the
# negative. The string is compared as a whole.

system "t" {
}

source "upper" { # want caution "\"Upper\" and \"Lower\" in series and \"Big\" come together with \"split\" at on|\"Big\" and \"Upper\" and \"Lower\" in series come together with \"split\" at on"
  label        = "Upper"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "100 A"
}

source "lower" {
  label        = "Lower"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "100 A"
}

source "big" { # want caution "come together"
  label        = "Big"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "25.6 V"
  capacity     = "100 Ah"
  charge_limit = "100 A"
}

conductor "middle" {
  from     = source.upper.neg
  to       = source.lower.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}

conductor "top" {
  from     = source.upper.pos
  to       = fuse.tie.line.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}

fuse "tie" {
  kind   = "class-t"
  rating = "80 A"
}

conductor "across" {
  from     = fuse.tie.load.pos
  to       = source.big.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}

conductor "back" {
  from     = source.lower.neg
  to       = switch.split.a.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}

switch "split" {
  terminals = ["a", "b"]
  rating    = "200 A"

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

conductor "home" {
  from     = switch.split.b.pos
  to       = source.big.neg
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}
