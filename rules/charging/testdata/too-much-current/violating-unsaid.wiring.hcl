# What a battery takes is not written: its usual figure can show too much, and never that it is not.
# What a charger gives is not written either; where a device stands before it, that bounds it.

system "t" {
}

source "pack" { # want caution "\"Charger\" pushes up to 40 A into \"Agm\"; it does not say what it takes, and usual for its kind is 30 A"
  label        = "Agm"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

converter "a" {
  label          = "Charger"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "40 A"
  }
}

conductor "a" {
  from   = converter.a.out
  to     = source.pack
  size   = "2 AWG"
  length = "1 m"
}

source "second" { # want not-proven "Up to 15 A are pushed into \"Second\", and what it takes is not written"
  label        = "Second"
  kind         = "battery"
  chemistry    = "flooded"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

converter "b" {
  label          = "Charger b"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "15 A"
  }
}

conductor "b" {
  from   = converter.b.out
  to     = source.second
  size   = "2 AWG"
  length = "1 m"
}

source "third" { # want not-proven ".output current_max. of converter.c is missing"
  label        = "Third"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"

  bms {
    opens_charge_below = "2 C"
  }
}

converter "c" {
  label          = "Charger c"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage = "14.2 V"
  }
}

conductor "c" {
  from   = converter.c.out
  to     = source.third
  size   = "2 AWG"
  length = "1 m"
}

source "fourth" {
  label        = "Fourth"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"

  bms {
    opens_charge_below = "2 C"
  }
}

converter "d" {
  label          = "Charger d"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage = "14.2 V"
  }
}

conductor "d" {
  from   = converter.d.out
  to     = fuse.d.line
  size   = "2 AWG"
  length = "1 m"
}

fuse "d" {
  rating = "40 A"
}

conductor "d2" {
  from   = fuse.d.load
  to     = source.fourth
  size   = "2 AWG"
  length = "1 m"
}
