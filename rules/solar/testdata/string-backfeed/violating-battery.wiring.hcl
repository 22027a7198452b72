# A controller that does not block, with a device too big for the modules: the pack feeds a shorted string.

system "t" {
}

source "roof" { # want warning "\"Pack\" reaches \"Roof\" backwards through \"Tracker\", and the smallest device on the way, \"main\", is 40 A; the modules take 15 A"
  label           = "Roof"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

conductor "down" {
  from   = source.roof
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

fuse "main" {
  rating = "40 A"
  on     = source.pack
}

conductor "charge" {
  from   = converter.tracker.out
  to     = fuse.main.load
  size   = "6 AWG"
  length = "3 m"
}
