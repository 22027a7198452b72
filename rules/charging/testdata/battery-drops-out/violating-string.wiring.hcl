# Two blocks of lithium in a row: the cut-off of one takes the row.
system "teal" {}

source "alternator" { # want warning "If the BMS of \"Lower\" opens" want warning "If the BMS of \"Upper\" opens"
  label             = "Alternator"
  kind              = "alternator"
  regulated_voltage = "28.8 V"
  rated             = "80 A"
}

source "lower" {
  label     = "Lower"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    opens_above = "14.6 V"
  }
}

source "upper" {
  label     = "Upper"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    opens_above = "14.6 V"
  }
}

conductor "link" {
  from     = source.lower.pos
  to       = source.upper.neg
  size     = "8 AWG"
  polarity = "positive"
}

conductor "top" {
  from     = source.upper.pos
  to       = source.alternator.pos
  size     = "8 AWG"
  polarity = "positive"
}

conductor "bottom" {
  from     = source.lower.neg
  to       = source.alternator.neg
  size     = "8 AWG"
  polarity = "negative"
}
