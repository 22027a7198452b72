# Between controller and battery: it charges one way and a fault comes the other.

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
  blocks_reverse = true

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

fuse "out" { # want warning "\"Pack\" can push current through it from its line side and \"Tracker\" from its load side"
  label     = "Out"
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
  to     = converter.tracker["in"]
  size   = "10 AWG"
  length = "1 m"
}
