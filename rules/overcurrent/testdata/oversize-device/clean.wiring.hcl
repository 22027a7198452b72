# Each device is no larger than the wires behind it.

system "clean" {
  practice = ["us-boat", "us-rv"]
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "80 A"
  on     = source.pack
}

conductor "feed" {
  from       = fuse.main.load
  to         = bus.panel
  size       = "6 AWG"
  insulation = "105 C"
  length     = "2 m"
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
