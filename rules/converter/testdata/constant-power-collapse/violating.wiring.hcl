# Engine off: 360 W behind 7 m of 12 AWG and a plug. Watts over volts say 30 A; there is no current at all.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "80 Ah"
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
  rating = "30 A"
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
  size       = "12 AWG"
  length     = "4 m"
  insulation = "60 C"
}

conductor "from_plug" {
  from       = connector.plug.free
  to         = converter.boost.in
  size       = "12 AWG"
  length     = "3 m"
  insulation = "60 C"
}

converter "boost" { # want warning "asks for 360 W, and what lies between \"Starting battery\" and it lets no more than 3\\d\\d W through.*no current at which it runs"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "324 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "6.75 A"
  }
}
