# A selector that breaks before it makes: for a blink the controller has neither battery.
system "teal" {}

source "roof" {
  label = "Roof"
  kind  = "solar"
  voc   = "22 V"
  isc   = "6 A"
  vmp   = "18 V"
}


converter "tracker" { # want warning "With \"Roof\" present and \"Select\" at one>two \\(gap\\), \"Controller\" runs and no battery is across it"
  label = "Controller"
  kind  = "mppt"
  needs_battery = true

  output {
    voltage     = "14.4 V"
    current_max = "20 A"
  }
}

source "one" {
  label     = "One"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

source "two" {
  label     = "Two"
  kind      = "battery"
  chemistry = "agm"
  voltage   = "12 V"
  capacity  = "90 Ah"
}

switch "select" {
  label      = "Select"
  terminals  = ["one", "two", "bus"]
  transition = "break-before-make"

  position "one" { joins = [["one", "bus"]] }
  position "two" { joins = [["two", "bus"]] }
}

bus "house" {}

conductor "roof" {
  from = source.roof
  to   = converter.tracker.in
  size = "8 AWG"
}

conductor "charge" {
  from = converter.tracker.out
  to   = bus.house
  size = "8 AWG"
}

conductor "one" {
  from = source.one
  to   = switch.select.one
  size = "8 AWG"
}

conductor "two" {
  from = source.two
  to   = switch.select.two
  size = "8 AWG"
}

conductor "feed" {
  from = switch.select.bus
  to   = bus.house
  size = "8 AWG"
}

conductor "alarm" {
  from = bus.house
  to   = load.alarm
  size = "8 AWG"
}

conductor "radio" {
  from = bus.house
  to   = load.radio
  size = "8 AWG"
}

load "alarm" {
  label       = "Gas alarm"
  kind        = "alarm"
  draw        = "0.1 A"
  voltage_max = "16 V"
}

load "radio" {
  kind = "electronics"
  draw = "2 A"
}

