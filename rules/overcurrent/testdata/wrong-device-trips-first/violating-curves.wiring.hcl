# Navigation lights: a main breaker whose own curve lies under the branch's at the fault; needed under way only, where the switch ahead is closed.

system "boat" {
  practice = "us-boat"
}

source "bank" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2 kA"
}

fuse "main" {
  kind   = "breaker"
  rating = "60 A"
  on     = source.bank
  curve  = [["81 A", "60 s"], ["600 A", "20 ms"]]
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "4 AWG"
  length = "2 m"
}

bus "panel" {
}

fuse "pump" { # want caution "A short behind \"pump\" \\(15 A\\) may open \"main\" \\(60 A\\) first, which also feeds \"running\""
  kind   = "breaker"
  rating = "15 A"
  on     = bus.panel
  curve  = [["20.5 A", "60 s"], ["150 A", "4 s"]]
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "12 AWG"
  length = "2 m"
}

load "pump" {
  draw     = "8 A"
  critical = "none"
}

fuse "fast" {
  kind   = "breaker"
  rating = "10 A"
  on     = bus.panel
  curve  = [["13.5 A", "60 s"], ["100 A", "20 ms"]]
}

conductor "fast" {
  from   = fuse.fast.load
  to     = load.running
  size   = "14 AWG"
  length = "2 m"
}

load "running" {
  draw     = "4 A"
  critical = "navigation"
}
