system "t" {
  practice = ["us-boat"]
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

conductor "a" {
  from = source.house
  to   = load.pump
  size = "10 AWG"
}

load "pump" { # want warning "fed with no overcurrent device; its maker allows 5 A"
  label       = "Pump"
  kind        = "bilge-pump"
  draw        = "2 A"
  own_battery = false
  max_fuse    = "5 A"
}
