# A run of unknown length, and a converter of unknown power.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "run" {
  label  = "Boost fuse"
  kind   = "terminal"
  rating = "50 A"
  on     = source.start
}

conductor "run" {
  from       = fuse.run.load
  to         = bus.far
  size       = "6 AWG"
  insulation = "105 C"
}

bus "far" {
  label = "Far bus"
}

conductor "a" {
  from   = bus.far
  to     = converter.boost.in
  size   = "6 AWG"
  length = "1 m"
}

conductor "b" {
  from   = bus.far
  to     = converter.other.in
  size   = "6 AWG"
  length = "1 m"
}

converter "boost" { # want not-proven "`length` of conductor.run|.output current_max. of converter.other"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "324 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "6.75 A"
  }
}

converter "other" { # want not-proven ".output current_max. of converter.other"
  label = "Other"
  kind  = "dc-dc"
}
