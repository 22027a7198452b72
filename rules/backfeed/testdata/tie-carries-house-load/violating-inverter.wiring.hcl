# A real inverter: constant power, and wires of one pole each with the frame as the return of the tie.

system "t" {
}

source "roof" {
  label = "Roof array"
  kind  = "solar"
  voc   = "22 V"
  isc   = "11 A"
  vmp   = "18 V"
  imp   = "10 A"
}

conductor "roof" {
  from   = source.roof
  to     = converter.controller.in
  size   = "10 AWG"
  length = "4 m"
}

converter "controller" {
  label      = "Controller"
  kind       = "mppt"
  efficiency = 0.95

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

conductor "controller" {
  from   = converter.controller.out
  to     = source.house
  size   = "10 AWG"
  length = "1 m"
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
  polarity = "positive"
}

switch "tie" { # want warning "With \"Tie\" at closed, \"Tie\" is held closed by \"Controller\" and carries .* that \"Inverter\" draws; \"Tie wire\" is good for 32.7 A"
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
  polarity = "positive"
}

source "house" {
  label      = "House battery"
  kind       = "battery"
  role       = "house"
  chemistry  = "agm"
  voltage    = "12 V"
  capacity   = "200 Ah"
  resistance = "10 mohm"
}

conductor "inverter" {
  from       = source.house
  to         = converter.inverter.in
  size       = "2/0 AWG"
  length     = "1 m"
  insulation = "105 C"
}

converter "inverter" {
  label      = "Inverter"
  kind       = "inverter"
  rated      = "1500 W"
  efficiency = 0.88
}

bus "frame" {
  polarity = "chassis"
}

conductor "start_frame" {
  from     = source.start.neg
  to       = bus.frame
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.5 m"
}

conductor "house_frame" {
  from     = source.house.neg
  to       = bus.frame
  polarity = "negative"
  size     = "2 AWG"
  length   = "0.5 m"
}
