# The booster gives more than the input takes.

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

conductor "b_in" {
  from   = source.start
  to     = converter.boost.in
  size   = "10 AWG"
  length = "2 m"
}

converter "boost" {
  label = "Booster"
  kind  = "dc-dc"
  limits_current = true

  output {
    voltage     = "42 V"
    current_max = "20 A"
  }
}

conductor "b_out" {
  from   = converter.boost.out
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" { # want warning "\"Booster\" feeds .*: up to 20.* A, and the input takes 15.* A"
  label = "Tracker"
  kind  = "mppt"

  input {
    voltage_max = "50 V"
    current_max = "15 A"
    accepts = ["solar"]
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
