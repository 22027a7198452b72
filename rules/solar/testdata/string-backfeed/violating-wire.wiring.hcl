# Four small strings come down one wire: each alone is within it, and so is what the controller
# draws. A short on the way down takes all of them. The string leads see the other three.

system "t" {
}

source "a" {
  label           = "A"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "5 A"
  max_series_fuse = "20 A"
}

conductor "a" {
  from   = source.a
  to     = bus.combiner
  size   = "10 AWG"
  length = "3 m"
}

source "b" {
  label           = "B"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "5 A"
  max_series_fuse = "20 A"
}

conductor "b" {
  from   = source.b
  to     = bus.combiner
  size   = "10 AWG"
  length = "3 m"
}

source "c" {
  label           = "C"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "5 A"
  max_series_fuse = "20 A"
}

conductor "c" {
  from   = source.c
  to     = bus.combiner
  size   = "10 AWG"
  length = "3 m"
}

source "d" {
  label           = "D"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "5 A"
  max_series_fuse = "20 A"
}

conductor "d" {
  from   = source.d
  to     = bus.combiner
  size   = "10 AWG"
  length = "3 m"
}

bus "combiner" {
}

conductor "down" { # want warning "Arrays drive up to 25 A into \"down\", which carries [0-9.]+ A"
  from   = bus.combiner
  to     = converter.tracker.in
  size   = "16 AWG"
  length = "3 m"
}

converter "tracker" {
  label          = "Tracker"
  kind           = "mppt"
  limits_current = true
  blocks_reverse = true

  input {
    current_max = "10 A"
  }

  output {
    voltage     = "14.2 V"
    current_max = "30 A"
  }
}
