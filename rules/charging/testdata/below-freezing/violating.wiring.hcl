# A lithium pack in an unheated box, charged from the roof by a controller without a sensor.

system "fieldfare" {
}

compartment "bow_box" {
  label    = "Bow box"
  unheated = true
}

source "pack" { # want warning "\"Pack\" sits in \"Bow box\", which can fall below freezing, and \"Tracker\" can charge it"
  label              = "Pack"
  kind               = "battery"
  chemistry          = "lifepo4"
  voltage            = "12.8 V"
  capacity           = "100 Ah"
  compartment        = compartment.bow_box
  cold_charge_cutoff = false
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
}

converter "tracker" {
  label              = "Tracker"
  kind               = "mppt"
  cold_charge_cutoff = false
}

conductor "roof" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "4 m"
}

conductor "charge" {
  from   = converter.tracker.out
  to     = source.pack
  size   = "8 AWG"
  length = "1 m"
}
