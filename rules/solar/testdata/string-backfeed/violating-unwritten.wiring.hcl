# Whether the controller blocks is not written; an array on a battery with nothing between needs no more to be told.

system "t" {
}

source "roof" { # want not-proven "turns on `blocks_reverse` of converter.tracker"
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

source "small" { # want warning "\"Pack\" reaches \"Small\" directly with no device on the way"
  label           = "Small"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "1 A"
}

conductor "small" {
  from   = source.small
  to     = source.pack
  size   = "6 AWG"
  length = "3 m"
}
