# The alarm has a supply of its own ahead of the shared device; the main is more than four times the branch.

system "van" {
}

source "pack" {
  kind          = "battery"
  chemistry     = "lifepo4"
  voltage       = "12.8 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "shared" {
  kind   = "blade"
  rating = "30 A"
  on     = source.pack
}

fuse "gas" {
  kind   = "blade"
  rating = "2 A"
  on     = source.pack
}

conductor "gas" {
  from   = fuse.gas.load
  to     = load.gas
  size   = "16 AWG"
  length = "2 m"
}

load "gas" {
  kind     = "alarm"
  draw     = "0.1 A"
  critical = "life-safety"
}

conductor "feed" {
  from   = fuse.shared.load
  to     = fuse.toaster.line
  size   = "8 AWG"
  length = "2 m"
}

fuse "toaster" {
  kind   = "blade"
  rating = "20 A"
}

conductor "toaster" {
  from   = fuse.toaster.load
  to     = load.toaster
  size   = "12 AWG"
  length = "2 m"
}

load "toaster" {
  draw     = "12 A"
  critical = "none"
}
