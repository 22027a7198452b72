# The same controller with a device in the array lead that its modules stand.

system "t" {
}

source "roof" {
  label           = "Roof"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

conductor "up" {
  from   = source.roof
  to     = fuse.roof.line
  size   = "6 AWG"
  length = "3 m"
}

fuse "roof" {
  rating = "15 A"
}

conductor "down" {
  from   = fuse.roof.load
  to     = converter.tracker.in
  size   = "6 AWG"
  length = "3 m"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = false

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

conductor "charge" {
  from   = converter.tracker.out
  to     = source.pack
  size   = "6 AWG"
  length = "3 m"
}
