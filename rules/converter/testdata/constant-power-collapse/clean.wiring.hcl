# The boost stands at the source, and the long run carries 48 V.

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

source "alternator" {
  label             = "Alternator"
  kind              = "alternator"
  rated             = "90 A"
  regulated_voltage = "14.2 V"
}

conductor "alternator_lead" {
  from   = source.alternator
  to     = source.start
  size   = "4 AWG"
  length = "1 m"
}

fuse "run" {
  label  = "Boost fuse"
  kind   = "terminal"
  rating = "50 A"
  on     = source.start
}

conductor "short" {
  from       = fuse.run.load
  to         = converter.boost.in
  size       = "6 AWG"
  length     = "0.5 m"
  insulation = "105 C"
}

converter "boost" {
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "324 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "6.75 A"
  }
}
