# A tracker stands between two battery voltages.

system "t" {
}

source "big" {
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "51.2 V"
  capacity  = "100 Ah"
}

converter "tracker" { # want warning "lies on \"lamp\": 58.4 V"
  kind     = "mppt"
  isolated = false
  output {
    voltage     = "13.6 V"
    current_max = "20 A"
  }
}

conductor "w1" {
  from   = source.big
  to     = converter.tracker.in
  size   = "2 AWG"
  length = "1 m"
}

load "lamp" {
  kind        = "other"
  draw        = "5 A"
  voltage_max = "16 V"
}

conductor "w2" {
  from   = converter.tracker.out
  to     = load.lamp
  size   = "2 AWG"
  length = "1 m"
}
