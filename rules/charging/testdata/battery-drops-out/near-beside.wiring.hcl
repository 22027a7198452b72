# A lead-acid battery beside the pack holds the bus.
system "teal" {}

source "alternator" { 
  label             = "Alternator"
  kind              = "alternator"
  regulated_voltage = "14.4 V"
  rated             = "80 A"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    opens_above = "14.6 V"
  }
}

bus "house" {}

conductor "start" {
  from = source.start
  to   = bus.house
  size = "8 AWG"
}

conductor "charge" {
  from = source.alternator
  to   = bus.house
  size = "8 AWG"
}

conductor "pack" {
  from = source.pack
  to   = bus.house
  size = "8 AWG"
}

conductor "alarm" {
  from = bus.house
  to   = load.alarm
  size = "8 AWG"
}

conductor "radio" {
  from = bus.house
  to   = load.radio
  size = "8 AWG"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}

load "radio" {
  kind = "electronics"
  draw = "2 A"
}

