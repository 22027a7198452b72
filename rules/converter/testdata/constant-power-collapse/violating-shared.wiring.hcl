# Each of the two would have its point on this wire; together they have none.

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
  label  = "Run fuse"
  kind   = "terminal"
  rating = "80 A"
  on     = source.start
}

conductor "run" {
  from       = fuse.run.load
  to         = bus.far
  size       = "10 AWG"
  length     = "7 m"
  insulation = "105 C"
}

bus "far" {
  label = "Far bus"
}

conductor "to_first" {
  from       = bus.far
  to         = converter.first.in
  size       = "8 AWG"
  length     = "0.3 m"
  insulation = "105 C"
}

converter "first" { # want warning "no current at which it runs"
  label      = "First"
  kind       = "dc-dc"
  rated      = "270 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "5.62 A"
  }
}

conductor "to_second" {
  from       = bus.far
  to         = converter.second.in
  size       = "8 AWG"
  length     = "0.3 m"
  insulation = "105 C"
}

converter "second" { # want warning "no current at which it runs"
  label      = "Second"
  kind       = "dc-dc"
  rated      = "270 W"
  efficiency = 0.9

  output {
    voltage     = "48 V"
    current_max = "5.62 A"
  }
}
