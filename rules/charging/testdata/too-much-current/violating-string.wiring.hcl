# A string of two blocks: what charges the string runs through each of them.

system "t" {
}

source "upper" {
  label        = "Upper"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "60 A"

  bms {
    opens_charge_below = "2 C"
  }
}

source "lower" { # want caution "pushes up to 40 A into \"Lower\", and it takes 30 A"
  label        = "Lower"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "30 A"

  bms {
    opens_charge_below = "2 C"
  }
}

conductor "middle" {
  from     = source.upper.neg
  to       = source.lower.pos
  polarity = "positive"
  size     = "4 AWG"
  length   = "0.5 m"
}

conductor "top" {
  from     = converter.c.out.pos
  to       = source.upper.pos
  polarity = "positive"
  size     = "4 AWG"
  length   = "0.5 m"
}

conductor "foot" {
  from     = source.lower.neg
  to       = converter.c.out.neg
  polarity = "negative"
  size     = "4 AWG"
  length   = "0.5 m"
}

converter "c" {
  label          = "Charger"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "28.4 V"
    current_max = "40 A"
  }
}
