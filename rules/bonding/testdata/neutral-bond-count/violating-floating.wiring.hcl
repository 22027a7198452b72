system "t" {
  practice = ["us-rv"]
}

source "generator" { # want danger "Neutral and ground of what \"Generator\" feeds are joined nowhere, with \"Generator\" present:"
  label        = "Generator"
  kind         = "generator"
  voltage      = "120 V ac"
  neutral_bond = "floating"
}

conductor "g" {
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
