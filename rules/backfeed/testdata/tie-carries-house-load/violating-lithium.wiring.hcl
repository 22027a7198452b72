# A lithium battery rests above the volts at which the tie closes, so it needs no sun; what draws is on the
# engine's side.

system "t" {
}

source "start" {
  label      = "Starting battery"
  kind       = "battery"
  role       = "starting"
  chemistry  = "flooded"
  voltage    = "12 V"
  capacity   = "70 Ah"
  resistance = "20 mohm"
}

conductor "start" {
  label  = "Tie wire"
  from   = source.start
  to     = switch.tie.start
  size   = "10 AWG"
  length = "0.4 m"
}

switch "tie" { # want warning "With \"Tie\" at closed, \"Tie\" carries .* that \"Winch\" draws"
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
  label      = "House battery"
  kind       = "battery"
  role       = "house"
  chemistry  = "lifepo4"
  voltage    = "12.8 V"
  capacity   = "200 Ah"
  resistance = "10 mohm"
}

conductor "winch" {
  from       = source.start
  to         = load.winch
  size       = "2 AWG"
  length     = "1 m"
  insulation = "105 C"
}

load "winch" {
  label    = "Winch"
  kind     = "motor"
  draw     = "70 A"
  behavior = "constant-current"
}
