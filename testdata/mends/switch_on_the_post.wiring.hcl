# A switch right on a battery's post, and no device at all: one goes between. 60 A ask for 75 A, the next is 80 A.
# mend overcurrent/unprotected-run conductor.run: Put a device of 80 A right on "house", ahead of "post". "post" sits on it no more: a wire of 300 mm leads there.
system "dunlin" { title = "Day boat" }

source "house" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "100 Ah"
  resistance = "6 mohm"
}

switch "post" {
  kind           = "disconnect"
  terminals      = ["battery", "panel"]
  rating         = "150 A"
  voltage_rating = "48 V dc"
  on             = source.house

  position "off" {}
  position "on" { joins = [["battery", "panel"]] }
}

conductor "run" {
  from       = switch.post.panel
  to         = load.thruster
  size       = "4 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "thruster" {
  kind        = "motor"
  draw        = "60 A"
  behavior    = "constant-current"
  voltage_min = "9 V"
  voltage_max = "16 V"
}
