# The point is sound, and the current that watts over nominal volts do not show is more than 0.8 of the fuse.

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
  size       = "8 AWG"
  length     = "4 m"
  insulation = "105 C"
}

conductor "from_plug" {
  from       = connector.plug.free
  to         = converter.boost.in
  size       = "8 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "boost" { # want caution "draws 2\\d.* A at the 1\\d.* V that are left for it, and \"Boost fuse\" bears 24 A for long"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "270 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "5.62 A"
  }
}
