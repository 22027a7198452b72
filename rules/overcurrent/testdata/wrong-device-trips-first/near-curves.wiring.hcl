# The main's own curve begins above what the long feed lets a short draw: it holds for 20 s at least, and the branch opens at once.

system "boat" {
  practice = "us-boat"
}

source "bank" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "100 Ah"
  resistance = "30 mohm"
}

fuse "main" {
  kind   = "breaker"
  rating = "20 A"
  on     = source.bank
  curve  = [["60 A", "20 s"], ["100 A", "2 s"]]
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "14 AWG"
  length = "15 m"
}

bus "panel" {
}

fuse "toaster" {
  kind   = "breaker"
  rating = "5 A"
  on     = bus.panel
  curve  = [["10 A", "20 s"], ["30 A", "100 ms"]]
}

conductor "toaster" {
  from   = fuse.toaster.load
  to     = load.toaster
  size   = "14 AWG"
  length = "1 m"
}

load "toaster" {
  draw     = "3 A"
  critical = "none"
}

conductor "alarm" {
  from   = bus.panel
  to     = load.alarm
  size   = "14 AWG"
  length = "1 m"
}

load "alarm" {
  draw     = "0.3 A"
  critical = "life-safety"
}
