# Exactly two to one; a load with a battery of its own; a second battery that feeds the alarm when the shared device has opened.

system "van" {
}

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

source "twin" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "one" {
  kind   = "blade"
  rating = "15 A"
  on     = source.pack
}

fuse "two" {
  kind   = "blade"
  rating = "15 A"
  on     = source.twin
}

conductor "one" {
  from   = fuse.one.load
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

conductor "two" {
  from   = fuse.two.load
  to     = bus.panel
  size   = "8 AWG"
  length = "1 m"
}

bus "panel" {
}

fuse "toaster" {
  kind   = "blade"
  rating = "10 A"
  on     = bus.panel
}

conductor "toaster" {
  from   = fuse.toaster.load
  to     = load.toaster
  size   = "12 AWG"
  length = "2 m"
}

load "toaster" {
  draw     = "8 A"
  critical = "none"
}

conductor "gas" {
  from   = bus.panel
  to     = load.gas
  size   = "16 AWG"
  length = "2 m"
}

load "gas" {
  kind     = "alarm"
  draw     = "0.1 A"
  critical = "life-safety"
}

source "other" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "shared" {
  kind   = "blade"
  rating = "20 A"
  on     = source.other
}

conductor "shared" {
  from   = fuse.shared.load
  to     = bus.second
  size   = "8 AWG"
  length = "1 m"
}

bus "second" {
}

fuse "half" {
  kind   = "blade"
  rating = "10 A"
  on     = bus.second
}

conductor "half" {
  from   = fuse.half.load
  to     = load.fan
  size   = "14 AWG"
  length = "1 m"
}

load "fan" {
  draw     = "3 A"
  critical = "none"
}

fuse "close" {
  kind   = "blade"
  rating = "3 A"
  on     = bus.second
}

conductor "close" {
  from   = fuse.close.load
  to     = load.bilge
  size   = "14 AWG"
  length = "1 m"
}

load "bilge" {
  draw     = "2 A"
  critical = "life-safety"
}
