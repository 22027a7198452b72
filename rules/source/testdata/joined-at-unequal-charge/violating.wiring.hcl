# A lift-out pack is plugged onto a bus that a like pack is on: 13.6 V meets 11 V.

system "t" {
}

source "fixed" { # want caution "\"Fixed\" and \"Spare\" come together with \"Spare plug\" mated and \"Spare\" present. With one full and the other empty up to [34][0-9][0-9] A run between them; \"Spare main\" is made for 60 A"
  label        = "Fixed"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "200 A"
}

source "spare" { # want caution "come together"
  label        = "Spare"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "200 A"
  removable    = true
}

bus "house" {
}

fuse "fixed" {
  label  = "Fixed main"
  kind   = "class-t"
  rating = "125 A"
  on     = source.fixed
}

fuse "spare" {
  label  = "Spare main"
  kind   = "class-t"
  rating = "60 A"
  on     = source.spare
}

conductor "fixed" {
  from   = fuse.fixed.load
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "spare" {
  from   = fuse.spare.load
  to     = connector.plug.free
  size   = "2 AWG"
  length = "1 m"
}

connector "plug" {
  label  = "Spare plug"
  rating = "100 A"
}

conductor "in" {
  from   = connector.plug.fixed
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}
