# Two strings: one cannot harm the other, whatever its modules take.

system "t" {
}

source "roof" {
  label           = "Roof"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  parallel        = 2
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
