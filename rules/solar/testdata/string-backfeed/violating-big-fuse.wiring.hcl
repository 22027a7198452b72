# Fuses that are there, and too big for the modules.

system "t" {
}

source "a" { # want warning "\"A\" is shorted, the others drive up to 20 A"
  label           = "A"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "a" {
  rating = "20 A"
}

conductor "a" {
  from   = source.a
  to     = fuse.a.load
  size   = "6 AWG"
  length = "3 m"
}

conductor "a2" {
  from   = fuse.a.line
  to     = bus.combiner
  size   = "6 AWG"
  length = "0.3 m"
}

source "b" { # want warning "\"B\" is shorted, the others drive up to 20 A"
  label           = "B"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "b" {
  rating = "20 A"
}

conductor "b" {
  from   = source.b
  to     = fuse.b.load
  size   = "6 AWG"
  length = "3 m"
}

conductor "b2" {
  from   = fuse.b.line
  to     = bus.combiner
  size   = "6 AWG"
  length = "0.3 m"
}

source "c" { # want warning "\"C\" is shorted, the others drive up to 20 A"
  label           = "C"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "c" {
  rating = "20 A"
}

conductor "c" {
  from   = source.c
  to     = fuse.c.load
  size   = "6 AWG"
  length = "3 m"
}

conductor "c2" {
  from   = fuse.c.line
  to     = bus.combiner
  size   = "6 AWG"
  length = "0.3 m"
}

bus "combiner" {
}

conductor "down" {
  from   = bus.combiner
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
