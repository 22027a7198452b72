# A start whose time is not written, and a device without a rating.

system "unknown" {
}

source "pack" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "300 Ah"
}

fuse "main" { # want not-proven "The rating of \"main\" is not written"
  kind = "class-t"
  on   = source.pack
}

conductor "feed" {
  from   = fuse.main.load
  to     = fuse.pump.line
  size   = "6 AWG"
  length = "2 m"
}

fuse "pump" { # want not-proven "Whether \"pump\" \\(20 A\\) stays closed while \"pump\" starts, at 60 A, cannot be told"
  kind   = "blade"
  rating = "20 A"
}

conductor "pump" {
  from   = fuse.pump.load
  to     = load.pump
  size   = "10 AWG"
  length = "2 m"
}

load "pump" {
  behavior = "constant-current"
  draw     = "10 A"
  surge    = "60 A"
}
