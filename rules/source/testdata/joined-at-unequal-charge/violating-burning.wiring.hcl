# No device at all on a thin lead: the lead burns.

system "t" {
}

source "a" { # want warning "\"lead_b\" carries [0-9.]+ A, with no device on the way that opens for it"
  label        = "A"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "400 A"
}

source "b" { # want warning "lead_b"
  label        = "B"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "400 A"
}

connector "plug" {
  label  = "Plug"
  rating = "400 A"
}

conductor "lead_a" {
  from   = source.a
  to     = connector.plug.fixed
  size   = "2 AWG"
  length = "1 m"
}

conductor "lead_b" {
  from   = connector.plug.free
  to     = source.b
  size   = "10 AWG"
  length = "1 m"
}
