# Nothing is written: gear at 12 V is known to take 15 V,.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "house" {
  label     = "House battery"
  kind      = "battery"
  chemistry = "flooded"
  voltage   = "12 V"
  capacity  = "200 Ah"
}

bus "panel" {
  label = "Panel"
}

conductor "feed" {
  from       = source.house
  to         = bus.panel
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

source "shore" {
  label   = "Shore"
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "30 A"
}

conductor "cord" {
  from       = source.shore
  to         = converter.charger.in
  size       = "10 AWG"
  length     = "3 m"
  insulation = "105 C"
}

converter "charger" {
  label = "Charger"
  kind  = "charger"

  input {
    voltage_min = "100 V"
    voltage_max = "140 V"
  }

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
    equalize    = "15.8 V"
  }
}

conductor "out" {
  from       = converter.charger.out
  to         = bus.panel
  size       = "8 AWG"
  length     = "1 m"
  insulation = "105 C"
}

conductor "a" {
  from       = bus.panel
  to         = load.stereo
  size       = "10 AWG"
  length     = "2 m"
  insulation = "105 C"
}

load "stereo" { # want caution "gear of its kind takes 15 V"
  label = "Stereo"
  kind = "electronics"
  draw = "2 A"
}
