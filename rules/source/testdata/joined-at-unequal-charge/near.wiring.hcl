# Lead-acid meets lead-acid through a long lead: 1 V over 0.1 ohm stays within device, plug and wire.

system "t" {
}

source "one" {
  label        = "One"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

source "two" {
  label        = "Two"
  kind         = "battery"
  chemistry    = "agm"
  voltage      = "12 V"
  capacity     = "100 Ah"
}

fuse "one" {
  label  = "One main"
  kind   = "class-t"
  rating = "30 A"
  on     = source.one
}

connector "plug" {
  label  = "Plug"
  rating = "30 A"
}

conductor "one" {
  from   = fuse.one.load
  to     = connector.plug.fixed
  size   = "8 AWG"
  length = "1 m"
}

conductor "two" {
  from   = connector.plug.free
  to     = source.two
  size   = "8 AWG"
  length = "12 m"
}
