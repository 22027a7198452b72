# Single wires: the positive is thick enough, and the return through a thin lead takes the volts.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

fuse "run" {
  label  = "Boost fuse"
  kind   = "terminal"
  rating = "50 A"
  on     = source.start
}

bus "ground" {
  label    = "Ground bar"
  polarity = "negative"
}

conductor "post" {
  from     = source.start.neg
  to       = bus.ground
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.3 m"
}

conductor "out" {
  from       = fuse.run.load.pos
  to         = converter.boost.in.pos
  polarity   = "positive"
  size       = "4 AWG"
  length     = "7 m"
  insulation = "105 C"
}

conductor "home" {
  from       = converter.boost.in.neg
  to         = bus.ground
  polarity   = "negative"
  size       = "14 AWG"
  length     = "9 m"
  insulation = "105 C"
}

converter "boost" { # want warning "no current at which it runs"
  label      = "Boost"
  kind       = "dc-dc"
  rated      = "350 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "7.3 A"
  }
}
