# A tired battery drives no more than the wire carries; a good one drives more, and not enough to open the device.

system "boat" {
  practice = "us-boat"
  ambient  = "30 C"
}

source "b" {
  kind          = "battery"
  chemistry     = "flooded"
  voltage       = "12 V"
  capacity      = "20 Ah"
  short_circuit = "170 A"
}

fuse "f" {
  kind   = "terminal"
  rating = "125 A"
  on     = source.b
}

conductor "lead" { # want warning "A short at the far end of \"lead\" .6 AWG, 300 mm. draws 168 A through it, on which \"f\" .125 A. may stay closed for good"
  from       = fuse.f.load
  to         = load.winch
  size       = "6 AWG"
  insulation = "105 C"
  length     = "30 cm"
}

load "winch" {
  draw = "15 A"
}
