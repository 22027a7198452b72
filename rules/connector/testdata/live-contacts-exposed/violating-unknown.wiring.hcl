# What is not written: which side can be touched, whether current comes back, whether a charger limits.

system "unsaid" {
}

source "house" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "plain" {
  from = source.house
  to   = connector.plain.free
}

connector "plain" { # want caution not-proven "\"plain\" stays live on its free side: \"house\" puts 12.8 V\\. Whether its contacts can be touched there is not written"
}

converter "charge" {
  kind = "dc-dc"
}

conductor "charge" {
  from = converter.charge.out
  to   = source.house
}

conductor "feed" {
  from = connector.feed.free
  to   = converter.charge.in
}

connector "feed" { # want caution not-proven "\"feed\" stays live on its free side.*turns on `blocks_reverse` of converter.charge"
  exposed = "free"
}

converter "lead" {
  kind           = "dc-dc"
  blocks_reverse = true
  output {
    voltage     = "13.6 V"
    current_max = "10 A"
  }
}

conductor "lead_in" {
  from = source.house
  to   = converter.lead.in
}

conductor "lead_out" {
  from = converter.lead.out
  to   = connector.lead.fixed
}

connector "lead" { # want caution not-proven "\"lead\" puts 13.6 V, up to 10 A, on contacts.*turns on `limits_current` of converter.lead"
  exposed = "fixed"
}
