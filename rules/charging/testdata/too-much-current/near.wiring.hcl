# Sun and shore never charge together: an interlock says so. A third charger turns round what the pack
# itself gives, and a diode lets nothing of its own.

system "t" {
}

source "pack" {
  label        = "Pack"
  kind         = "battery"
  chemistry    = "lifepo4"
  voltage      = "12.8 V"
  capacity     = "100 Ah"
  charge_limit = "50 A"

  bms {
    opens_charge_below = "2 C"
  }
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
  isc  = "40 A"
  vmp  = "18 V"
}

converter "tracker" {
  label          = "Solar"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "50 A"
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
    current_max = "50 A"
  }
}

conductor "charge" {
  from   = converter.charger.out
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}


interlock "one_of_two" {
  never = [{ source.shore = "present", source.roof = "present" }]
  by    = "hardware"
}

converter "loop" {
  label          = "Round and round"
  kind           = "dc-dc"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "20 A"
  }
}

conductor "loop_in" {
  from   = bus.house
  to     = converter.loop.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "loop_out" {
  from   = converter.loop.out
  to     = bus.house
  size   = "2 AWG"
  length = "1 m"
}
