# The string fuses of three strings: the two others drive one to more than 1.35 times its rating. A single string of 10 A, at 12.5 A, opens a 9 A device.

system "van" {
  ambient = "30 C"
}

source "a" {
  kind = "solar"
  voc  = "40 V"
  isc  = "10 A"
}

source "b" {
  kind = "solar"
  voc  = "40 V"
  isc  = "10 A"
}

source "c" {
  kind = "solar"
  voc  = "40 V"
  isc  = "10 A"
}

fuse "a" {
  kind   = "cartridge"
  rating = "15 A"
  on     = source.a
}

fuse "b" {
  kind   = "cartridge"
  rating = "15 A"
  on     = source.b
}

fuse "c" {
  kind   = "cartridge"
  rating = "15 A"
  on     = source.c
}

conductor "a" {
  from   = fuse.a.load
  to     = bus.comb
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = fuse.b.load
  to     = bus.comb
  size   = "10 AWG"
  length = "1 m"
}

conductor "c" {
  from   = fuse.c.load
  to     = bus.comb
  size   = "10 AWG"
  length = "1 m"
}

bus "comb" {
}

conductor "down" {
  from   = bus.comb
  to     = converter.tracker.in
  size   = "6 AWG"
  length = "4 m"
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "40 A"
  }
}

source "d" {
  kind = "solar"
  voc  = "40 V"
  isc  = "10 A"
}

fuse "d" {
  kind   = "cartridge"
  rating = "9 A"
  on     = source.d
}

conductor "d" {
  from   = fuse.d.load
  to     = converter.other.in
  size   = "10 AWG"
  length = "1 m"
}

converter "other" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}
