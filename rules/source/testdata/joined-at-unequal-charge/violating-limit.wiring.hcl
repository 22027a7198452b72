# Devices and plug hold it; the packs do not take it.

system "t" {
}

source "a" { # want caution "\"B\" takes 60 A"
  label        = "A"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "150 A"
}

source "b" { # want caution "\"B\" takes 60 A"
  label        = "B"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "60 A"
}

fuse "a" {
  label  = "A main"
  kind   = "class-t"
  rating = "100 A"
  on     = source.a
}

connector "plug" {
  label  = "Plug"
  rating = "400 A"
}

conductor "lead_a" {
  from   = fuse.a.load
  to     = connector.plug.fixed
  size   = "2 AWG"
  length = "1 m"
}

conductor "lead_b" {
  from   = connector.plug.free
  to     = source.b
  size   = "2 AWG"
  length = "1 m"
}
