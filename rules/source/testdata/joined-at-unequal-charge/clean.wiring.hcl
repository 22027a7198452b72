# Two packs that stand side by side in every state: nothing brings them together. A third is charged through a converter.

system "t" {
}

source "a" {
  label        = "A"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

source "b" {
  label        = "B"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
}

bus "house" {
}

fuse "a" {
  label  = "A main"
  kind   = "class-t"
  rating = "60 A"
  on     = source.a
}

fuse "b" {
  label  = "B main"
  kind   = "class-t"
  rating = "60 A"
  on     = source.b
}

conductor "a" {
  from   = fuse.a.load
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = fuse.b.load
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

source "spare" {
  label        = "Spare"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"
  removable    = true
}

converter "charge" {
  kind           = "dc-dc"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "20 A"
  }
}

conductor "in" {
  from   = bus.house
  to     = converter.charge.in
  size   = "8 AWG"
  length = "1 m"
}

conductor "out" {
  from   = converter.charge.out
  to     = source.spare
  size   = "8 AWG"
  length = "1 m"
}
