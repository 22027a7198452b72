# Not polarized where current runs both ways; polarized in the panel circuit and before a load.

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

fuse "out" {
  label     = "Out"
  kind      = "breaker"
  polarized = false
  rating    = "30 A"
}

fuse "in" {
  label     = "In"
  kind      = "breaker"
  polarized = true
  rating    = "30 A"
}

fuse "lamp" {
  label     = "Lamp"
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

conductor "l" {
  from   = source.pack
  to     = fuse.lamp.line
  size   = "10 AWG"
  length = "1 m"
}

conductor "m" {
  from   = fuse.lamp.load
  to     = load.lamp
  size   = "10 AWG"
  length = "1 m"
}

load "lamp" {
  draw = "5 A"
}
