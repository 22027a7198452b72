# The pack's own protection stops charging at 2 C.

system "fieldfare" {
}

compartment "bow_box" {
  unheated = true
}

source "pack" {
  kind        = "battery"
  chemistry   = "lifepo4"
  voltage     = "12.8 V"
  capacity    = "100 Ah"
  compartment = compartment.bow_box
  bms {
    opens_charge_below = "2 C"
  }
}

source "roof" {
  kind = "solar"
  voc  = "22 V"
}

converter "tracker" {
  kind = "mppt"
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
