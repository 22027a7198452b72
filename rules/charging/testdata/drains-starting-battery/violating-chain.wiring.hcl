# A boost feeds the tracker of the house battery over the tow plug, engine or not.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" { # want "With the engine off \"boost\" goes on drinking from \"Starting battery\", with \"tow\" mated and \"Alternator\" absent: 20 A"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "150 Ah"
  label     = "Starting battery"
  role      = "starting"
}

conductor "w1" {
  from   = source.engine
  to     = source.start
  size   = "2 AWG"
  length = "1 m"
}

converter "boost" {
  kind    = "dc-dc"
  trigger = "12 V"
  input {
    current_max = "20 A"
  }
  output {
    voltage     = "48 V"
    current_max = "5 A"
  }
}

connector "tow" {
  style = "seven"
  key   = "round"
  tow   = true
}

converter "tracker" {
  kind = "mppt"
  output {
    voltage     = "14.4 V"
    current_max = "15 A"
  }
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "150 Ah"
  role      = "house"
}

conductor "w2" {
  from   = source.start
  to     = converter.boost.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w3" {
  from   = converter.boost.out
  to     = connector.tow.fixed
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = connector.tow.free
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w5" {
  from   = converter.tracker.out
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}
