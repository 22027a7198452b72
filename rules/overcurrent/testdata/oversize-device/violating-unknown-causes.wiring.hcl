# A return of unknown size, and a supply of unknown strength before a lamp whose maker allows less than its device.

system "unknown" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" { # want not-proven "Whether \"main\" \\(40 A\\) guards \"minus\", by which the load \"fan\" comes home, cannot be told"
  kind   = "anl"
  rating = "40 A"
  on     = source.pack.pos
}

conductor "plus" {
  from     = fuse.main.load.pos
  to       = load.fan.pos
  polarity = "positive"
  size     = "8 AWG"
  length   = "2 m"
}

conductor "minus" {
  from     = load.fan.neg
  to       = source.pack.neg
  polarity = "negative"
  length   = "2 m"
}

load "fan" { draw = "5 A" }

source "mains_supply" {
  kind    = "supply"
  voltage = "12 V"
}

fuse "supply" { # want not-proven "Whether more than the 7.5 A that the maker of the load \"lamp\" allows comes through \"supply\" \\(15 A\\) cannot be told"
  kind   = "blade"
  rating = "15 A"
  on     = source.mains_supply
}

conductor "to_lamp" {
  from   = fuse.supply.load
  to     = load.lamp
  size   = "12 AWG"
  length = "1 m"
}

load "lamp" {
  draw     = "3 A"
  max_fuse = "7.5 A"
}
