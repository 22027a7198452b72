# Nothing is said of the breaker; and a controller may let current back.

system "t" {
  practice = ["general"]
}

source "pack" {
  label     = "Pack"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"
}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "24 V"
  isc   = "6 A"
}

converter "tracker" {
  label = "Tracker"
  kind  = "mppt"

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "out" { # want not-proven "\"Out\" may be marked for one direction.*Not written: `polarized` of fuse.out"
  label     = "Out"
  kind      = "breaker"
  rating    = "30 A"
}

fuse "in" { # want not-proven "Not written: `blocks_reverse` of converter.tracker"
  label     = "In"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

conductor "a" {
  from   = source.pack
  to     = fuse.out.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "b" {
  from   = converter.tracker["out"]
  to     = fuse.out.load
  size   = "10 AWG"
  length = "1 m"
}

conductor "s" {
  from   = source.roof
  to     = fuse.in.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "t" {
  from   = fuse.in.load
  to     = converter.tracker["in"]
  size   = "10 AWG"
  length = "1 m"
}
