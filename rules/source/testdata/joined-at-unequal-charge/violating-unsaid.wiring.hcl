# What a plug is made for is not written, and lead-acid is well within the rest; what a pack holds is
# not written, so neither is its resistance.

system "t" {
}

source "one" { # want not-proven "turns on `rating` of connector.plug"
  label        = "One"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

source "two" { # want not-proven "`rating` of connector.plug"
  label        = "Two"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

fuse "one" {
  label  = "One main"
  kind   = "class-t"
  rating = "30 A"
  on     = source.one
}

connector "plug" {
  label  = "Plug"
}

conductor "one" {
  from   = fuse.one.load
  to     = connector.plug.fixed
  size   = "8 AWG"
  length = "1 m"
}

conductor "two" {
  from   = connector.plug.free
  to     = source.two
  size   = "8 AWG"
  length = "12 m"
}

source "a" { # want not-proven "turns on `capacity` of source.b"
  label        = "A"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

source "b" { # want not-proven "`capacity` of source.b"
  label        = "B"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  charge_limit = "50 A"
}

connector "link" {
  label  = "Link"
  rating = "100 A"
}

conductor "a" {
  from   = source.a
  to     = connector.link.fixed
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = connector.link.free
  to     = source.b
  size   = "2 AWG"
  length = "1 m"
}
