# An alternator's device at the battery's post guards its cable against the battery. The thin tap beside it hangs on the battery itself.

system "boat" {
  ambient = "30 C"
}

source "engine" {
  kind              = "alternator"
  regulated_voltage = "14.4 V"
  rated             = "90 A"
}

source "b" {
  kind       = "battery"
  chemistry  = "agm"
  voltage    = "12 V"
  resistance = "4 mohm"
}

fuse "engine" {
  kind   = "terminal"
  rating = "125 A"
  on     = source.b
}

conductor "engine" {
  from       = source.engine
  to         = fuse.engine.load
  size       = "2 AWG"
  insulation = "105 C"
  length     = "3 m"
}

conductor "tap" {
  from   = source.b
  to     = fuse.light.line
  size   = "12 AWG"
  length = "10 cm"
}

fuse "light" {
  kind   = "blade"
  rating = "10 A"
}

conductor "light" {
  from   = fuse.light.load
  to     = load.light
  size   = "12 AWG"
  length = "2 m"
}

load "light" {
  draw = "3 A"
}
