# It loses more than a tenth on the way, falls below what it works at, recovers, and pulls again.

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
  size       = "10 AWG"
  length     = "4 m"
  insulation = "105 C"
}

conductor "from_plug" {
  from       = connector.plug.free
  to         = converter.boost.in
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "boost" { # want caution "pulls its own input down to [89].* V, drawing .* and works from 10 V"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "240 W"
  efficiency = 0.9

  input {
    voltage_min = "10 V"
    current_max = "30 A"
  }

  output {
    voltage     = "48 V"
    current_max = "5.00 A"
  }
}
