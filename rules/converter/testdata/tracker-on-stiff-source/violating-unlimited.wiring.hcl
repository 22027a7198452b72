# Whether the booster limits its current is not written.

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
  efficiency = 0.9

  output {
    voltage     = "42 V"
    current_max = "8 A"
  }
}

conductor "b_out" {
  from   = converter.boost.out
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" { # want not-proven "`limits_current` of converter.boost is not written"
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
