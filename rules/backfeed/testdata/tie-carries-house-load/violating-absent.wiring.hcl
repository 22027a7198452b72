# Two house batteries side by side share the inverter; only with the lift-out one away does the tie carry all of it.

system "t" {
}

source "start" {
  label      = "Second battery"
  kind       = "battery"
  role       = "house"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "70 Ah"
  resistance = "10 mohm"
}

conductor "start" {
  label  = "Tie wire"
  from   = source.start
  to     = switch.tie.start
  size   = "10 AWG"
  length = "0.4 m"
}

switch "tie" { # want warning "With \"Lift-out battery\" absent and \"Tie\" at closed, \"Tie\" carries 40 A of the 40 A"
  label     = "Tie"
  kind      = "isolator"
  terminals = ["start", "house"]
  rating    = "100 A"
  cut_in    = "13.3 V"
  cut_out   = "12.8 V"

  position "open" {}
  position "closed" { joins = [["start", "house"]] }
}

conductor "house" {
  from   = switch.tie.house
  to     = source.house
  size   = "10 AWG"
  length = "0.4 m"
}

source "house" {
  label      = "Lift-out battery"
  kind       = "battery"
  role       = "house"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "200 Ah"
  resistance = "10 mohm"
  removable  = true
}

conductor "inverter" {
  from       = source.house
  to         = load.inverter
  size       = "2/0 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "inverter" {
  label    = "Inverter"
  kind     = "electronics"
  draw     = "40 A"
  behavior = "constant-current"
}
