# The input is said to take direct current, and the tracker to limit itself.

system "t" {
}

source "start" {
  label     = "Starting battery"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "p" {
  from   = source.start
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" {
  label = "Tracker"
  kind  = "mppt"
  limits_current = true

  input {
    voltage_max = "50 V"
    current_max = "15 A"
    accepts = ["solar", "dc"]
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "out" {
  from   = converter.tracker.out
  to     = source.house
  size   = "10 AWG"
  length = "2 m"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  role      = "house"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "100 Ah"
}
