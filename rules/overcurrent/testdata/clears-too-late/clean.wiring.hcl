# A device no bigger than the wire carries, driven to 1.35 times its rating at the far end; a run with no device at all, which is another rule's.

system "van" {
  ambient = "30 C"
}

source "b" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "10 mohm"
}

fuse "f" {
  kind   = "blade"
  rating = "10 A"
  on     = source.b
}

conductor "run" {
  from   = fuse.f.load
  to     = load.lamp
  size   = "14 AWG"
  length = "10 m"
}

load "lamp" {
  draw = "2 A"
}

conductor "bare" {
  from   = source.b
  to     = load.horn
  size   = "18 AWG"
  length = "12 m"
}

load "horn" {
  draw = "2 A"
}

# Too big for the wire, but it clears a short before the wire has time to burn.

fuse "big" {
  kind   = "blade"
  rating = "30 A"
  on     = source.b
}

conductor "short" {
  from   = fuse.big.load
  to     = load.pump
  size   = "12 AWG"
  length = "2 m"
}

load "pump" {
  draw = "10 A"
}
