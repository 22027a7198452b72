# A diode between the battery and the tracker limits nothing.

system "t" {
}

source "start" {
  label     = "Truck"
  kind      = "battery"
  role      = "starting"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "100 Ah"
}

conductor "p" {
  from   = source.start
  to     = converter.d.in
  size   = "10 AWG"
  length = "2 m"
}

converter "d" {
  label = "Diode"
  kind  = "diode"
}

conductor "d" {
  from   = converter.d.out
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" { # want warning "\"Truck\" feeds .*: nothing limits its current"
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
