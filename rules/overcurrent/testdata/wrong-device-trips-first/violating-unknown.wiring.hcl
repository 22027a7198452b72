# A breaker without its curve, and two kinds of fuse between two and four to one.

system "van" {
}

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "main" {
  kind   = "class-t"
  rating = "60 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "4 AWG"
  length = "2 m"
}

bus "panel" {
}

fuse "toaster" { # want not-proven caution "Whether a short behind \"toaster\" opens it before \"main\", which also feeds \"gas\", cannot be told"
  kind   = "blade"
  rating = "20 A"
  on     = bus.panel
}

conductor "toaster" {
  from   = fuse.toaster.load
  to     = load.toaster
  size   = "12 AWG"
  length = "2 m"
}

load "toaster" {
  draw     = "12 A"
  critical = "none"
}

fuse "fan" { # want not-proven caution "Whether a short behind \"fan\" opens it before \"main\""
  kind   = "breaker"
  rating = "5 A"
  on     = bus.panel
}

conductor "fan" {
  from   = fuse.fan.load
  to     = load.fan
  size   = "14 AWG"
  length = "2 m"
}

load "fan" {
  draw     = "2 A"
  critical = "none"
}

conductor "gas" {
  from   = bus.panel
  to     = load.gas
  size   = "16 AWG"
  length = "2 m"
}

load "gas" {
  kind     = "alarm"
  draw     = "0.1 A"
  critical = "life-safety"
}

# Nothing is known of this battery; the ratings alone tell.

source "blank" {
  kind = "battery"
}

fuse "feed" {
  kind   = "blade"
  rating = "20 A"
  on     = source.blank
}

conductor "blank" {
  from   = fuse.feed.load
  to     = bus.second
  size   = "8 AWG"
  length = "2 m"
}

bus "second" {
}

fuse "pump" { # want warning "A short behind \"pump\" \\(15 A\\) may open \"feed\" \\(20 A\\) first, which also feeds \"bilge\""
  kind   = "blade"
  rating = "15 A"
  on     = bus.second
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "12 AWG"
  length = "2 m"
}

load "pump" {
  draw     = "8 A"
  critical = "none"
}

conductor "bilge" {
  from   = bus.second
  to     = load.bilge
  size   = "14 AWG"
  length = "2 m"
}

load "bilge" {
  draw     = "3 A"
  critical = "life-safety"
}
