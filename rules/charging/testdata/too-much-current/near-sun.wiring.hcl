# The tracker could give 60 A, the one small module on it cannot.

system "t" {
}

source "pack" {
  label        = "Pack"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "60 Ah"
  charge_limit = "18 A"
}

bus "house" {
}

conductor "pack" {
  from   = source.pack
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
  isc  = "6 A"
  vmp  = "18 V"
}

converter "tracker" {
  label          = "Solar"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "60 A"
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
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}
