# Blade fuses of a panel behind a device that can open the fault at its own place: one caution for the bus. One without a rating is taken for 1 kA.

system "van" {
}

source "bank" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "200 Ah"
  short_circuit = "4 kA"
}

fuse "main" {
  kind         = "class-t"
  rating       = "100 A"
  interrupting = "20 kA"
  on           = source.bank
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "1/0 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "pump" { # want caution "\"pump\" can open 1 000 A, and a short right behind it drives 3 400 A through it. A device ahead of it can open that"
  kind         = "blade"
  rating       = "10 A"
  interrupting = "1 kA"
  on           = bus.panel
}

fuse "radio" { # want caution "\"radio\" is taken to be able, as blade fuses are, to open 1 000 A"
  kind   = "blade"
  rating = "5 A"
  on     = bus.panel
}

load "pump" {
  draw = "6 A"
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "12 AWG"
  length = "3 m"
}

load "radio" {
  draw = "2 A"
}

conductor "radio" {
  from   = fuse.radio.load
  to     = load.radio
  size   = "14 AWG"
  length = "3 m"
}
