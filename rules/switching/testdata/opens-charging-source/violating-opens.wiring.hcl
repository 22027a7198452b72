# One battery behind a device and a plug, with a cut-off of its own.

system "t" {
  practice = ["general"]
}

source "engine" {
  label             = "Engine"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "first" { # want warning "If the BMS of \"first\" opens"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12 V"
  capacity  = "100 Ah"

  bms {
    opens_above = "14.8 V"
  }
}

fuse "main" { # want warning "If \"main\" opens, \"Engine\" runs on with no battery"
  kind   = "class-t"
  rating = "100 A"
  on     = source.first
}

connector "plug" { # want warning "Pulling \"plug\" leaves"
}

conductor "a" {
  from   = source.engine
  to     = connector.plug.fixed
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = connector.plug.free
  to     = fuse.main.load
  size   = "2 AWG"
  length = "1 m"
}
