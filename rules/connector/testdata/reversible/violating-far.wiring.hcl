# Energised only backwards, through a charger that lets current come back; and one wire each way.

system "far" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

converter "charge" {
  kind           = "dc-dc"
  blocks_reverse = false
}

conductor "charge" {
  from = converter.charge.out
  to   = source.house
}

conductor "feed" {
  from = connector.feed.free
  to   = converter.charge.in
}

connector "feed" { # want warning "\"feed\" can be turned round"
  key = "none"
}

connector "wires" { # want warning "\"wires\" can be turned round"
  key = "none"
}

conductor "plus" {
  from     = source.house.pos
  to       = connector.wires.fixed.pos
  polarity = "positive"
}

conductor "minus" {
  from     = source.house.neg
  to       = connector.wires.fixed.neg
  polarity = "negative"
}
