# Class T at the bank, with the maker's figure; a blade fuse so far down a thin wire that its fault is small; a guessed battery at less than half
# of what the device can open; a device that only an array drives.

system "van" {
}

source "bank" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "200 Ah"
  short_circuit = "5.2 kA"
}

fuse "main" {
  kind         = "class-t"
  rating       = "150 A"
  interrupting = "20 kA"
  on           = source.bank
}

conductor "long" {
  from   = fuse.main.load
  to     = fuse.lights.line
  size   = "8 AWG"
  length = "4 m"
}

fuse "lights" {
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

source "small" {
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "20 Ah"
}

fuse "small" {
  kind         = "terminal"
  rating       = "30 A"
  interrupting = "5 kA"
  on           = source.small
}

conductor "small" {
  from   = fuse.small.load
  to     = load.alarm
  size   = "10 AWG"
  length = "3 m"
}

load "alarm" {
  draw = "1 A"
}

source "roof" {
  kind = "solar"
  voc  = "40 V"
  isc  = "10 A"
}

fuse "roof" {
  kind   = "cartridge"
  rating = "15 A"
}

conductor "roof" {
  from   = source.roof
  to     = fuse.roof.line
  size   = "10 AWG"
  length = "3 m"
}

conductor "down" {
  from   = fuse.roof.load
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "3 m"
}

converter "tracker" {
  kind           = "mppt"
  blocks_reverse = true
  limits_current = true
  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}
