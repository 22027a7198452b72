# Four modules in series read 97.2 V on a label's 25 C and 109.9 V at -20 C, into an input for 100 V.

system "lapwing" {
  coldest = "-20 C"
}

source "roof" {
  label           = "Roof array"
  kind            = "solar"
  voc             = "24.3 V"
  isc             = "9 A"
  voc_coefficient = "-0.29 %/C"
  series          = 4
}

connector "roof_plug" {
  exposed = "none"
  rating  = "30 A"
}

converter "tracker" { # want warning "\"Roof array\" reaches 110 V on a cold clear morning, and \"Tracker\" takes 100 V"
  label = "Tracker"
  kind  = "mppt"
  input {
    voltage_max = "100 V"
  }
  output {
    current_max = "30 A"
  }
}

source "house" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "200 Ah"
}

conductor "roof_run" {
  from           = source.roof
  to             = connector.roof_plug.free
  size           = "10 AWG"
  length         = "4 m"
  voltage_rating = "600 V"
}

conductor "input" {
  from   = connector.roof_plug.fixed
  to     = converter.tracker.in
  size   = "10 AWG"
  length = "1 m"
}

conductor "charge" {
  from   = converter.tracker.out
  to     = source.house
  size   = "8 AWG"
  length = "1 m"
}
