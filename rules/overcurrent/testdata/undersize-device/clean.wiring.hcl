# Every device carries its load with a fifth to spare.

system "clean" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "60 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "6 AWG"
  length = "2 m"
}

bus "panel" {
}

branch "fridge" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "15 A"
  }
  conductor {
    size   = "12 AWG"
    length = "3 m"
  }
  load "fridge" {
    behavior = "constant-current"
    draw     = "6 A"
  }
}
