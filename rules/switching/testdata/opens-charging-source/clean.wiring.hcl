# The alternator keeps a battery of its own behind a fuse; the switch parts the house only.

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

fuse "main" {
  kind   = "anl"
  rating = "100 A"
  on     = source.first
}

conductor "a" {
  from   = source.engine
  to     = fuse.main.load
  size   = "2 AWG"
  length = "1 m"
}

conductor "b" {
  from   = source.engine
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

switch "select" {
  terminals  = ["one", "two", "common"]
  transition = "break-before-make"

  position "off" {
  }

  position "on" {
    joins = [["one", "two"]]
  }
}
