# Only with the lead turned to the truck does its battery lie on the tracker; the negatives are drawn by themselves.

system "t" {
}

source "roof" {
  label = "Roof panel"
  kind  = "solar"
  voc   = "22 V"
  isc   = "9 A"
}

switch "lead" {
  label     = "Lead from"
  terminals = ["panel", "truck", "tracker"]

  position "panel" { joins = [["panel", "tracker"]] }
  position "truck" { joins = [["truck", "tracker"]] }
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
  from   = source.roof.pos
  to     = switch.lead.panel
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

conductor "pn" {
  from   = source.roof.neg
  to     = converter.tracker.in.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}

conductor "t" {
  from   = source.start.pos
  to     = switch.lead.truck
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

conductor "tn" {
  from   = source.start.neg
  to     = converter.tracker.in.neg
  size   = "10 AWG"
  length = "2 m"
  polarity = "negative"
}

conductor "l" {
  from   = switch.lead.tracker
  to     = converter.tracker.in.pos
  size   = "10 AWG"
  length = "2 m"
  polarity = "positive"
}

converter "tracker" { # want warning "\"Truck\" feeds the input of the tracker \"Tracker\", with \"Lead from\" at truck: nothing limits its current"
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
