# In the panel circuit of a controller that lets current back, and one of two strings; drawn backwards.

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
  blocks_reverse = false

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "in" { # want warning "\"In\" is marked for one direction"
  label     = "In"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

conductor "s" {
  from   = source.roof
  to     = fuse.in.load
  size   = "10 AWG"
  length = "1 m"
}

conductor "t" {
  from   = fuse.in.line
  to     = converter.tracker["in"]
  size   = "10 AWG"
  length = "1 m"
}

conductor "u" {
  from   = converter.tracker["out"]
  to     = source.pack
  size   = "10 AWG"
  length = "1 m"
}
