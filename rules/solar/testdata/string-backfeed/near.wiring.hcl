# Three strings drawn one by one, each behind its fuse, one drawn backwards; 22.5 A fit the way down.

system "t" {
}

source "a" {
  label           = "A"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "a" {
  rating = "15 A"
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

source "b" {
  label           = "B"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "b" {
  rating = "15 A"
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

source "c" {
  label           = "C"
  kind            = "solar"
  voc             = "22 V"
  vmp             = "18 V"
  isc             = "9 A"
  max_series_fuse = "15 A"
}

fuse "c" {
  rating = "15 A"
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
