# A diode and a sensing isolator limit nothing; the plan names vehicle practice.

system "t" {
  practice = ["vehicle"]
}

source "pack" { # want danger "meets the alternator"
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  rated             = "120 A"
  regulated_voltage = "14.4 V"
}

converter "split" {
  label = "Split diode"
  kind  = "diode"
}

switch "sense" {
  label     = "Sense"
  terminals = ["start", "house"]
  kind      = "isolator"
  cut_in    = "13.3 V"
  cut_out   = "12.8 V"

  position "open" {
  }

  position "closed" {
    joins = [["start", "house"]]
  }
}

conductor "a" {
  from   = source.engine
  to     = converter.split["in"]
  size   = "8 AWG"
  length = "1 m"
}

conductor "b" {
  from   = converter.split["out"]
  to     = switch.sense.start
  size   = "8 AWG"
  length = "1 m"
}

conductor "c" {
  from   = switch.sense.house
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
