# Make before break without an off; an off that an interlock keeps from a running engine; one that is out of reach under way.

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

switch "select" {
  terminals  = ["one", "two", "common"]
  transition = "make-before-break"

  position "one" {
    joins = [["one", "common"]]
  }

  position "both" {
    joins = [["one", "two", "common"]]
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

source "other" {
  label             = "Other"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "third" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "locked" {
  terminals  = ["one", "two", "common"]
  transition = "make-before-break"

  position "off" {
  }

  position "one" {
    joins = [["one", "common"]]
  }
}

conductor "e" {
  from   = source.other
  to     = switch.locked.common
  size   = "2 AWG"
  length = "1 m"
}

conductor "f" {
  from   = source.third
  to     = switch.locked.one
  size   = "2 AWG"
  length = "1 m"
}

interlock "key" {
  by    = "hardware"
  never = [{ switch.locked = "off", source.other = "present" }]
}

source "last" {
  label             = "Last"
  kind              = "alternator"
  voltage           = "12 V"
  rated             = "80 A"
  regulated_voltage = "14.2 V"
}

source "fourth" {
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

switch "far" {
  terminals  = ["one", "two", "common"]
  transition = "make-before-break"
  reachable_while = [mode.moored]

  position "off" {
  }

  position "one" {
    joins = [["one", "common"]]
  }
}

conductor "g" {
  from   = source.last
  to     = switch.far.common
  size   = "2 AWG"
  length = "1 m"
}

conductor "h" {
  from   = source.fourth
  to     = switch.far.one
  size   = "2 AWG"
  length = "1 m"
}

mode "moored" {
  state = { source.last = "absent" }
}

mode "under_way" {
  state = { source.last = "present", switch.far = "one" }
}
