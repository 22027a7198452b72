# Blade fuses at 12 V, and a breaker with figures for both kinds of current.

system "clean" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind           = "breaker"
  rating         = "60 A"
  voltage_rating = ["250 V ac", "65 V dc"]
  on             = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "6 AWG"
  length = "2 m"
}

bus "panel" {
}

branch "lights" {
  from = bus.panel
  fuse {
    kind   = "blade"
    rating = "10 A"
  }
  conductor {
    size   = "14 AWG"
    length = "4 m"
  }
  load "cabin" {
    draw = "3 A"
  }
}
