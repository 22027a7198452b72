# A hard one: the panel hangs on the converter or on the bench supply, never on both at rest. Only
# while the selector is thrown does the bench supply meet the converter's output.

system "pipit" {
}

source "shore" {
  kind    = "shore"
  voltage = "120 V ac"
  rated   = "15 A"
}

converter "bench" {
  label = "Bench supply"
  kind  = "charger"
  output {
    voltage = "13.8 V"
  }
}

conductor "shore" {
  from   = source.shore
  to     = converter.bench.in
  size   = "14 AWG"
  length = "2 m"
}

switch "select" {
  label      = "Panel feed"
  terminals  = ["first", "bench", "panel"]
  transition = "make-before-break"
  position "first" {
    joins = [["first", "panel"]]
  }
  position "bench" {
    joins = [["bench", "panel"]]
  }
}

conductor "bench" {
  from   = converter.bench.out
  to     = switch.select.bench
  size   = "10 AWG"
  length = "1 m"
}

conductor "first" {
  from   = converter.first.out
  to     = switch.select.first
  size   = "10 AWG"
  length = "1 m"
}

conductor "panel" {
  from   = switch.select.panel
  to     = load.lamp
  size   = "16 AWG"
  length = "1 m"
}

load "lamp" {
  kind = "light"
}

conductor "roof" {
  from   = source.roof
  to     = converter.first.in
  size   = "16 AWG"
  length = "4 m"
}

source "roof" {
  label = "Roof array"
  kind  = "solar"
  voc   = "22 V"
}

converter "first" { # want warning "with \"Roof array\" absent, \"shore\" present and \"Panel feed\" at first>bench \\(overlap\\), \"Bench supply\" keeps its dead input live. \"roof\" is then fed with no device that guards it"
  label          = "Tracker"
  kind           = "mppt"
  blocks_reverse = false
}
