# The boost runs with the ignition only, and the radio is the engine's own.

system "t" {
}

source "engine" {
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
  label             = "Alternator"
}

source "start" {
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
  trigger = "ignition"
  input {
    current_max = "20 A"
  }
  output {
    voltage     = "48 V"
    current_max = "5 A"
  }
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
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

conductor "w4" {
  from   = converter.tracker.out
  to     = source.house
  size   = "2 AWG"
  length = "1 m"
}

load "radio" {
  kind = "other"
  draw = "5 A"
}

conductor "w5" {
  from   = source.start
  to     = load.radio
  size   = "2 AWG"
  length = "1 m"
}
