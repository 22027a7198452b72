# It has a point, at less than 0.7 of the open volts; 105 C insulation bears it and the fuse guards the wire: a caution.

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
  resistance = "1 mohm"
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
  size       = "12 AWG"
  length     = "4 m"
  insulation = "105 C"
}

conductor "from_plug" {
  from       = connector.plug.free
  to         = converter.boost.in
  size       = "12 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "boost" { # want caution "pulls 11.8 V down to 8.\\d* V, drawing 4\\d.*nothing more to be had"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "295 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "6.15 A"
  }
}
