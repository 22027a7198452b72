system "t" {
  practice = ["cabin"]
}

source "shore" { # want danger "generator>shore .overlap."
  label        = "Utility"
  kind         = "shore"
  voltage      = "120 V ac"
  rated        = "30 A"
  neutral_bond = "bonded"
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"
}

conductor "a" {
  from      = source.shore
  to        = switch.transfer.shore
  size      = "10 AWG"
  grounding = "10 AWG"
}

conductor "b" {
  from      = source.generator
  to        = switch.transfer.generator
  size      = "10 AWG"
  grounding = "10 AWG"
}

switch "transfer" {
  label      = "Transfer"
  kind       = "transfer"
  terminals  = ["generator", "shore", "house"]
  poles      = 2
  transition = "make-before-break"

  position "generator" { joins = [["generator", "house"]] }
  position "shore" { joins = [["shore", "house"]] }
}

conductor "house" {
  from      = switch.transfer.house
  to        = bus.panel
  size      = "10 AWG"
  grounding = "10 AWG"
}

bus "panel" {
  label = "AC panel"
}

conductor "outlet" {
  from      = bus.panel
  to        = load.outlet
  size      = "14 AWG"
  grounding = "14 AWG"
}

load "outlet" {
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}
