# No off, and a gap between the two batteries.

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

source "first" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

source "second" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "select" { # want warning "For a moment, throwing \"select\" leaves \"Engine\""
  terminals  = ["one", "two", "common"]
  transition = "break-before-make"

  position "one" {
    joins = [["one", "common"]]
  }

  position "two" {
    joins = [["two", "common"]]
  }
}

conductor "a" {
  from   = source.engine
  to     = switch.select.common
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.first
  to     = switch.select.one
  size   = "2 AWG"
  length = "1 m"
}

conductor "d" {
  from   = source.second
  to     = switch.select.two
  size   = "2 AWG"
  length = "1 m"
}
