# The same two, and one can be lifted out: the other gets all of it. Seen through a diode.

system "t" {
}

source "pack" { # want caution "\"Shore charger\" and \"Solar\" push up to 70 A into \"Pack\""
  label        = "Pack"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "40 A"

  bms {
    opens_charge_below = "2 C"
  }
}

source "other" {
  label        = "Other"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "80 A"
  removable    = true

  bms {
    opens_charge_below = "2 C"
  }
}

bus "chargers" {
}

bus "house" {
}

conductor "pack" {
  from   = source.pack
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

conductor "other" {
  from   = source.other
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
  isc  = "30 A"
  vmp  = "18 V"
}

converter "tracker" {
  label          = "Solar"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}

conductor "roof" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "sun" {
  from   = converter.tracker.out
  to     = bus.chargers
  size   = "2 AWG"
  length = "1 m"
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

conductor "cord" {
  from   = source.shore
  to     = converter.charger.in
  size   = "12 AWG"
  length = "1 m"
}

converter "charger" {
  label          = "Shore charger"
  kind           = "charger"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "40 A"
  }
}

conductor "charge" {
  from   = converter.charger.out
  to     = bus.chargers
  size   = "2 AWG"
  length = "1 m"
}

converter "d" {
  kind = "diode"
}

conductor "d_in" {
  from   = bus.chargers
  to     = converter.d.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "d_out" {
  from   = converter.d.out
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}
