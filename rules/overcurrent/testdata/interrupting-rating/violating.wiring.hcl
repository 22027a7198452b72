# A lithium bank of 5.2 kA behind a 2.7 kA device, two batteries of which each feeds a fault at the other, and a panel behind a device
# that can open its fault.

system "van" {
}

source "bank" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "200 Ah"
  short_circuit = "5.2 kA"
}

fuse "main" { # want danger "\"main\" can open 2 700 A, and a short right behind it drives 5 200 A through it\\.$"
  kind         = "anl"
  rating       = "150 A"
  interrupting = "2.7 kA"
  on           = source.bank
}

conductor "feed" {
  from   = fuse.main.load
  to     = load.winch
  size   = "1/0 AWG"
  length = "2 m"
}

load "winch" {
  draw = "80 A"
}

# Two batteries, each with its own device; a short between a battery and its device draws on the brother alone.

source "left" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2.5 kA"
}

source "right" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2.5 kA"
}

fuse "left" {
  kind         = "class-t"
  rating       = "100 A"
  interrupting = "20 kA"
  on           = source.left
}

fuse "right" { # want danger "\"right\" can open 2 000 A, and a short right behind it drives 2 500 A through it"
  kind         = "terminal"
  rating       = "100 A"
  interrupting = "2 kA"
  on           = source.right
}

conductor "left" {
  from   = fuse.left.load
  to     = bus.panel
  size   = "2/0 AWG"
  length = "30 cm"
}

conductor "right" {
  from   = fuse.right.load
  to     = bus.panel
  size   = "2/0 AWG"
  length = "30 cm"
}

bus "panel" {
}

conductor "tap" {
  from   = bus.panel
  to     = fuse.lights.line
  size   = "10 AWG"
  length = "10 cm"
}

fuse "lights" { # want danger "\"lights\" can open 1 000 A, and a short right behind it drives 3 990 A through it\\.$"
  kind         = "blade"
  rating       = "10 A"
  interrupting = "1 kA"
}

conductor "lights" {
  from   = fuse.lights.load
  to     = load.lights
  size   = "14 AWG"
  length = "3 m"
}

load "lights" {
  draw = "4 A"
}
