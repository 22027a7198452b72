# A voltage starts it, and the alternator may stand at just that: at 14.2 V there would be a point.

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
  rating = "40 A"
  on     = source.start
}

connector "plug" {
  label              = "Tow plug"
  tow                = true
  contact_resistance = "5 mohm"
}

conductor "to_plug" {
  from       = fuse.run.load
  to         = connector.plug.fixed
  size       = "14 AWG"
  length     = "4 m"
  insulation = "105 C"
}

conductor "from_plug" {
  from       = connector.plug.free
  to         = converter.boost.in
  size       = "14 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "boost" { # want "no current at which it runs"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "320 W"
  efficiency = 0.9
  trigger    = "13.2 V"

  output {
    voltage     = "48 V"
    current_max = "6.67 A"
  }
}
