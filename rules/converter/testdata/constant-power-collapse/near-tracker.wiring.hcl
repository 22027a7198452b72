# A tracker on an array takes what the array gives behind its cable, wherever that is.

system "t" {
  practice = ["general"]
  ambient  = "30 C"
}

source "sun" {
  label    = "Modules"
  kind     = "solar"
  voc      = "24 V"
  isc      = "6 A"
  vmp      = "20 V"
  imp      = "5.5 A"
  parallel = 2
}

conductor "lead" {
  from       = source.sun
  to         = converter.tracker.in
  size       = "14 AWG"
  length     = "20 m"
  insulation = "90 C"
}

converter "tracker" {
  label = "Tracker"
  kind  = "mppt"
  rated = "400 W"

  output {
    voltage     = "14.4 V"
    current_max = "25 A"
  }
}
