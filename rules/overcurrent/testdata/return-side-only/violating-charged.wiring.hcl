# The battery's switch is in its negative, and alternator and battery both stand on the block: off, it goes on charging.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "60 A"
  regulated_voltage = "14.2 V"
}

bus "block" {
  label    = "Engine block"
  polarity = "chassis"
}

switch "off" { # want warning "\"Battery off\" breaks the negative alone: with it open, \"Battery\" is still joined to \"Alternator\", and current comes home by \"Engine block\""
  label     = "Battery off"
  kind      = "disconnect"
  terminals = ["a", "b"]

  position "off" {}
  position "on" { joins = [["a", "b"]] }
}

fuse "p" {
  kind   = "anl"
  rating = "100 A"
  on     = source.pack.pos
}

conductor "p" {
  from     = source.alternator.pos
  to       = fuse.p.load
  polarity = "positive"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "n1" {
  from     = source.pack.neg
  to       = switch.off.a.pos
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "n2" {
  from     = switch.off.b.pos
  to       = source.alternator.neg
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "g1" {
  from     = source.pack.neg
  to       = bus.block
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}

conductor "g2" {
  from     = source.alternator.neg
  to       = bus.block
  polarity = "negative"
  size     = "4 AWG"
  length   = "1 m"
}
