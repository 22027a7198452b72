# What a lithium pack gives is not written; what a load draws is not written; a device bounds what it can.

system "t" {
}

source "pack" { # want not-proven "\"Pack\" is asked for up to 20 A, and what it gives is not written"
  label           = "Pack"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
}

conductor "feed" {
  from   = source.pack
  to     = load.pump
  size   = "1/0 AWG"
  length = "1 m"
}

load "pump" {
  draw     = "20 A"
  behavior = "constant-current"
}

source "other" { # want not-proven "`draw` of load.box is missing"
  label           = "Other"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

conductor "box" {
  from   = source.other
  to     = load.box
  size   = "1/0 AWG"
  length = "1 m"
}

load "box" {
}

source "held" {
  label           = "Held"
  kind            = "battery"
  chemistry       = "lifepo4"
  voltage         = "12.8 V"
  capacity        = "100 Ah"
  discharge_limit = "100 A"
}

fuse "held" {
  rating = "10 A"
  on     = source.held
}

conductor "held" {
  from   = fuse.held.load
  to     = load.held
  size   = "1/0 AWG"
  length = "1 m"
}

load "held" {
}
