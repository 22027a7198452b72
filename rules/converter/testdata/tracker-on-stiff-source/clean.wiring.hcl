# A panel and nothing else.

system "t" {
}

source "roof" {
  label = "Roof panel"
  kind  = "solar"
  voc   = "22 V"
  isc   = "9 A"
}

conductor "p" {
  from   = source.roof
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "2 m"
}

converter "tracker" {
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
