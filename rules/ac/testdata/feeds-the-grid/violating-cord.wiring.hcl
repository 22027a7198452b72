# The generator is plugged into an outlet of the house.
system "t" {
  practice = ["cabin"]
}

source "shore" { # want danger "Generator\" can push power out"
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

load "outlet" { # want danger "a cord with two plugs"
  label      = "Outlet"
  kind       = "other"
  draw       = "10 A"
  receptacle = true
}

conductor "g" {
  from      = source.generator
  to        = load.outlet
  size      = "10 AWG"
  grounding = "10 AWG"
}
