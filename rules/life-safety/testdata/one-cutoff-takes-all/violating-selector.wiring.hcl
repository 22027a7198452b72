# On "both" two packs feed the panel; on "one" a single one does.
system "t" {
  practice = ["us-boat"]
}

source "one" { # want warning "If the BMS of \"One\" opens, with \"select\" at one"
  label     = "One"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = false
  }
}

source "two" {
  label     = "Two"
  kind      = "battery"
  chemistry = "lifepo4"
  voltage   = "12.8 V"
  capacity  = "100 Ah"

  bms {
    warns_before_cutoff = true
  }
}

conductor "a" {
  from = source.one
  to   = switch.select.one
  size = "10 AWG"
}

conductor "b" {
  from = source.two
  to   = switch.select.two
  size = "10 AWG"
}

switch "select" {
  terminals  = ["one", "two", "panel"]
  transition = "make-before-break"

  position "one" { joins = [["one", "panel"]] }
  position "both" { joins = [["one", "panel"], ["two", "panel"]] }
}

conductor "c" {
  from = switch.select.panel
  to   = bus.panel
  size = "10 AWG"
}

load "red" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
}

load "green" {
  kind     = "light"
  draw     = "1 A"
  critical = "navigation"
}

conductor "r" {
  from = bus.panel
  to   = load.red
  size = "10 AWG"
}

conductor "g" {
  from = bus.panel
  to   = load.green
  size = "10 AWG"
}

bus "panel" {
}
