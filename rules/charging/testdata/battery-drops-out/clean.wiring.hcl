# A controller made for it, and a supply that regulates.
system "teal" {}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "22 V"
  isc   = "6 A"
  vmp   = "18 V"
}


converter "tracker" { 
  label = "Controller"
  kind  = "mppt"
  needs_battery = false

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
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

source "supply" {
  kind              = "supply"
  regulated_voltage = "13.8 V"
  rated             = "20 A"
}

bus "house" {}

conductor "roof" {
  from = source.roof
  to   = converter.tracker.in
  size = "8 AWG"
}

conductor "charge" {
  from = converter.tracker.out
  to   = bus.house
  size = "8 AWG"
}

conductor "pack" {
  from = source.pack
  to   = bus.house
  size = "8 AWG"
}

conductor "supply" {
  from = source.supply
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

