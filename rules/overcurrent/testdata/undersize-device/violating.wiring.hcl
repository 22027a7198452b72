# 9 A for hours on a 10 A device; a sump pump on too small a one; a watermaker that takes longer than its device gives it,
# with a ten-second jack beside it; and a windlass whose start outlasts its device.

system "small" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "300 Ah"
}

fuse "main" {
  kind   = "class-t"
  rating = "400 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "4/0 AWG"
  length = "2 m"
}

bus "panel" {
}

branch "fridge" {
  from = bus.panel
  fuse { # want notice "\\(10 A\\) may carry 9 A for hours, and a device of that rating carries 8 A"
    kind   = "blade"
    rating = "10 A"
  }
  conductor {
    size   = "12 AWG"
    length = "3 m"
  }
  load "fridge" {
    behavior = "constant-current"
    draw     = "9 A"
  }
}

branch "pump" {
  from = bus.panel
  fuse { # want caution "\\(5 A\\) may carry 5 A for hours"
    kind   = "blade"
    rating = "5 A"
  }
  conductor {
    size   = "14 AWG"
    length = "3 m"
  }
  load "bilge" {
    kind     = "bilge-pump"
    behavior = "constant-current"
    draw     = "5 A"
    critical = "life-safety"
  }
}

conductor "water_stub" {
  from   = bus.panel
  to     = fuse.water.line
  size   = "8 AWG"
  length = "10 cm"
}

fuse "water" { # want notice "\"water\" \\(20 A\\) carries 32 A for longer than"
  kind   = "blade"
  rating = "20 A"
}

conductor "water" {
  from   = fuse.water.load
  to     = bus.water
  size   = "8 AWG"
  length = "3 m"
}

bus "water" {
}

conductor "maker" {
  from   = bus.water
  to     = load.maker
  size   = "8 AWG"
  length = "1 m"
}

load "maker" {
  behavior      = "constant-current"
  draw          = "32 A"
  hours_per_day = "2 h"
}

conductor "jack" {
  from   = bus.water
  to     = load.jack
  size   = "8 AWG"
  length = "1 m"
}

load "jack" {
  behavior      = "constant-current"
  draw          = "5 A"
  hours_per_day = "10 s"
}

branch "windlass" {
  from = bus.panel
  fuse { # want notice "opens within .* at 120 A, and \"windlass\" takes 30 s to start"
    kind   = "blade"
    rating = "30 A"
  }
  conductor {
    size   = "8 AWG"
    length = "3 m"
  }
  load "windlass" {
    behavior      = "constant-current"
    draw          = "20 A"
    hours_per_day = "5 min"
    surge         = "120 A"
    surge_time    = "30 s"
  }
}
