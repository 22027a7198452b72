# The wires carry the device, and the maker of the radio allows less of one. Makers' instructions.

system "maker" {}

source "pack" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

fuse "main" { # want warning "\"main\" \\(40 A\\) is all that guards the load \"radio\", whose maker allows 10 A at most"
  kind   = "anl"
  rating = "40 A"
  on     = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "6 AWG"
  length = "2 m"
}

bus "panel" {}

conductor "to_radio" {
  from   = bus.panel
  to     = load.radio
  size   = "8 AWG"
  length = "1 m"
}

load "radio" {
  draw     = "5 A"
  max_fuse = "10 A"
}

conductor "to_lamp" {
  from   = bus.panel
  to     = load.lamp
  size   = "8 AWG"
  length = "1 m"
}

load "lamp" {
  draw     = "5 A"
  max_fuse = "20 A"
}
