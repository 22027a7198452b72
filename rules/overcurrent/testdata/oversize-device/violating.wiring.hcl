# In a camper a thin wire is held to fixed sizes whatever its insulation, and a bundle in a hot place lowers the rest.

system "caps" {
  practice = "us-rv"
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

fuse "main" {
  kind   = "terminal"
  rating = "50 A"
  on     = source.pack
}

conductor "feed" {
  through    = [compartment.cool]
  from       = fuse.main.load
  to         = bus.panel
  size       = "8 AWG"
  insulation = "105 C"
  length     = "2 m"
}

bus "panel" {
}

branch "pump" {
  from = bus.panel
  fuse { # want warning "\"pump\" \\(20 A\\) guards \"pump\" \\(14 AWG\\), which allows 15 A"
    kind   = "blade"
    rating = "20 A"
  }
  conductor {
    through    = [compartment.cool]
    size       = "14 AWG"
    insulation = "105 C"
    length     = "4 m"
  }
  load "pump" {
    draw = "4 A"
  }
}

branch "reading" {
  from = bus.panel
  fuse { # want warning "\\(15 A\\) guards .* \\(18 AWG\\), which allows 10 A"
    kind   = "blade"
    rating = "15 A"
  }
  conductor {
    through = [compartment.cool]
    size    = "18 AWG"
    length  = "4 m"
  }
  load "lamp" {
    draw = "1 A"
  }
}

compartment "cool" {
  ambient = "30 C"
}
