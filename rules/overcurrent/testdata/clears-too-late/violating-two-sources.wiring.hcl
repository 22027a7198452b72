# Two batteries feed one wire, each behind a device of its own. Each device alone suits the wire; together they let through more than it carries, and neither is driven far enough.

system "van" {
  ambient = "30 C"
}

source "one" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "20 mohm"
}

source "two" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "20 mohm"
}

fuse "one" {
  kind   = "blade"
  rating = "15 A"
  on     = source.one
}

fuse "two" {
  kind   = "blade"
  rating = "15 A"
  on     = source.two
}

conductor "one" {
  from   = fuse.one.load
  to     = bus.mid
  size   = "10 AWG"
  length = "1 m"
}

conductor "two" {
  from   = fuse.two.load
  to     = bus.mid
  size   = "10 AWG"
  length = "1 m"
}

bus "mid" {
}

conductor "run" { # want warning "A short at the far end of \"run\" \\(14 AWG, 16 m\\) draws 3[0-9.]+ A through it, on which \"(one|two)\" \\(15 A\\) may stay closed for good"
  from   = bus.mid
  to     = load.lamp
  size   = "14 AWG"
  length = "16 m"
}

load "lamp" {
  draw = "2 A"
}
