# A loop that passes less than the wire carries heats nothing; a slow device whose own curve is fast enough.

system "boat" {
  practice = "us-boat"
  ambient  = "30 C"
}

source "b" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "30 mohm"
}

fuse "loop" {
  kind   = "blade"
  rating = "30 A"
  on     = source.b
}

conductor "loop" {
  from       = fuse.loop.load
  to         = load.loop
  size       = "12 AWG"
  insulation = "105 C"
  length     = "25 m"
}

load "loop" {
  draw = "1 A"
}

fuse "own" {
  kind   = "breaker"
  rating = "15 A"
  on     = source.b
  curve  = [["16 A", "60 s"], ["20.5 A", "4 s"]]
}

conductor "own" {
  from   = fuse.own.load
  to     = load.own
  size   = "18 AWG"
  length = "10 m"
}

load "own" {
  draw = "1 A"
}
