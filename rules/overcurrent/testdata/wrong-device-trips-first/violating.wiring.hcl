# A toaster's 20 A device behind a shared one of 30 A that also feeds the gas alarm; a light of 5 A behind the same is selective.

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

conductor "feed" {
  from   = fuse.shared.load
  to     = bus.panel
  size   = "8 AWG"
  length = "2 m"
}

bus "panel" {
}

fuse "toaster" { # want warning "A short behind \"toaster\" \\(20 A\\) may open \"shared\" \\(30 A\\) first, which also feeds \"gas\"\\."
  kind   = "blade"
  rating = "20 A"
  on     = bus.panel
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

fuse "light" {
  kind   = "blade"
  rating = "5 A"
  on     = bus.panel
}

conductor "light" {
  from   = fuse.light.load
  to     = load.light
  size   = "14 AWG"
  length = "2 m"
}

load "light" {
  draw     = "2 A"
  critical = "none"
}

fuse "gas" {
  kind   = "blade"
  rating = "2 A"
  on     = bus.panel
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
