# Two batteries feed one wire. The smaller device opens; what the other battery drives on alone is above the ampacity and below what
# opens its device. Beside them a strong battery with a weak second feed: once the strong one has opened, the wire carries the rest.

system "van" {
  ambient = "30 C"
}

source "one" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "10 mohm"
}

source "two" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "100 mohm"
}

fuse "one" {
  kind   = "blade"
  rating = "15 A"
  on     = source.one
}

fuse "two" {
  kind   = "blade"
  rating = "30 A"
  on     = source.two
}

conductor "one" {
  from   = fuse.one.load
  to     = bus.mid
  size   = "10 AWG"
  length = "1 m"
}

conductor "two" {
  from   = fuse.two.load
  to     = bus.mid
  size   = "8 AWG"
  length = "1 m"
}

bus "mid" {
}

conductor "run" { # want warning "A short at the far end of \"run\" \\(14 AWG, 12 m\\) draws 3[0-9.]+ A through it once \"one\" has opened, on which \"two\" \\(30 A\\) may stay closed for good"
  from   = bus.mid
  to     = load.lamp
  size   = "14 AWG"
  length = "12 m"
}

load "lamp" {
  draw = "2 A"
}

source "strong" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  resistance = "4 mohm"
}

fuse "strong" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.strong
}

conductor "strong" {
  from   = fuse.strong.load
  to     = bus.house
  size   = "4 AWG"
  length = "50 cm"
}

source "weak" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "5 mohm"
}

fuse "weak" {
  kind   = "terminal"
  rating = "30 A"
  on     = source.weak
}

conductor "weak" {
  from   = fuse.weak.load
  to     = bus.house
  size   = "6 AWG"
  length = "15 m"
}

bus "house" {
}

conductor "panel" {
  from   = bus.house
  to     = load.panel
  size   = "4 AWG"
  length = "50 cm"
}

load "panel" {
  draw = "10 A"
}
