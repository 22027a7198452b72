# Outlets that feed each other, behind the panel of the generator.
system "t" {
  practice = ["cabin"]
}

source "generator" {
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  rated        = "15 A"
  neutral_bond = "bonded"
}

conductor "a" {
  from      = source.generator
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

conductor "b" {
  from      = load.outlet
  to        = load.second
  size      = "10 AWG"
  grounding = "10 AWG"
}

load "second" {
  kind       = "other"
  draw       = "2 A"
  receptacle = true
}
