# Two like strings share a bus: one drawn as blocks, one as a bank.

system "godwit" {
}

bus "high" {
}

source "a_upper" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "a_lower" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "b" {
  kind      = "battery"
  chemistry = "gel"
  voltage   = "12 V"
  capacity  = "90 Ah"
  series    = 2
}

conductor "a_middle" {
  from     = source.a_upper.neg
  to       = source.a_lower.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.2 m"
}

conductor "a_plus" {
  from     = source.a_upper.pos
  to       = bus.high.pos
  polarity = "positive"
  size     = "2 AWG"
  length   = "0.5 m"
}

conductor "a_minus" {
  from     = source.a_lower.neg
  to       = bus.high.neg
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.5 m"
}

conductor "b" {
  from   = source.b
  to     = bus.high
  size   = "2 AWG"
  length = "0.5 m"
}
