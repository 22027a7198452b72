# Three strings in one block: two of 9 A drive 22.5 A into the third, whose modules take 15 A.

system "t" {
}

source "roof" { # want warning "If one string of \"Roof\" is shorted, the others drive up to 22.5 A into it. Its modules take 15 A"
  label           = "Roof"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  parallel        = 3
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
  blocks_reverse = true

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}
