# Two strong batteries behind devices that can open anything; the third one's own device cannot open what they drive into a short at its post.

system "van" {
}

source "one" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  resistance = "4 mohm"
}

fuse "one" {
  kind         = "class-t"
  rating       = "200 A"
  interrupting = "20 kA"
  on           = source.one
}

conductor "one" {
  from   = fuse.one.load
  to     = bus.main
  size   = "2/0 AWG"
  length = "30 cm"
}

source "two" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  resistance = "4 mohm"
}

fuse "two" {
  kind         = "class-t"
  rating       = "200 A"
  interrupting = "20 kA"
  on           = source.two
}

conductor "two" {
  from   = fuse.two.load
  to     = bus.main
  size   = "2/0 AWG"
  length = "30 cm"
}

bus "main" {
}

source "small" {
  kind       = "battery"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  resistance = "20 mohm"
}

fuse "small" { # want danger "\"small\" can open 2 700 A, and a short right behind it drives 6 [0-9]{3} A through it\\.$"
  kind         = "anl"
  rating       = "100 A"
  interrupting = "2.7 kA"
}

conductor "post" {
  from   = source.small
  to     = fuse.small.load
  size   = "2 AWG"
  length = "5 cm"
}

conductor "small" {
  from   = fuse.small.line
  to     = bus.main
  size   = "2 AWG"
  length = "30 cm"
}
