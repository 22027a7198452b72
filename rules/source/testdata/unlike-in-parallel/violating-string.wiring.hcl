# A hard one, drawn wire by wire: two lead-acid batteries in series as blocks, and a switch that puts a
# 12 V pack across the string. What the pack is made of is not written, and need not be.

system "sanderling" {
}

source "upper" { # want danger "\"upper\" and \"lower\" in series and \"Pack\" are joined with \"Boost start\" at on"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "lower" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

conductor "middle" {
  from     = source.lower.pos
  to       = source.upper.neg
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.2 m"
}

source "pack" { # want danger "\"Boost start\" at on"
  label   = "Pack"
  kind    = "battery"
  voltage = "12 V"
}

switch "boost" {
  label     = "Boost start"
  terminals = ["a", "b"]
  momentary = true
  position "off" {
  }
  position "on" {
    joins = [["a", "b"]]
  }
}

conductor "string" {
  from     = source.upper.pos
  to       = switch.boost.a.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "pack" {
  from     = switch.boost.b.pos
  to       = source.pack.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "1 m"
}

conductor "minus" {
  from     = source.pack.neg
  to       = source.lower.neg
  polarity = "negative"
  size     = "2 AWG"
  length   = "1 m"
}
