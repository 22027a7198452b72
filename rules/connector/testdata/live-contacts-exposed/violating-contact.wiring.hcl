# The pair is dark and a named contact is live; a battery of two blocks stands above 60 V together with
# its charger behind a switch that reaches a plug.

system "contacts" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

connector "seven" { # want warning "\"seven\" stays live on its free side: \"house\" puts 12.8 V"
  contacts = ["aux", "brakes"]
  exposed  = "free"
}

conductor "aux" {
  from     = source.house.pos
  to       = connector.seven.free.aux
  polarity = "positive"
}

conductor "return" {
  from     = source.house.neg
  to       = connector.seven.free.neg
  polarity = "negative"
}

source "low" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "48 V"
  capacity  = "50 Ah"
}

source "high" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "24 V"
  capacity  = "50 Ah"
}

conductor "link" {
  from     = source.low.pos
  to       = source.high.neg
  polarity = "positive"
}

conductor "top" {
  from     = source.high.pos
  to       = connector.bank.free.pos
  polarity = "positive"
}

conductor "bottom" {
  from     = source.low.neg
  to       = connector.bank.free.neg
  polarity = "negative"
}

connector "bank" { # want danger "\"high\" puts 76.8 V on contacts"
  exposed = "free"
}
