# At the limit itself; a panel that is series rated with the device ahead of it; two batteries in series, whose currents do not add.

system "van" {
}

source "bank" {
  kind          = "battery"
  chemistry     = "agm"
  voltage       = "12 V"
  capacity      = "100 Ah"
  short_circuit = "2700 A"
}

fuse "main" {
  kind         = "anl"
  rating       = "150 A"
  interrupting = "2.7 kA"
  on           = source.bank
}

conductor "feed" {
  from   = fuse.main.load
  to     = bus.panel
  size   = "1/0 AWG"
  length = "50 cm"
}

bus "panel" {
}

fuse "pump" {
  kind              = "blade"
  rating            = "10 A"
  interrupting      = "1 kA"
  series_rated_with = fuse.main
  on                = bus.panel
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "12 AWG"
  length = "3 m"
}

load "pump" {
  draw = "6 A"
}

source "upper" {
  kind          = "battery"
  chemistry     = "flooded"
  voltage       = "6 V"
  capacity      = "220 Ah"
  short_circuit = "2.4 kA"
}

source "lower" {
  kind          = "battery"
  chemistry     = "flooded"
  voltage       = "6 V"
  capacity      = "220 Ah"
  short_circuit = "2.4 kA"
}

conductor "link" {
  from     = source.upper.neg
  to       = source.lower.pos
  polarity = "positive"
  size     = "2/0 AWG"
  length   = "20 cm"
}

conductor "out" {
  from     = source.upper.pos
  to       = fuse.string.line
  polarity = "positive"
  size     = "2/0 AWG"
  length   = "10 cm"
}

fuse "string" {
  kind         = "anl"
  rating       = "150 A"
  interrupting = "2.5 kA"
}

conductor "on" {
  from     = fuse.string.load
  to       = load.winch.pos
  polarity = "positive"
  size     = "1/0 AWG"
  length   = "1 m"
}

conductor "home" {
  from     = load.winch.neg
  to       = source.lower.neg
  polarity = "negative"
  size     = "1/0 AWG"
  length   = "1 m"
}

load "winch" {
  draw = "80 A"
}
