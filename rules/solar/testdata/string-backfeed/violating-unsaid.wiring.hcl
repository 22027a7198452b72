# What the modules take, or what the others give, is not written.

system "t" {
}

source "roof" { # want not-proven "drive up to 22.5 A into it; what its modules take is not written"
  label           = "Roof"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  parallel        = 3
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
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}

source "wall" { # want not-proven "`isc` of source.wall is missing"
  label           = "Wall"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  parallel        = 3
  max_series_fuse = "15 A"
}

conductor "wall" { # want not-proven "`isc` of source.wall"
  from   = source.wall
  to     = converter.second.in
  size   = "6 AWG"
  length = "3 m"
}

converter "second" {
  label          = "Tracker"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}
